#include "vision/locate.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <stdexcept>

#include <opencv2/imgproc.hpp>

#include "vision/letter_chains.h"
#include "vision/letter_pieces.h"
#include "vision/line_groups.h"
#include "vision/tilt.h"

namespace vision {

namespace {

// Longest side searched: larger photos are reduced first, since a mark that matters fills more
// than a fiftieth of the picture and time grows with the area.
constexpr int longest_side_px = 2000;

constexpr double most_tilt_deg = 36;  // of a crop of one line; a little over what is promised

void checkOptions(const LocateOptions& options)
{
    if (options.max_stamps < 1)
        throw std::invalid_argument("LocateOptions.max_stamps must be at least 1");
    if (options.max_lines < 1)
        throw std::invalid_argument("LocateOptions.max_lines must be at least 1");
    if (!(options.min_score >= 0 && options.min_score <= 1))
        throw std::invalid_argument("LocateOptions.min_score must be from 0 to 1");
    if (options.min_letter_px < 1)
        throw std::invalid_argument("LocateOptions.min_letter_px must be at least 1");
}

cv::Mat greyOf(const cv::Mat& pixels)
{
    cv::Mat grey;
    if (pixels.channels() == 1)
        grey = pixels;
    else
        cv::cvtColor(pixels, grey, cv::COLOR_BGR2GRAY);
    return grey;
}

void scaleQuad(Quad& quad, float scale)
{
    const float shift = (scale - 1) / 2;
    for (cv::Point2f& corner : quad)
        corner = scale * corner + cv::Point2f(shift, shift);
}

// What is searched: a grey picture of bounded size.
struct Searched {
    cv::Mat grey;
    float scale = 1;  // photo pixels a pixel of it
};

Searched reduced(const Photo& photo)
{
    Searched searched{greyOf(photo.pixels)};
    const int longest = std::max(searched.grey.cols, searched.grey.rows);
    if (longest <= longest_side_px)
        return searched;
    searched.scale = static_cast<float>(longest) / longest_side_px;
    cv::Mat smaller;
    cv::resize(searched.grey, smaller, {}, 1 / searched.scale, 1 / searched.scale, cv::INTER_AREA);
    searched.grey = smaller;
    return searched;
}

// In pixels of what is searched.
std::vector<LetterChain> findLines(const Searched& searched, const LocateOptions& options)
{
    PieceOptions piece_options;
    piece_options.min_letter_px = std::max(
        1,
        static_cast<int>(std::lround(static_cast<float>(options.min_letter_px) / searched.scale)));
    return chainLetters(findLetterPieces(searched.grey, piece_options));
}

void scaleToPhoto(StampOutline& stamp, float scale)
{
    scaleQuad(stamp.corners, scale);
    for (Quad& line : stamp.lines)
        scaleQuad(line, scale);
}

// A straight line of text: a rectangle turned about its middle.
struct LineBand {
    cv::Point2d middle;
    double tilt_deg = 0;  // clockwise
    double along_px = 0, across_px = 0;
};

Quad cornersOf(const LineBand& band)
{
    const double a = band.tilt_deg * CV_PI / 180;
    const cv::Point2d right = cv::Point2d(std::cos(a), std::sin(a)) * (band.along_px / 2);
    const cv::Point2d down = cv::Point2d(-std::sin(a), std::cos(a)) * (band.across_px / 2);
    return {band.middle - right - down, band.middle + right - down, band.middle + right + down,
            band.middle - right + down};
}

// The longest line of letters found in a crop of one line, carried on from end to end of the crop;
// nothing where no line is long and sure enough.
std::optional<LineBand> bandOfLetters(const Photo& crop)
{
    const double width = crop.pixels.cols - 1, height = crop.pixels.rows - 1;
    const Searched searched = reduced(crop);
    std::optional<LineBand> best;
    for (const LetterChain& line : findLines(searched, {})) {
        Quad q = line.corners;
        scaleQuad(q, searched.scale);
        const double length = cv::norm((q[1] + q[2]) - (q[0] + q[3])) / 2;
        const double tilt_deg = std::remainder(upOf(q), 180.0);
        if (line.score < 0.3 || std::abs(tilt_deg) > most_tilt_deg || length < width / 3 ||
            (best && length < best->along_px))
            continue;
        const cv::Point2d middle = (q[0] + q[1] + q[2] + q[3]) / 4;
        best = LineBand{middle, tilt_deg, length, cv::norm((q[3] + q[2]) - (q[0] + q[1])) / 2};
    }
    if (!best)
        return best;
    const double a = best->tilt_deg * CV_PI / 180;
    best->middle.y += std::tan(a) * (width / 2 - best->middle.x);
    best->middle.x = width / 2;
    if (best->middle.y < 0 || best->middle.y > height)
        return std::nullopt;  // carried on to the middle it leaves the picture: not this line
    best->across_px = std::min(1.3 * best->across_px, height);
    best->along_px = width / std::cos(a);
    return best;
}

// The same by the projection profile of the crop as a whole.
LineBand bandOfProfile(const Photo& crop)
{
    const double width = crop.pixels.cols - 1, height = crop.pixels.rows - 1;
    // More than the picture's diagonal a line that runs from end to end cannot be tilted.
    const double diagonal_deg = std::atan2(height, width) * 180 / CV_PI;
    const double tilt_deg =
        tiltOfText(greyOf(crop.pixels), std::clamp(diagonal_deg, 1.0, most_tilt_deg));
    const double a = std::abs(tilt_deg) * CV_PI / 180, c = std::cos(a), s = std::sin(a);
    // A tight upright crop around a tilted line tells how long and how high the line is; a margin
    // makes it seem higher, so never less than a fifth of the crop is taken.
    const double across = std::max((height * c - width * s) / (c * c - s * s), 0.2 * height);
    const double along = width * c + std::min(height, across) * s;
    return {{width / 2, height / 2}, tilt_deg, along, across};
}

}  // namespace

std::vector<StampOutline> locateStamps(const Photo& photo, const LocateOptions& options)
{
    checkOptions(options);
    if (photo.pixels.empty())
        throw std::invalid_argument("locateStamps: the photo has no pixels");
    const Searched searched = reduced(photo);
    std::vector<LetterChain> lines = findLines(searched, options);
    std::erase_if(lines, [&](const LetterChain& line) { return line.score < options.min_score; });
    if (lines.size() > static_cast<std::size_t>(options.max_lines))
        lines.resize(static_cast<std::size_t>(options.max_lines));
    std::vector<StampOutline> stamps = groupLines(lines, searched.grey);
    if (stamps.size() > static_cast<std::size_t>(options.max_stamps))
        stamps.resize(static_cast<std::size_t>(options.max_stamps));
    for (StampOutline& stamp : stamps)
        scaleToPhoto(stamp, searched.scale);
    return stamps;
}

StampOutline outlineFromCorners(const Quad& corners)
{
    const std::vector<cv::Point2f> polygon(corners.begin(), corners.end());
    for (const cv::Point2f& corner : corners)
        if (!std::isfinite(corner.x) || !std::isfinite(corner.y))
            throw std::invalid_argument("outlineFromCorners: a corner is not a number");
    if (!cv::isContourConvex(polygon) || cv::contourArea(polygon, true) < 16)
        throw std::invalid_argument(
            "outlineFromCorners: the corners must make a convex quadrilateral of some size, "
            "clockwise from the stamp's top left");
    StampOutline outline;
    outline.corners = corners;
    outline.score = 1;
    outline.up_deg = upOf(corners);
    return outline;
}

StampOutline outlineOfSingleLine(const Photo& photo)
{
    if (photo.pixels.empty())
        throw std::invalid_argument("outlineOfSingleLine: the photo has no pixels");
    const std::optional<LineBand> letters = bandOfLetters(photo);
    const LineBand band = letters ? *letters : bandOfProfile(photo);
    StampOutline outline;
    outline.corners = cornersOf(band);
    outline.score = 1;
    outline.up_deg = upOf(outline.corners);
    return outline;
}

double upOf(const Quad& corners)
{
    const cv::Point2f along = (corners[1] - corners[0]) + (corners[2] - corners[3]);
    const double angle = std::atan2(along.y, along.x) * 180 / CV_PI;
    return angle < 0 ? angle + 360 : angle;
}

}  // namespace vision
