#include "vision/finder_cores.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include <opencv2/imgproc.hpp>

#include "vision/core_course.h"

namespace vision {

namespace {

constexpr double straight_within = 0.15;  // capital heights that a straight line may be left by
constexpr double longish = 2.5;           // length over thickness from which a core's own axis
                                          //   tells its direction better than the network
constexpr double most_apart_deg = 25;     // of that axis from what the network says
constexpr double least_accord = 0.3;      // of its places, for the network to have a say

void check(const FinderTable& table, const CoreOptions& options)
{
    for (const cv::Mat* part : {&table.core, &table.log_height, &table.cosine, &table.sine})
        if (part->type() != CV_32FC1 || part->size() != table.core.size())
            throw std::invalid_argument("coresOf: the table's parts must be CV_32FC1 of one size");
    if (!(options.from > 0 && options.from < 1))
        throw std::invalid_argument("CoreOptions.from must be over 0 and under 1");
    if (!(options.peak >= 0 && options.peak <= 1))
        throw std::invalid_argument("CoreOptions.peak must be from 0 to 1");
    if (!(options.faint > 0 && options.faint < 1))
        throw std::invalid_argument("CoreOptions.faint must be over 0 and under 1");
}

double probabilityOf(double log_odds)
{
    return 1 / (1 + std::exp(-log_odds));
}

// Sums over places, each by its share.
struct CoreSums {
    double share = 0, log_height = 0;
    cv::Point2d at, doubled;
    double xx = 0, xy = 0, yy = 0;  // about the middle
};

CoreSums sumsOf(const LineCore& core)
{
    CoreSums sums;
    for (const CorePlace& place : core) {
        sums.share += place.share;
        sums.log_height += place.share * place.log_height;
        sums.at += place.share * place.at;
        sums.doubled += place.share * place.doubled;
    }
    const cv::Point2d middle = sums.at / sums.share;
    for (const CorePlace& place : core) {
        const cv::Point2d d = place.at - middle;
        sums.xx += place.share * d.x * d.x;
        sums.xy += place.share * d.x * d.y;
        sums.yy += place.share * d.y * d.y;
    }
    return sums;
}

cv::Point2d directionFrom(const CoreSums& sums)
{
    const cv::Point2d own(sums.xx - sums.yy,
                          2 * sums.xy);  // doubled, as long as the spread differs
    const double spread = sums.xx + sums.yy, apart = cv::norm(own);
    const double accord = cv::norm(sums.doubled) / sums.share;
    if (accord < least_accord)
        return halved(own);
    if (spread + apart < longish * longish * std::max(spread - apart, 1e-9))
        return halved(sums.doubled);
    const double turn = std::acos(std::clamp(
        own.dot(sums.doubled) / std::max(apart * cv::norm(sums.doubled), 1e-9), -1.0, 1.0));
    return turn / 2 > most_apart_deg * CV_PI / 180 ? halved(sums.doubled) : halved(own);
}

// How far a parabola through the core, in its own frame, leaves its chord.
double sagOf(const LineCore& core, const cv::Point2d& middle, const cv::Point2d& along,
             double half_length)
{
    const cv::Point2d across(-along.y, along.x);
    cv::Matx33d products = cv::Matx33d::zeros();
    cv::Vec3d sums;
    for (const CorePlace& place : core) {
        const cv::Point2d d = place.at - middle;
        const double u = d.dot(along) / std::max(half_length, 1.0);
        const cv::Vec3d powers(1, u, u * u);
        products += place.share * (powers * powers.t());
        sums += place.share * d.dot(across) * powers;
    }
    cv::Vec3d terms;
    if (!cv::solve(products, sums, terms, cv::DECOMP_CHOLESKY))
        return 0;  // too few places to be bent
    return std::abs(terms[2]);
}

struct Ends {
    double first = 0, last = 0;
};

// Along a direction from the middle; a square reaches half a step beyond its own middle.
Ends endsOf(const LineCore& core, const cv::Point2d& middle, const cv::Point2d& along)
{
    Ends ends{1e9, -1e9};
    for (const CorePlace& place : core) {
        const double u = (place.at - middle).dot(along);
        ends.first = std::min(ends.first, u - FinderTable::step_px / 2.0);
        ends.last = std::max(ends.last, u + FinderTable::step_px / 2.0);
    }
    return ends;
}

}  // namespace

cv::Point2d halved(const cv::Point2d& doubled)
{
    const double angle = std::atan2(doubled.y, doubled.x) / 2;
    return {std::cos(angle), std::sin(angle)};
}

CorePlace placeAt(const FinderTable& table, int column, int row)
{
    return {FinderTable::pixelOf(column, row),
            probabilityOf(table.core.at<float>(row, column)),
            {table.cosine.at<float>(row, column), table.sine.at<float>(row, column)},
            table.log_height.at<float>(row, column)};
}

std::vector<LineCore> coresOf(const FinderTable& table, const CoreOptions& options)
{
    check(table, options);
    if (table.core.empty())
        return {};
    const cv::Mat inside = table.core >= std::log(options.from / (1 - options.from));
    cv::Mat labels;
    const int count = cv::connectedComponents(inside, labels, 8, CV_32S);
    std::vector<LineCore> cores(static_cast<std::size_t>(count));
    for (int y = 0; y < labels.rows; ++y)
        for (int x = 0; x < labels.cols; ++x) {
            const int label = labels.at<int>(y, x);
            if (label > 0)
                cores[static_cast<std::size_t>(label)].push_back(placeAt(table, x, y));
        }
    std::erase_if(cores, [&](const LineCore& core) {
        return std::none_of(core.begin(), core.end(),
                            [&](const CorePlace& place) { return place.share >= options.peak; });
    });
    return cores;
}

cv::Point2d alongOf(const LineCore& core)
{
    return directionFrom(sumsOf(core));
}

CoreShape shapeOf(const LineCore& core)
{
    if (core.empty())
        throw std::invalid_argument("shapeOf: a core has at least one place");
    const CoreSums sums = sumsOf(core);
    const cv::Point2d middle = sums.at / sums.share;
    CoreShape shape;
    shape.along = directionFrom(sums);
    shape.accord = std::min(1.0, cv::norm(sums.doubled) / sums.share);
    shape.height_px = FinderTable::unit_px * std::exp2(sums.log_height / sums.share);
    const Ends ends = endsOf(core, middle, shape.along);
    const double sag = sagOf(core, middle, shape.along, (ends.last - ends.first) / 2);
    if (sag > straight_within * shape.height_px)
        shape.middle = courseOf(core, shape.height_px);
    if (shape.middle.size() < 3)
        shape.middle = {middle + ends.first * shape.along, middle + ends.last * shape.along};
    else if (const cv::Point2d chord = shape.middle.back() - shape.middle.front(); chord.x > 0)
        shape.along = chord / cv::norm(chord);
    return shape;
}

}  // namespace vision
