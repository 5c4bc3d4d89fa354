#include "vision/core_course.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <optional>

namespace vision {

namespace {

constexpr double step = 0.5;        // from point to point, capital heights
constexpr double reach = 0.7;       // across the course, within which places belong to it
constexpr double widest_gap = 2.5;  // between the cores of one line, capital heights
constexpr int most_bends = 4;  // degree of the smooth curve; four follow an arch to 200 degrees
constexpr std::size_t most_steps = 400;

struct Look {
    double share = 0;     // of the places seen, their sum
    cv::Point2d at;       // the looked-at point, brought to the middle of the core
    cv::Point2d doubled;  // the line's turn there, as the network says it
    double farthest = 0;  // along the direction looked in, how far places reach from the point
};

cv::Point2d normalised(const cv::Point2d& v)
{
    return v / std::max(cv::norm(v), 1e-9);
}

// A core followed place by place.
class CoreTrace {
public:
    CoreTrace(const LineCore& core, double capital_px)
        : core_(core),
          step_px_(std::max(step * capital_px, 1.0 * FinderTable::step_px)),
          reach_px_(std::max(reach * capital_px, 1.0 * FinderTable::step_px))
    {
    }

    double stepPx() const { return step_px_; }

    // A step from a walk's beginning, after many: it has gone around a ring.
    bool isBackAt(const std::vector<cv::Point2d>& points, const cv::Point2d& from) const
    {
        return points.size() > 6 && cv::norm(points.back() - from) < 1.5 * step_px_;
    }

    // The places about a point, not farther along the direction than half a step.
    Look around(const cv::Point2d& point, const cv::Point2d& along) const
    {
        const cv::Point2d across(-along.y, along.x);
        Look look{0, point, {}, 0};
        double beside = 0;
        for (const CorePlace& place : core_) {
            const cv::Point2d d = place.at - point;
            const double u = d.dot(along), v = d.dot(across);
            if (std::abs(v) > reach_px_ || std::abs(u) > step_px_)
                continue;
            look.farthest = std::max(look.farthest, u);
            if (std::abs(u) > step_px_ / 2 + FinderTable::step_px / 2.0)
                continue;
            look.share += place.share;
            beside += place.share * v;
            look.doubled += place.share * place.doubled;
        }
        if (look.share > 0) {
            look.at += beside / look.share * across;
            look.doubled /= look.share;
        }
        return look;
    }

    // From a point on the core, the way given, to the core's end.
    std::vector<cv::Point2d> walk(const cv::Point2d& from, cv::Point2d along) const
    {
        std::vector<cv::Point2d> points;
        cv::Point2d point = from;
        while (points.size() < most_steps && !isBackAt(points, from)) {
            const std::optional<Look> next = lookAhead(point, along);
            if (!next) {
                const double left = around(point, along).farthest;
                points.push_back(point + (left + FinderTable::step_px / 2.0) * along);
                break;
            }
            const cv::Point2d gone = normalised(next->at - point);
            cv::Point2d said = cv::norm(next->doubled) * halved(next->doubled);
            if (said.dot(gone) < 0)
                said = -said;
            along = normalised(gone + said);
            point = next->at;
            points.push_back(point);
        }
        return points;
    }

private:
    // A step on, or beyond a gap between the parts of a joined core; nothing where it ends.
    std::optional<Look> lookAhead(const cv::Point2d& point, const cv::Point2d& along) const
    {
        for (int steps = 1; steps <= 1 + widest_gap / step; ++steps)
            if (const Look look = around(point + steps * step_px_ * along, along); look.share > 0)
                return look;
        return std::nullopt;
    }

    const LineCore& core_;
    double step_px_, reach_px_;
};

cv::Mat powersOf(double way, int degree)
{
    cv::Mat row(1, degree + 1, CV_64F);
    for (int k = 0; k <= degree; ++k)
        row.at<double>(k) = std::pow(way, k);
    return row;
}

// Both coordinates as polynomials of the way along the course, -1 to 1, by least squares, and from
// them points evenly apart.
std::vector<cv::Point2f> smoothCourse(const std::vector<cv::Point2d>& points, double apart_px)
{
    std::vector<double> ways{0};
    for (std::size_t i = 1; i < points.size(); ++i)
        ways.push_back(ways.back() + cv::norm(points[i] - points[i - 1]));
    const double whole = ways.back();
    const int degree = std::min<int>(most_bends, static_cast<int>(points.size() - 1) / 2);
    cv::Mat products, values, terms;
    for (std::size_t i = 0; i < points.size(); ++i) {
        products.push_back(powersOf(2 * ways[i] / whole - 1, degree));
        values.push_back(cv::Mat(cv::Matx12d(points[i].x, points[i].y)));
    }
    cv::solve(products, values, terms, cv::DECOMP_SVD);
    const int count = std::max(3, cvRound(whole / apart_px));
    std::vector<cv::Point2f> course;
    for (int i = 0; i <= count; ++i) {
        const cv::Mat at = powersOf(2.0 * i / count - 1, degree) * terms;
        course.emplace_back(static_cast<float>(at.at<double>(0)),
                            static_cast<float>(at.at<double>(1)));
    }
    return course;
}

// A place well inside the core, about the middle of its course.
const CorePlace& startOf(const LineCore& core)
{
    cv::Point2d middle;
    for (const CorePlace& place : core)
        middle += place.at / static_cast<double>(core.size());
    return *std::min_element(core.begin(), core.end(), [&](const CorePlace& a, const CorePlace& b) {
        return cv::norm(a.at - middle) < cv::norm(b.at - middle);
    });
}

// The turn of the line about a point, by the network and by how the places near it are spread.
cv::Point2d alongAt(const LineCore& core, const cv::Point2d& point, double capital_px)
{
    LineCore near;
    std::copy_if(core.begin(), core.end(), std::back_inserter(near), [&](const CorePlace& place) {
        return cv::norm(place.at - point) < 1.5 * capital_px;
    });
    return alongOf(near);
}

}  // namespace

std::vector<cv::Point2f> courseOf(const LineCore& core, double capital_px)
{
    const CoreTrace trace(core, capital_px);
    const CorePlace& start = startOf(core);
    const cv::Point2d along = alongAt(core, start.at, capital_px);
    const Look first = trace.around(start.at, along);
    std::vector<cv::Point2d> points = trace.walk(first.at, -along);
    const bool ring = trace.isBackAt(points, first.at);
    std::reverse(points.begin(), points.end());
    points.push_back(first.at);
    if (!ring) {
        const auto onward = trace.walk(first.at, along);
        points.insert(points.end(), onward.begin(), onward.end());
    }
    if (points.size() < 5)
        return {};
    if (points.back().x < points.front().x)
        std::reverse(points.begin(), points.end());
    return smoothCourse(points, trace.stepPx());
}

}  // namespace vision
