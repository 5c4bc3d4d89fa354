#include "vision/line_groups.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>
#include <stdexcept>
#include <utility>

namespace vision {

namespace {

struct Frame {
    cv::Point2f along, down;  // unit vectors
};

float lengthOf(const FoundLine& line)
{
    return static_cast<float>(cv::norm(spanOf(line)));
}

// As the line is read.
Frame frameOf(const FoundLine& line)
{
    const cv::Point2f along = spanOf(line) / std::max(1e-6F, lengthOf(line));
    return {along, {-along.y, along.x}};
}

// A quad's extent in a frame.
cv::Rect2f extentIn(const Quad& quad, const Frame& frame)
{
    float left = 1e9F, right = -1e9F, top = 1e9F, bottom = -1e9F;
    for (const cv::Point2f& corner : quad) {
        left = std::min(left, corner.dot(frame.along));
        right = std::max(right, corner.dot(frame.along));
        top = std::min(top, corner.dot(frame.down));
        bottom = std::max(bottom, corner.dot(frame.down));
    }
    return {left, top, right - left, bottom - top};
}

// Between the directions of two lines, whichever way they are read, 0 to 90 degrees.
double turnBetween(const FoundLine& a, const FoundLine& b)
{
    const cv::Point2f u = frameOf(a).along, v = frameOf(b).along;
    return std::atan2(std::abs(u.cross(v)), std::abs(u.dot(v))) * 180 / CV_PI;
}

// How many letters a line has room for.
float lettersIn(const FoundLine& line)
{
    return lengthOf(line) / static_cast<float>(std::max(1.0, line.height_px));
}

// How far the box around a bent line reaches beyond its letters: other lines may stand within.
float sagOf(const FoundLine& line)
{
    if (line.curve.isStraight())
        return 0;
    const cv::Rect2f box = extentIn(line.corners, frameOf(line));
    return std::max(0.0F, box.height - static_cast<float>(line.curve.height_px));
}

// The ground of two pieces differs at least so much of the brighter one's brightness; so does a
// gap between them from both, over this share of a letter's height.
constexpr double other_ground = 0.35, gap_ground = 0.2;
constexpr float gap_height = 0.2F;
constexpr int samples_along = 64;

double medianOf(std::vector<uchar>& values)
{
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
}

// Looks along rows of a frame, from one column to another.
class RowLook {
public:
    RowLook(const cv::Mat& grey, const Frame& frame, float from, float to)
        : grey_(grey), frame_(frame), from_(from), step_((to - from) / samples_along)
    {
    }

