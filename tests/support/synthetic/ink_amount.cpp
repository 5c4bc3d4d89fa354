#include "tests/support/synthetic/ink_amount.h"

#include <cmath>
#include <sstream>
#include <stdexcept>

#include <opencv2/imgproc.hpp>

namespace synthetic {
namespace {

cv::Rect around(const ContrastPlaces& places)
{
    const cv::Rect area = cv::boundingRect(places.cloth | places.ink);
    constexpr int room = 8;  // for the sharpening at the rim
    return cv::Rect(area.x - room, area.y - room, area.width + 2 * room, area.height + 2 * room) &
           cv::Rect({}, places.ink.size());
}

[[noreturn]] void refuse(double contrast, double reached)
{
    std::ostringstream text;
    text << "StampOptions::contrast " << contrast
         << " is not reached; this ink on this piece gives " << reached;
    throw std::invalid_argument(text.str());
}

}  // namespace

double inkAmountFor(double contrast, const WithAndWithout& scene, const ContrastPlaces& places,
                    const CameraOptions& camera)
{
    const cv::Rect area = around(places);
    if (cv::countNonZero(places.ink) == 0 || cv::countNonZero(places.cloth) == 0)
        refuse(contrast, 0);
    const cv::Mat without = gathered(scene.without, camera)(area);
    const cv::Mat with = gathered(scene.with, camera)(area);
    const ContrastPlaces here{places.ink(area), places.cloth(area)};
    const auto darkerAt = [&](double amount) {
        cv::Mat grey;
        cv::cvtColor(developed(without * (1 - amount) + with * amount, camera), grey,
                     cv::COLOR_BGR2GRAY);
        return darkerBy(grey, here);
    };
    const double most = darkerAt(1), sign = most < 0 ? -1 : 1;
    if (sign * most < contrast)
        refuse(contrast, sign * most);
    // False position, kept from sticking to one end (the Illinois rule).
    double low = 0, high = 1, f_low = sign * darkerAt(0) - contrast,
           f_high = sign * most - contrast;
    if (f_low >= 0)
        return 0;
    for (int step = 0, last = 0; step < 20; ++step) {
        const double amount = (low * f_high - high * f_low) / (f_high - f_low);
        const double off = sign * darkerAt(amount) - contrast;
        if (std::abs(off) < 0.001)
            return amount;
        if (off < 0) {
            low = amount;
            f_low = off;
            if (last == -1)
                f_high /= 2;
            last = -1;
        } else {
            high = amount;
            f_high = off;
            if (last == 1)
                f_low /= 2;
            last = 1;
        }
    }
    return (low + high) / 2;
}

}  // namespace synthetic
