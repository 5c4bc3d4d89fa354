#include "vision/stacked_letters.h"

namespace vision {

namespace {

// Length over height of a line that may be two lines across: of letters in a square, to letters
// with the ends of their frame.
constexpr double shortest = 1.2, longest = 3.2;
constexpr float wider = 0.25F;  // than found, on each side: what was found cuts letters at its rim
// Where the two lines stand, in the length of what was found.
constexpr float first_top = 0.06F, first_bottom = 0.48F, second_top = 0.52F, second_bottom = 0.94F;

bool isOneStraightLine(const StampOutline& outline)
{
    return outline.lines.size() == 1 &&
           (outline.curves.empty() || outline.curves.front().isStraight());
}

// What stands between two heights of an upright quad, 0 at its top and 1 at its bottom.
Quad slice(const Quad& quad, float top, float bottom)
{
    const cv::Point2f left = quad[3] - quad[0], right = quad[2] - quad[1];
    return {quad[0] + top * left, quad[1] + top * right, quad[1] + bottom * right,
            quad[0] + bottom * left};
}

}  // namespace

std::optional<StampOutline> asLinesAcross(const StampOutline& outline)
{
    if (!isOneStraightLine(outline))
        return std::nullopt;
    const Quad& line = outline.lines.front();
    const double length = cv::norm(line[1] - line[0]), height = cv::norm(line[3] - line[0]);
    if (length < shortest * height || length > longest * height)
        return std::nullopt;
    // Turned a quarter: the line's beginning becomes the top, its lower side the left one.
    const cv::Point2f out_begin = wider * (line[0] - line[3]),
                      out_end = wider * (line[1] - line[2]);
    const Quad across{line[3] - out_begin, line[0] + out_begin, line[1] + out_end,
                      line[2] - out_end};
    StampOutline turned;
    turned.corners = across;
    turned.score = outline.score;
    turned.up_deg = upOf(across);
    turned.lines = {slice(across, first_top, first_bottom),
                    slice(across, second_top, second_bottom)};
    return turned;
}

}  // namespace vision
