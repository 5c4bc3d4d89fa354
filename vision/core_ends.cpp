#include "vision/core_ends.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <optional>
#include <utility>

namespace vision {

namespace {

constexpr double widest_gap = 2.0, deepest_overlap = 0.3, most_beside = 0.3;  // capital heights
constexpr double most_turn_deg = 20, most_taller = 1.4;  // of one part against the next
// A core grows in steps, each followed by a look how it lies now. In capital heights:
constexpr int most_steps = 8;
constexpr double step_reach = 1.0;
constexpr double least_reach = 0.4;  // of what is more than the core's soft edge
constexpr double bare_way = 0.6;     // over which nothing shows, and the line has ended
constexpr double row_beside = 0.15;  // of the end's direction, within which its row begins,
constexpr double row_spread = 0.2;   //   and how much wider it gets with the way
constexpr double most_met_deg = 35;  // the turn of a core that is met, against the row

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

// Cores that grow on a table, and know which place is whose.
class GrowingCores {
public:
    GrowingCores(std::vector<LineCore> cores, const FinderTable& table, double faint)
        : cores_(std::move(cores)),
          table_(table),
          faint_(faint),
          owners_(cv::Mat::zeros(table.core.size(), CV_32S))
    {
        for (std::size_t i = 0; i < cores_.size(); ++i)
            own(cores_[i], i);
    }

    void grow()
    {
        for (std::size_t i = 0; i < cores_.size(); ++i)
            for (int step = 0; step < most_steps && !cores_[i].empty(); ++step)
                if (!growOnce(i))
                    break;
    }

    std::vector<LineCore> grown() const
    {
        std::vector<LineCore> cores;
        std::copy_if(cores_.begin(), cores_.end(), std::back_inserter(cores),
                     [](const LineCore& core) { return !core.empty(); });
        return cores;
    }

private:
    // What lies in the row beyond a tip: places, up to where another core begins.
    struct Row {
        LineCore places;
        double reach_px = 0;  // how far they go
        std::optional<CorePlace> met{};
    };

    int& ownerOf(const CorePlace& place)
    {
        constexpr double step = FinderTable::step_px;
        return owners_.at<int>(cvFloor(place.at.y / step), cvFloor(place.at.x / step));
    }

    void own(const LineCore& core, std::size_t owner)
    {
        for (const CorePlace& place : core)
            ownerOf(place) = static_cast<int>(owner) + 1;
    }

    // Places that show something about a tip's row, by the way from it.
    std::vector<std::pair<double, CorePlace>> shownBeyond(const Tip& tip, double capital_px) const
    {
        constexpr double step = FinderTable::step_px;
        const double reach = step_reach * capital_px + step;
        const cv::Point2d across(-tip.along.y, tip.along.x), corner(reach, reach);
        const cv::Point first = (tip.at - corner) / step, end = (tip.at + corner) / step;
        const cv::Rect cells =
            cv::Rect(first, end + cv::Point(1, 1)) & cv::Rect({0, 0}, table_.core.size());
        std::vector<std::pair<double, CorePlace>> places;
        for (int y = cells.y; y < cells.br().y; ++y)
            for (int x = cells.x; x < cells.br().x; ++x) {
                const CorePlace place = placeAt(table_, x, y);
                const double way = (place.at - tip.at).dot(tip.along);
                const double beside = std::abs((place.at - tip.at).dot(across));
                if (place.share >= faint_ && way > -step && way < reach &&
                    beside < std::max(row_beside * capital_px, step / 2) + row_spread * way)
                    places.emplace_back(way, place);
            }
        std::sort(places.begin(), places.end(),
                  [](const auto& a, const auto& b) { return a.first < b.first; });
        return places;
    }

    Row rowBeyond(const Tip& tip, double capital_px, std::size_t of)
    {
        Row row;
        double gone = 0;
        for (const auto& [way, place] : shownBeyond(tip, capital_px)) {
            if (way - gone > std::max(bare_way * capital_px, 2.0 * FinderTable::step_px))
                break;
            const int owner = ownerOf(place);
            if (owner == static_cast<int>(of) + 1)
                continue;
            gone = way;
            if (owner > 0) {
                row.met = place;
                break;
            }
            row.places.push_back(place);
            row.reach_px = way;
        }
        return row;
    }

    bool runsOnInto(const CorePlace& place, const Tip& tip, double capital_px) const
    {
        const double times = FinderTable::unit_px * std::exp2(place.log_height) / capital_px;
        return std::max(times, 1 / times) < most_taller &&
               std::abs(halved(place.doubled).dot(tip.along)) >
                   std::cos(most_met_deg * CV_PI / 180);
    }

    void add(std::size_t to, const LineCore& places)
    {
        own(places, to);
        cores_[to].insert(cores_[to].end(), places.begin(), places.end());
    }

    // Whether the core has got places at one of its ends.
    bool growOnce(std::size_t i)
    {
        const CoreShape shape = shapeOf(cores_[i]);
        bool more = false;
        for (const bool last : {false, true}) {
            const Tip tip = tipOf(shape, last);
            const Row row = rowBeyond(tip, shape.height_px, i);
            const bool runs_on = row.met && runsOnInto(*row.met, tip, shape.height_px);
            if (!runs_on && row.reach_px < least_reach * shape.height_px)
                continue;  // the core's own soft edge
            if (runs_on) {
                const auto other = static_cast<std::size_t>(ownerOf(*row.met) - 1);
                add(i, std::exchange(cores_[other], {}));
            }
            add(i, row.places);
            more = true;
        }
        return more;
    }

    std::vector<LineCore> cores_;
    const FinderTable& table_;
    double faint_;
    cv::Mat owners_;  // CV_32S: of each place, its core's number and 1; 0: nobody's
};

}  // namespace

std::vector<LineCore> grownCores(std::vector<LineCore> cores, const FinderTable& table,
                                 const CoreOptions& options)
{
    GrowingCores growing(std::move(cores), table, options.faint);
    growing.grow();
    return growing.grown();
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
