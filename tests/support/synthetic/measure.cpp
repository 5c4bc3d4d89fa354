#include "tests/support/synthetic/measure.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include <opencv2/imgproc.hpp>

namespace synthetic {
namespace {

cv::Mat wider(const cv::Mat& mask, double by_px)
{
    const int width = 2 * std::max(1, cvRound(by_px)) + 1;
    cv::Mat grown;
    cv::dilate(mask, grown, cv::getStructuringElement(cv::MORPH_ELLIPSE, {width, width}));
    return grown;
}

// Of the ink that is there at all.
float medianInk(const StampPlace& place)
{
    std::vector<float> values;
    for (int y = 0; y < place.face.rows; ++y)
        for (int x = 0; x < place.face.cols; ++x)
            if (place.face.at<float>(y, x) > 0.5F && place.ink.at<float>(y, x) > 0.004F)
                values.push_back(place.ink.at<float>(y, x));
    if (values.empty())
        return 0;
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
}

}  // namespace

ContrastPlaces contrastPlaces(const StampPlace& place, double letter_px)
{
    const cv::Mat face = place.face > 0.5, seen = place.sight > 0.99, other = place.others > 0.02;
    const cv::Mat free = seen & ~wider(other, 3);
    ContrastPlaces places;
    const float median = medianInk(place);
    places.ink = face & free & (place.ink >= std::max(0.004F, 0.5F * median));
    places.cloth = wider(face, 0.7 * letter_px) & ~wider(place.face > 0.02, 3) & free;
    return places;
}

double darkerBy(const cv::Mat& grey, const ContrastPlaces& places)
{
    const double cloth = cv::mean(grey, places.cloth)[0], ink = cv::mean(grey, places.ink)[0];
    return cloth > 0 ? (cloth - ink) / cloth : 0;
}

double contrastOf(const cv::Mat& grey, const ContrastPlaces& places)
{
    return std::abs(darkerBy(grey, places));
}

cv::Mat inkLeft(const StampPlace& place)
{
    const float median = medianInk(place);
    if (median <= 0)
        return cv::Mat::zeros(place.face.size(), CV_8UC1);
    return (place.face > 0.5) & (place.ink >= 0.5F * median) & (place.sight > 0.5);
}

double lostShare(const StampPlace& place)
{
    const int all = cv::countNonZero(place.face > 0.5);
    return all == 0 ? 1 : 1 - static_cast<double>(cv::countNonZero(inkLeft(place))) / all;
}

double inkedShare(const Quad& quad, const StampPlace& place, const cv::Mat& ink_left)
{
    const std::vector<cv::Point> corners(quad.begin(), quad.end());
    cv::Mat inside = cv::Mat::zeros(place.face.size(), CV_8UC1);
    cv::fillConvexPoly(inside, corners, 255);
    const int all = cv::countNonZero((place.face > 0.5) & inside);
    return all == 0 ? 1 : static_cast<double>(cv::countNonZero(ink_left & inside)) / all;
}

double letterHeight(const StampTruth& truth)
{
    double sum = 0;
    int count = 0;
    for (const LineTruth& line : truth.lines)
        for (const LetterTruth& letter : line.letters) {
            const char first = letter.text.empty() ? ' ' : letter.text[0];
            const bool hangs = first == 'J' || first == 'Q';  // below the line, in many faces
            if (hangs ||
                !((first >= 'A' && first <= 'Z') || (first >= '0' && first <= '9') || first == '&'))
                continue;
            const Quad& c = letter.corners;
            sum += (cv::norm(c[3] - c[0]) + cv::norm(c[2] - c[1])) / 2;
            ++count;
        }
    return count > 0 ? sum / count : 0;
}

}  // namespace synthetic
