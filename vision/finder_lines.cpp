#include "vision/finder_lines.h"

#include <algorithm>
#include <cmath>

#include <opencv2/imgproc.hpp>

namespace vision {

namespace {

// Added to the capitals above and below: hand-set letters dance, a Q and a comma hang.
constexpr double room = 0.06;
// Added to the core's drawn-in ends, for letters whose end the core does not quite reach.
constexpr double end_room = 0.1;

double logOdds(double share)
{
    const double p = std::clamp(share, 1e-4, 1 - 1e-4);
    return std::log(p / (1 - p));
}

FinderTraits traitsOf(const LineCore& core, const CoreShape& shape, double length_px)
{
    FinderTraits traits;
    traits.peak = -1e9;
    for (const CorePlace& place : core) {
        const double odds = logOdds(place.share);
        traits.mean += odds / static_cast<double>(core.size());
        traits.peak = std::max(traits.peak, odds);
    }
    traits.length = std::log(std::max(length_px / shape.height_px, 0.1));
    traits.accord = shape.accord;
    traits.height = std::log2(shape.height_px / FinderTable::unit_px);
    return traits;
}

// A rectangle that runs along a direction, around points.
Quad rectangleAround(const std::vector<cv::Point2f>& points, const cv::Point2d& along)
{
    const cv::Point2d down(-along.y, along.x);
    double left = 1e9, right = -1e9, top = 1e9, bottom = -1e9;
    for (const cv::Point2f& point : points) {
        const double x = cv::Point2d(point).dot(along), y = cv::Point2d(point).dot(down);
        left = std::min(left, x);
        right = std::max(right, x);
        top = std::min(top, y);
        bottom = std::max(bottom, y);
    }
    const auto at = [&](double x, double y) { return cv::Point2f(x * along + y * down); };
    return {at(left, top), at(right, top), at(right, bottom), at(left, bottom)};
}

// The course with what its core was drawn in by given back, points as dense as before.
LineCurve lengthened(const CoreShape& shape, double end_px, double height_px)
{
    const CurvePath path({shape.middle, height_px});
    LineCurve curve{{}, height_px};
    const double whole = path.length() + 2 * end_px;
    const std::size_t count = std::max<std::size_t>(shape.middle.size(), 3);
    for (std::size_t i = 0; i < count; ++i)
        curve.middle.emplace_back(
            path.at(whole * static_cast<double>(i) / static_cast<double>(count - 1) - end_px));
    return curve;
}

FinderLine lineOf(const LineCore& core)
{
    const CoreShape shape = shapeOf(core);
    const double end_px = (FinderTable::drawn_in + end_room) * shape.height_px;
    const LineCurve course = lengthened(shape, end_px, (1 + 2 * room) * shape.height_px);
    FinderLine found;
    found.line.corners = rectangleAround(bandOf(course), shape.along);
    if (!shape.isStraight())
        found.line.curve = course;
    found.line.height_px = shape.height_px;
    found.traits = traitsOf(core, shape, CurvePath(course).length());
    found.line.certainty = finderLineModel().probability(termsOf(found.traits));
    return found;
}

}  // namespace

std::vector<FinderLine> linesOf(const FinderTable& table, const CoreOptions& options)
{
    std::vector<FinderLine> lines;
    for (const LineCore& core : joinedCores(coresOf(table, options)))
        lines.push_back(lineOf(core));
    return lines;
}

std::vector<double> termsOf(const FinderTraits& traits)
{
    return {traits.mean, traits.peak, traits.length, traits.accord, traits.height};
}

const LogisticModel& finderLineModel()
{
    static const LogisticModel model{
        -9.4, {{"mean", 1.0}, {"peak", 2.1}, {"length", 0.6}, {"accord", 0.1}, {"height", 0.7}}};
    return model;
}

}  // namespace vision
