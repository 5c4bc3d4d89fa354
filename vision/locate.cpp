#include "vision/locate.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <utility>

#include <opencv2/imgproc.hpp>

#include "vision/found_line.h"
#include "vision/letter_chains.h"
#include "vision/line_groups.h"
#include "vision/line_search.h"

namespace vision {

namespace {

FoundLine foundLine(const LetterChain& chain)
{
    FoundLine line;
    line.corners = chain.corners;
    line.height_px = chain.height_px;
    line.certainty = chain.score;
    return line;
}

}  // namespace

std::vector<StampOutline> locateStamps(const Photo& photo, const LocateOptions& options)
{
    if (photo.pixels.empty())
        throw std::invalid_argument("locateStamps: the photo has no pixels");
    const SearchedPhoto searched = reducedForSearch(photo);
    std::vector<FoundLine> lines;
    for (const LetterChain& chain : findLines(searched, options.min_letter_px))
        lines.push_back(foundLine(chain));
    std::vector<StampOutline> stamps = stampsOf(lines, searched.grey, options);
    for (StampOutline& stamp : stamps) {
        scaleToPhoto(stamp.corners, searched.scale);
        for (Quad& line : stamp.lines)
            scaleToPhoto(line, searched.scale);
    }
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

StampOutline turnedOver(StampOutline outline)
{
    const auto over = [](const Quad& q) { return Quad{q[2], q[3], q[0], q[1]}; };
    outline.corners = over(outline.corners);
    outline.up_deg = std::fmod(outline.up_deg + 180, 360);
    std::reverse(outline.lines.begin(), outline.lines.end());
    for (Quad& line : outline.lines)
        line = over(line);
    std::reverse(outline.curves.begin(), outline.curves.end());
    for (LineCurve& curve : outline.curves)
        curve = reversedCurve(std::move(curve));
    return outline;
}

double upOf(const Quad& corners)
{
    const cv::Point2f along = (corners[1] - corners[0]) + (corners[2] - corners[3]);
    const double angle = std::atan2(along.y, along.x) * 180 / CV_PI;
    return angle < 0 ? angle + 360 : angle;
}

}  // namespace vision