    // The median brightness of rows y0 <= y < y1, nullopt where they lie outside the picture.
    std::optional<double> median(float y0, float y1) const
    {
        std::vector<uchar> values;
        for (float y = y0; y < y1; y += 1)
            for (int i = 0; i < samples_along; ++i) {
                const cv::Point at =
                    (from_ + (static_cast<float>(i) + 0.5F) * step_) * frame_.along +
                    y * frame_.down;
                if (at.x >= 0 && at.y >= 0 && at.x < grey_.cols && at.y < grey_.rows)
                    values.push_back(grey_.at<uchar>(at));
            }
        if (values.empty())
            return std::nullopt;
        return medianOf(values);
    }

private:
    const cv::Mat& grey_;
    const Frame& frame_;
    float from_, step_;
};

// Whether the ground changes between two lines, or a gap of another ground parts them: what covers
// more than half of a line's box is its ground, since letters cover less.
bool groundParts(const cv::Mat& grey, const Frame& frame, const cv::Rect2f& a, const cv::Rect2f& b)
{
    const cv::Rect2f& upper = a.y < b.y ? a : b;
    const cv::Rect2f& lower = a.y < b.y ? b : a;
    const RowLook look(grey, frame, std::max(a.x, b.x), std::min(a.x + a.width, b.x + b.width));
    const auto above = look.median(upper.y, upper.y + upper.height);
    const auto below = look.median(lower.y, lower.y + lower.height);
    if (!above || !below)
        return false;
    const double brighter = std::max({*above, *below, 1.0});
    if (std::abs(*above - *below) > other_ground * brighter)
        return true;
    const float run = std::max(2.0F, gap_height * std::min(a.height, b.height));
    for (float y = upper.y + upper.height; y + run <= lower.y; y += 1) {
        const auto between = look.median(y, y + run);
        if (between && std::min(std::abs(*between - *above), std::abs(*between - *below)) >
                           gap_ground * brighter)
            return true;
    }
    return false;
}

bool belongTogether(const FoundLine& a, const FoundLine& b, const cv::Mat& grey)
{
    if (turnBetween(a, b) > 8)
        return false;
    const auto taller = static_cast<float>(std::max(a.height_px, b.height_px));
    const auto lower = static_cast<float>(std::min(a.height_px, b.height_px));
    if (lower < 0.55F * taller)
        return false;
    const Frame frame = frameOf(lettersIn(a) >= lettersIn(b) ? a : b);
    const cv::Rect2f p = extentIn(a.corners, frame), q = extentIn(b.corners, frame);
    const float common = std::min(p.x + p.width, q.x + q.width) - std::max(p.x, q.x);
    const float between = std::max(p.y, q.y) - std::min(p.y + p.height, q.y + q.height);
    const float sag = std::max(sagOf(a), sagOf(b));
    return common > 0.3F * std::min(p.width, q.width) && between < 1.1F * taller + sag &&
           between > -0.4F * lower - sag && !groundParts(grey, frame, p, q);
}

FoundLine turnedOver(FoundLine line)
{
    const Quad& q = line.corners;
    line.corners = {q[2], q[3], q[0], q[1]};
    line.curve = reversedCurve(std::move(line.curve));
    return line;
}

// Along the line with the most letters, up nearest the picture's.
Frame readingFrame(const std::vector<FoundLine>& lines)
{
    const Frame frame = frameOf(*std::max_element(
        lines.begin(), lines.end(),
        [](const FoundLine& a, const FoundLine& b) { return lettersIn(a) < lettersIn(b); }));
    if (frame.along.x < 0 || (frame.along.x == 0 && frame.along.y < 0))
        return {-frame.along, -frame.down};
    return frame;
}

StampOutline outlineOf(std::vector<FoundLine> lines)
{
    const Frame frame = readingFrame(lines);
    StampOutline outline;
    for (FoundLine& line : lines)
        if (spanOf(line).dot(frame.along) < 0)
            line = turnedOver(std::move(line));
    std::sort(lines.begin(), lines.end(), [&](const FoundLine& a, const FoundLine& b) {
        const cv::Rect2f p = extentIn(a.corners, frame), q = extentIn(b.corners, frame);
        return p.y + p.height / 2 < q.y + q.height / 2;
    });
    const bool bent = std::any_of(lines.begin(), lines.end(),
                                  [](const FoundLine& line) { return !line.curve.isStraight(); });
    cv::Rect2f whole;
    for (const FoundLine& line : lines) {
        const cv::Rect2f extent = extentIn(line.corners, frame);
        whole = outline.lines.empty() ? extent : whole | extent;
        outline.lines.push_back(line.corners);
        if (bent)
            outline.curves.push_back(line.curve);
        outline.score = std::max(outline.score, line.certainty);
    }
    const auto at = [&](float x, float y) { return x * frame.along + y * frame.down; };
    outline.corners = {at(whole.x, whole.y), at(whole.x + whole.width, whole.y),
                       at(whole.x + whole.width, whole.y + whole.height),
                       at(whole.x, whole.y + whole.height)};
    outline.up_deg = upOf(outline.corners);
    return outline;
}

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

}  // namespace

std::vector<StampOutline> groupLines(const std::vector<FoundLine>& lines, const cv::Mat& grey)
{
    if (grey.type() != CV_8UC1)
        throw std::invalid_argument("groupLines: the picture must be CV_8UC1");
    std::vector<std::size_t> group(lines.size());
    std::iota(group.begin(), group.end(), std::size_t{0});
    for (std::size_t i = 0; i < lines.size(); ++i)
        for (std::size_t j = i + 1; j < lines.size(); ++j)
            if (group[i] != group[j] && belongTogether(lines[i], lines[j], grey))
                std::replace(group.begin(), group.end(), std::size_t{group[j]},
                             std::size_t{group[i]});
    std::vector<StampOutline> stamps;
    for (std::size_t g = 0; g < lines.size(); ++g) {
        std::vector<FoundLine> members;
        for (std::size_t i = 0; i < lines.size(); ++i)
            if (group[i] == g)
                members.push_back(lines[i]);
        if (!members.empty())
            stamps.push_back(outlineOf(std::move(members)));
    }
    std::stable_sort(
        stamps.begin(), stamps.end(),
        [](const StampOutline& a, const StampOutline& b) { return a.score > b.score; });
    return stamps;
}

std::vector<StampOutline> stampsOf(const std::vector<FoundLine>& lines, const cv::Mat& grey,
                                   const LocateOptions& options)
{
    checkOptions(options);
    std::vector<FoundLine> likely;
    for (const FoundLine& line : lines)
        if (line.certainty >= options.min_score &&
            likely.size() < static_cast<std::size_t>(options.max_lines))
            likely.push_back(line);
    std::vector<StampOutline> stamps = groupLines(likely, grey);
    if (stamps.size() > static_cast<std::size_t>(options.max_stamps))
        stamps.resize(static_cast<std::size_t>(options.max_stamps));
    return stamps;
}

}  // namespace vision
