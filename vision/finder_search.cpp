#include "vision/finder_search.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>
#include <stdexcept>

#include <opencv2/imgproc.hpp>

namespace vision {

namespace {

constexpr double best_px = 28;          // capitals that the network knows best
constexpr double surely_known_px = 13;  // smaller ones are left to a finer look where there is one
constexpr double level_step = 4;        // from one look to the next coarser
constexpr int least_side_px = 64;       // of a picture worth a look
constexpr double same_place = 0.4;      // of the smaller line's area
constexpr double ground_around = 3;     // of a place looked at closely, capitals
constexpr double least_certainty = 0.02;

// A picture that is shown to the network, and where it lies in the photo.
struct LookedAt {
    cv::Mat grey;
    double scale = 1;      // photo pixels a pixel of it
    cv::Point2d origin{};  // photo pixel at its upper left corner's outer edge, counted from the
                           //   photo's own outer edge

    cv::Point2f inPhoto(const cv::Point2f& point) const
    {
        return (cv::Point2d(point) + cv::Point2d(0.5, 0.5)) * scale + origin -
               cv::Point2d(0.5, 0.5);
    }
};

void check(const cv::Mat& grey, const FinderSearchOptions& options)
{
    if (grey.empty() || grey.type() != CV_8UC1)
        throw std::invalid_argument("searchLines: the photo must be CV_8UC1 and not empty");
    if (!(options.least_megapixels > 0 && options.close_megapixels > 0 &&
          options.close_under_px > 0))
        throw std::invalid_argument("FinderSearchOptions: every field must be positive");
    if (!(options.most_megapixels >= options.least_megapixels))
        throw std::invalid_argument(
            "FinderSearchOptions.most_megapixels must not be under least_megapixels");
}

// How many times smaller than the photo the first look's picture is, a side.
double firstReduction(const cv::Mat& grey, const FinderSearchOptions& options)
{
    const double megapixels = static_cast<double>(grey.total()) / 1e6;
    const double looked_at =
        std::clamp(megapixels / 4, options.least_megapixels, options.most_megapixels);
    return std::sqrt(std::max(1.0, megapixels / looked_at));
}

LookedAt reduced(const LookedAt& from, double times)
{
    if (times <= 1)
        return from;
    LookedAt small{{}, from.scale * times, from.origin};
    const cv::Size size(std::max(1, static_cast<int>(std::lround(from.grey.cols / times))),
                        std::max(1, static_cast<int>(std::lround(from.grey.rows / times))));
    cv::resize(from.grey, small.grey, size, 0, 0, cv::INTER_AREA);
    return small;
}

FinderLine inPhoto(FinderLine found, const LookedAt& at)
{
    for (cv::Point2f& corner : found.line.corners)
        corner = at.inPhoto(corner);
    for (cv::Point2f& point : found.line.curve.middle)
        point = at.inPhoto(point);
    found.line.curve.height_px *= at.scale;
    found.line.height_px *= at.scale;
    return found;
}

// Lines with capitals of least_px <= height < most_px in what was looked at.
std::vector<FinderLine> lookAt(const LookedAt& at, FinderNetwork& network, const CoreOptions& cores,
                               double least_px, double most_px)
{
    std::vector<FinderLine> lines;
    for (FinderLine& found : linesOf(network.look(at.grey), cores))
        if (found.line.height_px >= least_px && found.line.height_px < most_px &&
            found.line.certainty >= least_certainty)
            lines.push_back(inPhoto(std::move(found), at));
    return lines;
}

double capitalSeen(const FinderLine& found)
{
    return FinderTable::unit_px * std::exp2(found.traits.height);
}

// How far an answer is to be trusted against another to the same place.
double worth(const FinderLine& found)
{
    const double away = std::log2(capitalSeen(found) / best_px);
    return found.line.certainty * std::exp(-away * away / 4);
}

std::vector<FinderLine> bestOfSamePlace(std::vector<FinderLine> lines)
{
    std::stable_sort(lines.begin(), lines.end(),
                     [](const FinderLine& a, const FinderLine& b) { return worth(a) > worth(b); });
    std::vector<FinderLine> kept;
    for (FinderLine& found : lines)
        if (std::none_of(kept.begin(), kept.end(), [&](const FinderLine& better) {
                return commonShare(better.line.corners, found.line.corners) > same_place;
            }))
            kept.push_back(std::move(found));
    std::stable_sort(kept.begin(), kept.end(), [](const FinderLine& a, const FinderLine& b) {
        return a.line.certainty > b.line.certainty;
    });
    return kept;
}

// A part of the photo that is looked at closely.
struct ClosePlace {
    cv::Rect2d box;         // photo pixels
    double capital_px = 0;  // of its smallest letters, photo pixels
    double certainty = 0;   // of its likeliest line
};

double megapixelsOf(const ClosePlace& place)
{
    const double scale = std::max(1.0, place.capital_px / best_px);
    return place.box.area() / scale / scale / 1e6;
}

ClosePlace placeOf(const FoundLine& line)
{
    const cv::Rect2f box =
        cv::boundingRect(std::vector<cv::Point2f>(line.corners.begin(), line.corners.end()));
    const double rim = ground_around * line.height_px;
    return {cv::Rect2d(box.x - rim, box.y - rim, box.width + 2 * rim, box.height + 2 * rim),
            line.height_px, line.certainty};
}

// Places that overlap are one; likeliest first.
std::vector<ClosePlace> joinedPlaces(const std::vector<FinderLine>& lines)
{
    std::vector<ClosePlace> places;
    for (const FinderLine& found : lines) {
        ClosePlace place = placeOf(found.line);
        for (auto other = places.begin(); other != places.end();) {
            if ((other->box & place.box).area() <= 0) {
                ++other;
                continue;
            }
            place = {place.box | other->box, std::min(place.capital_px, other->capital_px),
                     std::max(place.certainty, other->certainty)};
            places.erase(other);
            other = places.begin();
        }
        places.push_back(place);
    }
    std::stable_sort(places.begin(), places.end(), [](const ClosePlace& a, const ClosePlace& b) {
        return a.certainty > b.certainty;
    });
    return places;
}

LookedAt cutOut(const cv::Mat& grey, const ClosePlace& place)
{
    const cv::Rect box = cv::Rect(place.box) & cv::Rect({0, 0}, grey.size());
    const LookedAt full{grey(box), 1, cv::Point2d(box.tl())};
    return reduced(full, place.capital_px / best_px);
}

bool standsIn(const FinderLine& found, const ClosePlace& place)
{
    const Quad& q = found.line.corners;
    return place.box.contains(cv::Point2d(q[0] + q[2]) / 2);
}

// Lines with small letters in the reduced photo, as they are when looked at closely; where the
// pixels that may be spent on it run out, as they were.
std::vector<FinderLine> lookClosely(std::vector<FinderLine> small, const cv::Mat& grey,
                                    FinderNetwork& network, const FinderSearchOptions& options)
{
    std::vector<FinderLine> lines;
    double left = options.close_megapixels;
    for (const ClosePlace& place : joinedPlaces(small)) {
        if (megapixelsOf(place) > left)
            continue;
        left -= megapixelsOf(place);
        const LookedAt at = cutOut(grey, place);
        std::erase_if(small, [&](const FinderLine& found) { return standsIn(found, place); });
        auto seen = lookAt(at, network, options.cores, FinderNetwork::least_capital_px,
                           FinderNetwork::most_capital_px);
        std::move(seen.begin(), seen.end(), std::back_inserter(lines));
    }
    std::move(small.begin(), small.end(), std::back_inserter(lines));
    return lines;
}

}  // namespace

std::vector<FinderLine> searchLines(const cv::Mat& grey, FinderNetwork& network,
                                    const FinderSearchOptions& options)
{
    check(grey, options);
    LookedAt level = reduced({grey}, firstReduction(grey, options));
    const double small_px = options.close_under_px * level.scale;
    const bool may_look_closely = level.scale > 1.1;
    std::vector<FinderLine> small, lines;
    double least_px = FinderNetwork::least_capital_px;
    while (true) {
        const bool last = std::max(level.grey.cols, level.grey.rows) / level_step < least_side_px;
        const double most_px =
            last ? std::numeric_limits<double>::infinity() : FinderNetwork::most_capital_px;
        for (FinderLine& found : lookAt(level, network, options.cores, least_px, most_px))
            (may_look_closely && found.line.height_px < small_px ? small : lines)
                .push_back(std::move(found));
        if (last)
            break;
        level = reduced(level, level_step);
        least_px = surely_known_px;
    }
    for (FinderLine& found : lookClosely(std::move(small), grey, network, options))
        lines.push_back(std::move(found));
    return bestOfSamePlace(std::move(lines));
}

}  // namespace vision
