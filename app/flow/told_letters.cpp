#include "app/flow/told_letters.h"

#include <algorithm>

#include "vision/cell_states.h"

namespace flow {

namespace {

bool isToldALetter(const models::Line& line)
{
    return std::any_of(line.cells.begin(), line.cells.end(), [](const models::Cell& cell) {
        return cell.state == models::CellState::Clear && cell.alternatives.front().text != " ";
    });
}

bool isToldALetter(const models::Reading& reading)
{
    return std::any_of(reading.lines.begin(), reading.lines.end(),
                       [](const models::Line& line) { return isToldALetter(line); });
}

std::size_t lettersIn(const models::Line& line)
{
    return static_cast<std::size_t>(
        std::count_if(line.cells.begin(), line.cells.end(), [](const models::Cell& cell) {
            return cell.alternatives.empty() || cell.alternatives.front().text != " ";
        }));
}

bool isInPicture(const cv::Point2d& p, const cv::Size& size)
{
    return p.x >= 0 && p.y >= 0 && p.x <= size.width - 1 && p.y <= size.height - 1;
}

}  // namespace

models::Reading withoutEmptyLines(models::Reading reading)
{
    const bool told = isToldALetter(reading);
    std::erase_if(reading.lines, [told](const models::Line& line) {
        return line.cells.empty() || (told && line.cells.size() == 1 &&
                                      line.cells.front().state == models::CellState::Traces);
    });
    return reading;
}

void dropUntold(std::vector<StampExamination>& stamps)
{
    constexpr double surely_a_mark = 0.99;
    const auto told = [](const StampExamination& stamp) { return isToldALetter(stamp.proposal); };
    if (std::any_of(stamps.begin(), stamps.end(), told))
        std::erase_if(stamps, [&](const StampExamination& stamp) {
            return stamp.outline.score < surely_a_mark && !told(stamp);
        });
}

void weighShortLines(models::Reading& reading, double mark_probability)
{
    constexpr std::size_t short_line = 2;
    for (models::Line& line : reading.lines) {
        if (lettersIn(line) > short_line)
            continue;
        line.certainty = models::lineCertainty(line) * mark_probability;
        for (models::Cell& cell : line.cells) {
            for (models::Alternative& alternative : cell.alternatives)
                alternative.certainty *= mark_probability;
            if (cell.state == models::CellState::Clear &&
                cell.alternatives.front().certainty < vision::clear_from)
                cell.state = models::CellState::Doubtful;
        }
    }
}

void tellCutEnds(models::Reading& reading, const vision::RectifiedStamp& stamp,
                 const cv::Size& photo_px)
{
    // A line's box may reach further than its letters do, which then have ground beside them.
    constexpr double ground = 0.25;  // of a letter's height
    for (models::Line& line : reading.lines) {
        if (line.cells.empty())
            continue;
        const models::Box& box = line.box_px;
        const double middle = box.y + box.height / 2, beside = ground * box.height;
        const auto isSeen = [&](double x) {
            return isInPicture(vision::photoFromRectified(stamp, {x, middle}), photo_px);
        };
        if (!isSeen(box.x) && !isSeen(line.cells.front().left_px - beside))
            line.left_end = models::LineEnd::CutOff;
        if (!isSeen(box.x + box.width) && !isSeen(line.cells.back().right_px + beside))
            line.right_end = models::LineEnd::CutOff;
    }
}

}  // namespace flow
