// The cell in hand, and how letters are looked at and written.
#include <QLabel>
#include <algorithm>
#include <utility>

#include "app/gui/cell_words.h"
#include "app/gui/filing_form.h"
#include "app/gui/main_window.h"
#include "app/gui/stamp_view.h"

namespace gui {

void MainWindow::showPlace()
{
    WorkSession* session = sitting_->session();
    const models::Cell* cell = session ? session->editor().cell() : nullptr;
    if (session) {
        stamp_view_->setPlace(session->editor().place());
        const std::pair at(session->current(), session->editor().place());
        if (at != std::exchange(shown_at_, at))
            actionDone();
    }
    const models::Cell* before = session ? session->editor().turnedFrom() : nullptr;
    cell_line_->setWordWrap(before != nullptr);  // all that it may be is to be seen
    if (cell && before)
        cell_line_->setText(turningSentence(*cell, *before, session->person()));
    else if (cell)
        cell_line_->setText(cellSentence(*cell, session->person()) + differenceWords(*cell));
    else if (session && session->stamp())
        cell_line_->setText(session->editor().reading().lines.empty()
                                ? tr("Nothing read here; type the letters you see.")
                                : tr("After the last letter; typing adds to the line."));
    else
        cell_line_->clear();
    showFold();
}

// What the engines saw where the person's cell in hand says otherwise.
QString MainWindow::differenceWords(const models::Cell& cell) const
{
    const StampWork* stamp = sitting_->session()->stamp();
    const std::size_t line = sitting_->session()->editor().place().line;
    if (!stamp || !stamp->examined || line >= stamp->shown.lines.size())
        return {};
    const models::Cell* seen = differingCell(
        cell, stamp->shown.lines[line], stamp->examined->proposal, sitting_->session()->person());
    return seen ? tr(".  The engine: %1").arg(cellSentence(*seen, {})) : QString();
}

void MainWindow::wantLayer(int layer)
{
    WorkSession* session = sitting_->session();
    const StampWork* stamp = session ? session->stamp() : nullptr;
    const int count =
        stamp && stamp->examined ? static_cast<int>(stamp->examined->enhanced.layers.size()) : -1;
    if (count >= 0 && layer > count)
        cell_line_->setText(
            tr("This stamp has no such layer; F2 to F%1 show those it has.").arg(count + 2));
    else
        pickLayer(layer);
}

// Stamps are cut in capitals, so small letters become capitals unless the person wants them small.
void MainWindow::setAsTyped(bool as_typed)
{
    as_typed_ = as_typed;
    stamp_view_->setAsTyped(as_typed);
    letter_case_->setText(as_typed ? tr("as typed") : tr("capitals"));
    letter_case_->setAccessibleName(as_typed ? tr("Letters are written as typed")
                                             : tr("Small letters become capitals"));
    letter_case_->setToolTip(letter_case_->accessibleName() + "   Ctrl+Shift+C");
}

// Before it is filed by the next press; the person may want just that.
void MainWindow::tellNothingConfirmed()
{
    const bool told = sitting_->session() && !sitting_->record() && sitting_->isUnconfirmed();
    filing_form_->setRemark(told ? tr("No letter is confirmed by you yet; filed now, the record "
                                      "has what the engine read.")
                                 : QString());
}

}  // namespace gui
