#include "vision/advice.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <sstream>
#include <stdexcept>

#include <opencv2/imgproc.hpp>

#include "vision/sharpness.h"

namespace vision {

namespace {

constexpr double stroke_share = 0.16;  // width of a usual letter's strokes, of its height
constexpr int quite_white = 253, quite_black = 2;  // grey levels that tell nothing any more

void check(const Photo& photo, const AdviceOptions& options)
{
    if (photo.pixels.empty())
        throw std::invalid_argument("adviceOn: the photo has no pixels");
    if (!(options.least_score >= 0 && options.least_score <= 1))
        throw std::invalid_argument("AdviceOptions.least_score must be from 0 to 1");
    if (!(options.least_letter_px > 0))
        throw std::invalid_argument("AdviceOptions.least_letter_px must be positive");
    if (!(options.most_blur > 0 && options.most_blur <= 1))
        throw std::invalid_argument("AdviceOptions.most_blur must be over 0, at most 1");
    if (!(options.most_moved > 0))
        throw std::invalid_argument("AdviceOptions.most_moved must be positive");
    if (!(options.most_clipped > 0 && options.most_clipped <= 1))
        throw std::invalid_argument("AdviceOptions.most_clipped must be over 0, at most 1");
}

// Height of the smallest letters of a mark, photo pixels; nothing where its lines are not known.
std::optional<double> letterHeight(const StampOutline& stamp)
{
    std::optional<double> least;
    for (std::size_t i = 0; i < stamp.lines.size(); ++i) {
        const Quad& q = stamp.lines[i];
        const bool bent = !stamp.curves.empty() && !stamp.curves[i].isStraight();
        const double height =
            bent ? stamp.curves[i].height_px : cv::norm((q[3] + q[2]) - (q[0] + q[1])) / 2;
        least = least ? std::min(*least, height) : height;
    }
    return least;
}

// One kind of trouble, of the mark that has it worst.
struct Worst {
    double times = 1;  // as bad as is borne; over 1: a hindrance
    std::string sentence{};

    void hear(double times_as_bad, const std::string& said)
    {
        if (times_as_bad > times) {
            times = times_as_bad;
            sentence = said;
        }
    }
};

struct Troubles {
    Worst small, blurred, moved, white, black;
    // A camera that moves moves every mark: one mark alone has strokes that look so.
    std::size_t marks = 0, moved_marks = 0;
};

std::string number(double value)
{
    std::ostringstream text;
    text.precision(value < 10 ? 1 : 0);
    text << std::fixed << value;
    return text.str();
}

// "the mark at 412, 300" by its middle.
std::string nameOf(const StampOutline& stamp)
{
    const Quad& q = stamp.corners;
    const cv::Point2f middle = (q[0] + q[1] + q[2] + q[3]) / 4;
    return "the mark at " + std::to_string(cvRound(middle.x)) + ", " +
           std::to_string(cvRound(middle.y));
}

void hearSize(const std::string& mark, double letter_px, const AdviceOptions& options,
              Troubles& troubles)
{
    troubles.small.hear(options.least_letter_px / letter_px,
                        "the letters of " + mark + " are about " + number(letter_px) +
                            " px high, too small to be read well (" +
                            number(options.least_letter_px) +
                            " px and more); photograph it from nearer, or scan it finer");
}

void hearSharpness(const std::string& mark, const Sharpness& sharp, double letter_px,
                   const AdviceOptions& options, Troubles& troubles)
{
    const auto percent = [&](double px) { return number(100 * px / letter_px) + " % of a letter"; };
    troubles.blurred.hear(sharp.blur_px / (options.most_blur * letter_px),
                          mark + " is blurred by about " + number(sharp.blur_px) + " px, " +
                              percent(sharp.blur_px) +
                              "; focus on it, and keep as far away as the lens needs");
    const double times_moved = sharp.moved_px / (options.most_moved * letter_px);
    troubles.marks += 1;
    troubles.moved_marks += times_moved > 1 ? 1 : 0;
    troubles.moved.hear(times_moved,
                        mark + " moved by about " + number(sharp.moved_px) + " px, " +
                            percent(sharp.moved_px) +
                            ", while it was photographed; rest the camera on something, or give "
                            "more light");
}

void hearLight(const std::string& mark, const cv::Mat& grey, const AdviceOptions& options,
               Troubles& troubles)
{
    const double whole = static_cast<double>(grey.total());
    const double white = cv::countNonZero(grey >= quite_white) / whole;
    const double black = cv::countNonZero(grey <= quite_black) / whole;
    troubles.white.hear(white / options.most_clipped,
                        number(100 * white) + " % of " + mark +
                            " is burnt out to white; expose less, or turn the lamp so that it does "
                            "not shine back");
    troubles.black.hear(black / options.most_clipped,
                        number(100 * black) + " % of " + mark +
                            " is lost in black; expose more, or lighten the shadow");
}

cv::Mat placeOf(const cv::Mat& pixels, const StampOutline& stamp)
{
    const std::vector<cv::Point2f> corners(stamp.corners.begin(), stamp.corners.end());
    const cv::Rect box = cv::boundingRect(corners) & cv::Rect({0, 0}, pixels.size());
    cv::Mat grey;
    if (box.area() > 0)
        cv::cvtColor(pixels(box), grey, cv::COLOR_BGR2GRAY);
    return grey;
}

}  // namespace

std::vector<std::string> adviceOn(const Photo& photo, const std::vector<StampOutline>& stamps,
                                  const AdviceOptions& options)
{
    check(photo, options);
    Troubles troubles;
    for (const StampOutline& stamp : stamps) {
        const cv::Mat grey = placeOf(photo.pixels, stamp);
        if (stamp.score < options.least_score || grey.empty())
            continue;
        const std::string mark = nameOf(stamp);
        hearLight(mark, grey, options, troubles);
        if (const auto letter_px = letterHeight(stamp)) {
            hearSize(mark, *letter_px, options, troubles);
            // Letters that are too small are not sharp either, and the remedy for one mends both.
            if (*letter_px >= options.least_letter_px)
                hearSharpness(mark, measureSharpness(grey, stroke_share * *letter_px), *letter_px,
                              options, troubles);
        }
    }
    if (2 * troubles.moved_marks < troubles.marks)
        troubles.moved = {};
    std::vector<std::string> advice;
    for (const Worst* worst :
         {&troubles.small, &troubles.blurred, &troubles.moved, &troubles.white, &troubles.black})
        if (!worst->sentence.empty())
            advice.push_back(worst->sentence);
    return advice;
}

}  // namespace vision
