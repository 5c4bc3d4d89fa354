#include "app/gui/photo_work.h"

#include <algorithm>
#include <utility>

namespace gui {

namespace {

bool isSpace(const models::Cell& cell)
{
    return cell.state == models::CellState::Clear && !cell.alternatives.empty() &&
           cell.alternatives.front().text == " ";
}

cv::Point2d through(const cv::Matx33d& matrix, double x, double y)
{
    const cv::Vec3d moved = matrix * cv::Vec3d(x, y, 1);
    return {moved[0] / moved[2], moved[1] / moved[2]};
}

}  // namespace

LettersSeen lettersSeen(const StampWork& stamp)
{
    LettersSeen count;
    for (std::size_t line = 0; line < stamp.shown.lines.size(); ++line)
        for (std::size_t cell = 0; cell < stamp.shown.lines[line].cells.size(); ++cell) {
            if (isSpace(stamp.shown.lines[line].cells[cell]))
                continue;
            ++count.all;
            count.seen += stamp.seen.count({line, cell});
        }
    return count;
}

bool isTouched(const StampWork& stamp, const std::string& person)
{
    if (hasConfirmed(stamp.shown, person))
        return true;
    const auto empty = models::Reading{};
    const models::Reading& proposal = stamp.examined ? stamp.examined->proposal : empty;
    if (stamp.shown.lines.size() != proposal.lines.size())
        return true;
    for (std::size_t i = 0; i < proposal.lines.size(); ++i) {
        const models::Line &shown = stamp.shown.lines[i], &proposed = proposal.lines[i];
        if (shown.cells.size() != proposed.cells.size() || shown.left_end != proposed.left_end ||
            shown.right_end != proposed.right_end)
            return true;
    }
    return false;
}

bool isWorthFiling(const StampWork& stamp, const std::string& person)
{
    const bool likely = stamp.outline.score >= 0.5 && lettersSeen(stamp).all > 0;
    return likely || stamp.gone_through || isTouched(stamp, person);
}

std::optional<models::Reading> filedReading(const StampWork& stamp, const std::string& person,
                                            const std::string& read_at, const std::string& layer)
{
    if (!isTouched(stamp, person))
        return std::nullopt;
    models::Reading reading = personsReading(stamp.shown, person);
    reading.basis = models::Basis::Photo;
    reading.read_at = read_at;
    reading.candidates_were_shown = stamp.looked_ahead || stamp.read_in_view;
    reading.layer = layer;
    reading.options = stamp.mirrored ? flow::mirrored_option : "";
    reading.weights_sha256.clear();
    return reading;
}

void takeExamination(StampWork& stamp, std::shared_ptr<const flow::StampExamination> examined,
                     const std::string& person)
{
    const cv::Matx33d& frame = examined->enhanced.rectified.photo_from_rectified;
    const bool recorded = !stamp.examined && !stamp.shown.lines.empty();
    const bool keep = recorded || hasConfirmed(stamp.shown, person);
    if (!keep) {
        stamp.shown = examined->proposal;
        stamp.seen.clear();
        stamp.gone_through = false;
    } else if (stamp.photo_from_rectified) {
        stamp.shown = movedReading(stamp.shown, *stamp.photo_from_rectified, frame);
    }
    stamp.photo_from_rectified = frame;
    stamp.outline = examined->outline;
    stamp.mirrored = examined->enhanced.rectified.mirrored;
    stamp.examined = std::move(examined);
    stamp.stale = false;
}

models::Reading movedReading(const models::Reading& reading,
                             const cv::Matx33d& photo_from_old_rectified,
                             const cv::Matx33d& photo_from_new_rectified)
{
    const cv::Matx33d new_from_old = photo_from_new_rectified.inv() * photo_from_old_rectified;
    models::Reading moved = reading;
    for (models::Line& line : moved.lines) {
        const models::Box box = line.box_px;
        const double middle = box.y + box.height / 2;
        for (models::Cell& cell : line.cells) {
            if (cell.right_px <= cell.left_px)
                continue;
            const double left = through(new_from_old, cell.left_px, middle).x;
            const double right = through(new_from_old, cell.right_px, middle).x;
            cell.left_px = std::min(left, right);
            cell.right_px = std::max(left, right);
        }
        if (box.width <= 0)
            continue;
        const cv::Point2d a = through(new_from_old, box.x, box.y);
        const cv::Point2d b = through(new_from_old, box.x + box.width, box.y + box.height);
        line.box_px = {std::min(a.x, b.x), std::min(a.y, b.y), std::abs(b.x - a.x),
                       std::abs(b.y - a.y)};
    }
    return moved;
}

}  // namespace gui
