// What is left of a stamp, or of all of a photo's, is right: said at once where nothing is open.
#include <algorithm>

#include "app/gui/work_session.h"

namespace gui {

// To the first unsure letter that was not looked at yet; the one in hand is being looked at.
bool WorkSession::leadToUnsure(std::optional<CellPlace> in_hand)
{
    const std::vector<CellPlace> unsure = notLookedAt(*stamp(), person_, in_hand);
    if (unsure.empty())
        return false;
    moveTo(unsure.front());
    Q_EMIT couldNot(unsure.size() == 1
                        ? tr("This letter is unsure and was not looked at yet. If it is right, "
                             "press the same keys again.")
                        : tr("%1 unsure letters were not looked at yet; this is the first. If it "
                             "is right, the same keys go on to the next.")
                              .arg(unsure.size()));
    return true;
}

void WorkSession::acceptStamp()
{
    if (leadToUnsure(editor_.place()))
        return;
    const models::Reading before = editor_.reading();
    const CellPlace from = editor_.place();
    const EditOutcome outcome = editor_.apply(Edit::AcceptStamp);
    auto& seen = stamps_[static_cast<std::size_t>(current_)].seen;
    for (std::size_t line = 0; line < before.lines.size(); ++line)
        for (std::size_t cell = 0; cell < before.lines[line].cells.size(); ++cell)
            seen.insert({line, cell});
    change(outcome, before, from, from);
}

// The stamp in hand first, whatever the engines made of it: the person looks at it and says so.
bool WorkSession::confirmRest()
{
    const auto is_left = [&](const StampWork& stamp) {
        const auto& lines = stamp.shown.lines;
        return std::any_of(lines.begin(), lines.end(), [&](const models::Line& line) {
            return std::any_of(line.cells.begin(), line.cells.end(),
                               [&](const models::Cell& cell) { return cell.by != person_; });
        });
    };
    if (stamp() && is_left(*stamp())) {
        if (leadToUnsure(editor_.place()))
            return false;
        acceptStamp();
    }
    for (std::size_t i = 0; i < stamps_.size(); ++i) {
        if (!is_left(stamps_[i]) || !isWorthFiling(stamps_[i], person_))
            continue;
        const bool was_there = !stamps_[i].seen.empty() || hasConfirmed(stamps_[i].shown, person_);
        setCurrent(static_cast<int>(i));
        if (!was_there)
            Q_EMIT couldNot(
                tr("This stamp was not gone to yet. If all of it is right, press the "
                   "same keys again; Ctrl+Del says that it is no stamp."));
        if (!was_there || leadToUnsure(std::nullopt))
            return false;
        acceptStamp();
    }
    return true;
}

}  // namespace gui
