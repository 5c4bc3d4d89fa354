#include "app/gui/photo_work.h"

#include <algorithm>
#include <utility>

#include "app/gui/line_edits.h"

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

// How many at the beginnings and at the ends of two rows are the same.
struct Alike {
    std::size_t head = 0, tail = 0;
};

template <class Thing>
Alike alike(const std::vector<Thing>& a, const std::vector<Thing>& b)
{
    const std::size_t most = std::min(a.size(), b.size());
    Alike same;
    while (same.head < most && a[same.head] == b[same.head])
        ++same.head;
    while (same.head + same.tail < most && a.rbegin()[static_cast<std::ptrdiff_t>(same.tail)] ==
                                               b.rbegin()[static_cast<std::ptrdiff_t>(same.tail)])
        ++same.tail;
    return same;
}

// Where what stood at a place of the first row stands in the second; nothing where it changed.
std::optional<std::size_t> movedPlace(std::size_t place, const Alike& same, std::size_t before,
                                      std::size_t after)
{
    if (place < same.head)
        return place;
    if (place + same.tail >= before && place < before)
        return place + after - before;
    return std::nullopt;
}

}  // namespace

std::vector<StampWork> workFromExamination(const flow::Examination& examination)
{
    std::vector<StampWork> stamps;
    for (const flow::StampExamination& examined : examination.stamps) {
        StampWork stamp;
        takeExamination(stamp, std::make_shared<const flow::StampExamination>(examined), {});
        stamps.push_back(std::move(stamp));
    }
    return stamps;
}

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

std::vector<CellPlace> notLookedAt(const StampWork& stamp, const std::string& person,
                                   std::optional<CellPlace> in_hand)
{
    std::vector<CellPlace> places;
    for (std::size_t line = 0; line < stamp.shown.lines.size(); ++line)
        for (std::size_t cell = 0; cell < stamp.shown.lines[line].cells.size(); ++cell) {
            const CellPlace place{line, cell};
            if (isWorthALook(stamp.shown.lines[line].cells[cell], person) && place != in_hand &&
                stamp.seen.count(place) == 0)
                places.push_back(place);
        }
    return places;
}

std::set<CellPlace> seenAfter(const std::set<CellPlace>& seen, const models::Reading& before,
                              const models::Reading& after)
{
    const auto same_room = [](const models::Line& a, const models::Line& b) {
        return a.cells.size() == b.cells.size();
    };
    if (std::equal(before.lines.begin(), before.lines.end(), after.lines.begin(), after.lines.end(),
                   same_room))
        return seen;
    const Alike lines = alike(before.lines, after.lines);
    const bool one_line = before.lines.size() == after.lines.size() &&
                          lines.head + lines.tail + 1 == before.lines.size();
    const Alike cells =
        one_line ? alike(before.lines[lines.head].cells, after.lines[lines.head].cells) : Alike{};
    std::set<CellPlace> still;
    for (const CellPlace& place : seen) {
        const auto line = movedPlace(place.line, lines, before.lines.size(), after.lines.size());
        if (line)
            still.insert({*line, place.cell});
        else if (one_line && place.line == lines.head)
            if (const auto cell =
                    movedPlace(place.cell, cells, before.lines[lines.head].cells.size(),
                               after.lines[lines.head].cells.size()))
                still.insert({place.line, *cell});
    }
    return still;
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
