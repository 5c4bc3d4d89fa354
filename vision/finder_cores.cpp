#include "vision/finder_cores.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <stdexcept>
#include <utility>

#include <opencv2/imgproc.hpp>

#include "vision/core_course.h"

namespace vision {

namespace {

constexpr double straight_within = 0.15;  // capital heights that a straight line may be left by
constexpr double longish = 2.5;           // length over thickness from which a core's own axis
                                          //   tells its direction better than the network
constexpr double most_apart_deg = 25;     // of that axis from what the network says
constexpr double least_accord = 0.3;      // of its places, for the network to have a say
constexpr double widest_gap = 2.0, deepest_overlap = 0.3, most_beside = 0.3;  // capital heights
constexpr double most_turn_deg = 20, most_taller = 1.4;  // of one part against the next

void check(const FinderTable& table, const CoreOptions& options)
{
    for (const cv::Mat* part : {&table.core, &table.log_height, &table.cosine, &table.sine})
        if (part->type() != CV_32FC1 || part->size() != table.core.size())
            throw std::invalid_argument("coresOf: the table's parts must be CV_32FC1 of one size");
    if (!(options.from > 0 && options.from < 1))
        throw std::invalid_argument("CoreOptions.from must be over 0 and under 1");
    if (!(options.peak >= 0 && options.peak <= 1))
        throw std::invalid_argument("CoreOptions.peak must be from 0 to 1");
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

// Of a shape, where its course ends and the way it runs there.
struct Tip {
    cv::Point2d at, along;
};

// The tip at the shape's end, seen going out of it.
Tip tipOf(const CoreShape& shape, bool last)
{
    const std::size_t count = shape.middle.size();
    const cv::Point2d tip = shape.middle[last ? count - 1 : 0];
    const cv::Point2d inner = shape.middle[last ? count - 2 : 1];
    if (shape.isStraight())
        return {tip, last ? shape.along : -shape.along};
    return {tip, (tip - inner) / std::max(cv::norm(tip - inner), 1e-9)};
}

//   capital_px  of the taller one
bool meet(const Tip& end, const Tip& start, double capital_px)
{
    if (-end.along.dot(start.along) < std::cos(most_turn_deg * CV_PI / 180))
        return false;
    const cv::Point2d run = end.along - start.along;
    const cv::Point2d along = run / cv::norm(run), gap = start.at - end.at;
    // Cores are drawn in at their ends: the letters stand nearer than the cores.
    const double between = gap.dot(along) - 2 * FinderTable::drawn_in * capital_px;
    return between < widest_gap * capital_px && between > -deepest_overlap * capital_px &&
           std::abs(gap.dot({-along.y, along.x})) < most_beside * capital_px;
}

// Whether one core goes on where the other ends. (Lines near upright may run either way.)
bool goOn(const CoreShape& a, const CoreShape& b)
{
    const double taller = std::max(a.height_px, b.height_px);
    if (taller > most_taller * std::min(a.height_px, b.height_px))
        return false;
    for (const bool of_a : {false, true})
        for (const bool of_b : {false, true})
            if (meet(tipOf(a, of_a), tipOf(b, of_b), taller))
                return true;
    return false;
}

}  // namespace

cv::Point2d halved(const cv::Point2d& doubled)
{
    const double angle = std::atan2(doubled.y, doubled.x) / 2;
    return {std::cos(angle), std::sin(angle)};
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
                cores[static_cast<std::size_t>(label)].push_back(
                    {FinderTable::pixelOf(x, y),
                     probabilityOf(table.core.at<float>(y, x)),
                     {table.cosine.at<float>(y, x), table.sine.at<float>(y, x)},
                     table.log_height.at<float>(y, x)});
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

std::vector<LineCore> joinedCores(std::vector<LineCore> cores)
{
    std::vector<CoreShape> shapes;
    for (const LineCore& core : cores)
        shapes.push_back(shapeOf(core));
    const auto pairToJoin = [&]() -> std::optional<std::pair<std::size_t, std::size_t>> {
        for (std::size_t i = 0; i < cores.size(); ++i)
            for (std::size_t j = i + 1; j < cores.size(); ++j)
                if (goOn(shapes[i], shapes[j]))
                    return std::pair(i, j);
        return std::nullopt;
    };
    while (const auto pair = pairToJoin()) {
        const auto [first, next] = *pair;
        cores[first].insert(cores[first].end(), cores[next].begin(), cores[next].end());
        shapes[first] = shapeOf(cores[first]);
        cores.erase(cores.begin() + static_cast<std::ptrdiff_t>(next));
        shapes.erase(shapes.begin() + static_cast<std::ptrdiff_t>(next));
    }
    return cores;
}

}  // namespace vision
