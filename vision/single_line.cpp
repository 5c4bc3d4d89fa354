#include "vision/single_line.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <stdexcept>
#include <utility>

#include "vision/letter_chains.h"
#include "vision/line_search.h"
#include "vision/readability.h"
#include "vision/tilt.h"
#include "vision/upright.h"

namespace vision {

namespace {

constexpr double most_tilt_deg = 36;   // a little over what is promised
constexpr double level_deg = 2;        // a line tilted less may be read as it is
constexpr double ground_around = 1.3;  // height of what is cut out, in letters
constexpr int min_letter_px = 10;
constexpr double most_searched_px = 30000;  // letters of a line that long are still 15 px high
// Certainty of a line after which no other way is tried; of the first way, with nothing beside it.
constexpr double sure_enough = 0.5, sure_at_once = 0.8;
// Of the length of a crop: letters on less than most of it may be one limb of an arch.
constexpr double most_of_line = 0.7, much_more = 0.15;

// A straight line of text: a rectangle turned about its middle.
struct LineBand {
    cv::Point2d middle;
    double tilt_deg = 0;  // clockwise
    double along_px = 0, across_px = 0;
    double seen_px = 0;  // what of its length is seen to lie so
};

StampOutline outlineOf(const LineBand& band)
{
    const double a = band.tilt_deg * CV_PI / 180;
    const cv::Point2d right = cv::Point2d(std::cos(a), std::sin(a)) * (band.along_px / 2);
    const cv::Point2d down = cv::Point2d(-std::sin(a), std::cos(a)) * (band.across_px / 2);
    StampOutline outline;
    outline.corners = {band.middle - right - down, band.middle + right - down,
                       band.middle + right + down, band.middle - right + down};
    outline.score = 1;
    outline.up_deg = upOf(outline.corners);
    return outline;
}

cv::Size2d extentOf(const Photo& crop)
{
    return {crop.pixels.cols - 1.0, crop.pixels.rows - 1.0};
}

LineBand bandOfWhole(const Photo& crop)
{
    const cv::Size2d size = extentOf(crop);
    return {{size.width / 2, size.height / 2}, 0, size.width, size.height, size.width};
}

// The longest line of letters found, carried on from end to end of the crop; nothing where no line
// is long and sure enough.
std::optional<LineBand> bandOfLetters(const Photo& crop, const SearchedPhoto& searched)
{
    const cv::Size2d size = extentOf(crop);
    std::optional<LineBand> best;
    for (const LetterChain& line : findLines(searched, min_letter_px)) {
        Quad q = line.corners;
        scaleToPhoto(q, searched.scale);
        const double length = cv::norm((q[1] + q[2]) - (q[0] + q[3])) / 2;
        const double tilt_deg = std::remainder(upOf(q), 180.0);
        if (line.score < 0.3 || std::abs(tilt_deg) > most_tilt_deg || length < size.width / 3 ||
            (best && length < best->along_px))
            continue;
        const cv::Point2d middle = (q[0] + q[1] + q[2] + q[3]) / 4;
        best =
            LineBand{middle, tilt_deg, length, cv::norm((q[3] + q[2]) - (q[0] + q[1])) / 2, length};
    }
    if (!best)
        return best;
    const double a = best->tilt_deg * CV_PI / 180;
    best->middle.y += std::tan(a) * (size.width / 2 - best->middle.x);
    best->middle.x = size.width / 2;
    if (best->middle.y < 0 || best->middle.y > size.height)
        return std::nullopt;  // carried on to the middle it leaves the picture: not this line
    best->across_px = std::min(ground_around * best->across_px, size.height);
    best->along_px = size.width / std::cos(a);
    return best;
}

// By the projection profile of the crop as a whole.
LineBand bandOfProfile(const Photo& crop, const SearchedPhoto& searched)
{
    const cv::Size2d size = extentOf(crop);
    // More than the picture's diagonal a line that runs from end to end cannot be tilted.
    const double diagonal_deg = std::atan2(size.height, size.width) * 180 / CV_PI;
    const double tilt_deg = tiltOfText(searched.grey, std::clamp(diagonal_deg, 1.0, most_tilt_deg));
    const double a = std::abs(tilt_deg) * CV_PI / 180, c = std::cos(a), s = std::sin(a);
    // A tight upright crop around a tilted line tells how long and how high the line is; a margin
    // makes it seem higher, so never less than a fifth of the crop is taken.
    const double across =
        std::max((size.height * c - size.width * s) / (c * c - s * s), 0.2 * size.height);
    const double along = size.width * c + std::min(size.height, across) * s;
    return {{size.width / 2, size.height / 2}, tilt_deg, along, across, along};
}

double certaintyOf(const SingleLine& line)
{
    return line.reading.lines.empty() ? 0 : models::lineCertainty(line.reading.lines.front());
}

// Share of the picture's length on which letters are read.
double lengthRead(const SingleLine& line)
{
    if (line.reading.lines.empty())
        return 0;
    const std::vector<models::Cell>& cells = line.reading.lines.front().cells;
    return (cells.back().right_px - cells.front().left_px) / line.enhanced.rectified.pixels.cols;
}

bool isSure(const SingleLine& line, double from)
{
    return certaintyOf(line) >= from && lengthRead(line) > most_of_line;
}

// Of a bent line a straight look reads one limb, as sure as a short line: of two looks that read
// much more and much less the better is the one that tells more letters, else that tells its
// letters better.
bool isBetter(const SingleLine& line, const SingleLine& other)
{
    if (std::abs(lengthRead(line) - lengthRead(other)) > much_more)
        return toldLetters(line.reading) > toldLetters(other.reading);
    return readability(line.reading) > readability(other.reading);
}

SingleLine readAlong(const Photo& photo, const StampOutline& outline, TextReader& reader,
                     const RectifyOptions& options)
{
    SingleLine line{outline, enhanceStamp(rectifyStamp(photo, outline, options)), {}};
    line.reading = reader.readLine(line.enhanced);
    return line;
}

// How the line may lie: as the crop does, along letters, along the profile.
std::vector<LineBand> bandsOf(const Photo& crop)
{
    std::vector<LineBand> bands{bandOfWhole(crop)};
    const SearchedPhoto searched = reducedForSearch(crop, most_searched_px);
    if (const auto letters = bandOfLetters(crop, searched))
        bands.push_back(*letters);
    const LineBand profile = bandOfProfile(crop, searched);
    if (std::abs(profile.tilt_deg) > level_deg)
        bands.push_back(profile);
    return bands;
}

// A line that is seen to be tilted is read along its tilt before it is read as the crop lies.
void putLikeliestFirst(std::vector<LineBand>& bands, const Photo& crop)
{
    const auto likely = std::find_if(bands.begin() + 1, bands.end(), [&](const LineBand& band) {
        return std::abs(band.tilt_deg) > level_deg &&
               band.seen_px > most_of_line * extentOf(crop).width;
    });
    if (likely != bands.end())
        std::rotate(bands.begin(), likely, likely + 1);
}

// The way that is read best, none other being tried after a sure one.
SingleLine readAsItLies(const Photo& photo, TextReader& reader, const RectifyOptions& options)
{
    std::vector<LineBand> ways = bandsOf(photo);
    putLikeliestFirst(ways, photo);
    SingleLine best = readAlong(photo, outlineOf(ways.front()), reader, options);
    if (isSure(best, sure_at_once))
        return best;
    for (std::size_t i = 1; i < ways.size(); ++i) {
        SingleLine line = readAlong(photo, outlineOf(ways[i]), reader, options);
        if (isBetter(line, best))
            best = std::move(line);
        if (isSure(best, sure_enough))
            return best;
    }
    return best;
}

}  // namespace

std::vector<StampOutline> outlinesOfSingleLine(const Photo& photo)
{
    if (photo.pixels.empty())
        throw std::invalid_argument("outlinesOfSingleLine: the photo has no pixels");
    std::vector<StampOutline> outlines;
    for (const LineBand& band : bandsOf(photo))
        outlines.push_back(outlineOf(band));
    return outlines;
}

SingleLine readSingleLine(const Photo& photo, TextReader& reader, bool mirrored,
                          UprightNetwork* network)
{
    if (photo.pixels.empty())
        throw std::invalid_argument("readSingleLine: the photo has no pixels");
    // The ways that are tried have their tilts; what skew is seen in faint ink may be the weave's.
    SingleLine best = readAsItLies(photo, reader, {.correct_skew = false, .mirrored = mirrored});
    if (isSure(best, sure_at_once))
        return best;
    const double upright =
        network != nullptr ? uprightLogOdds(best.enhanced, *network, TextLayout::SingleLine) : 0;
    if (upright >= surely_upright || (upright > 0 && isSure(best, sure_enough)))
        return best;
    EnhancedStamp turned = enhanceStamp(turnedOver(best.enhanced.rectified));
    models::Reading reading = reader.readLine(turned);
    SingleLine over{best.outline, std::move(turned), std::move(reading)};
    // A line with lost letters is never sure as a whole, though what is left of it may be plain.
    return readability(over.reading) > readability(best.reading) ? over : best;
}

}  // namespace vision
