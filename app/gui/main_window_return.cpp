// How the window stood, kept while working and stood in again.
#include <QApplication>
#include <utility>

#include "app/gui/main_window.h"
#include "app/gui/stamp_view.h"
#include "app/gui/typed_pane.h"

namespace gui {

// While nothing lies on the table there is no tray, size or tone to come back to, but light and
// letter case were chosen all the same.
void MainWindow::keepChoices()
{
    if (sitting_->place() >= 0)
        return keepWindowState();
    WindowState state = sitting_->windowState();
    state.dusk = light_ == Light::Dusk;
    state.as_typed = as_typed_;
    sitting_->setWindowState(state);
}

// Not while nothing lies on the table, nor on the way back to how it stood: what is kept is that.
void MainWindow::keepWindowState()
{
    if (returning_ || sitting_->place() < 0)
        return;
    WindowState state;
    state.layer = layer_;
    state.dusk = light_ == Light::Dusk;
    state.zoom = stamp_view_->zoomed();
    state.magnifier = stamp_view_->hasMagnifier();
    state.tones = tones_;
    state.as_typed = as_typed_;
    if (!tray_->isClosed())
        state.tray = nameOf(tray_->page());
    if (tray_->isOpen(TrayPage::Text))
        state.unfinished = typed_pane_->unfinished().toStdString();
    if (tray_->holdsFocus())
        state.focus = QApplication::focusWidget()->objectName().toStdString();
    sitting_->setWindowState(state);
}

void MainWindow::restoreTable()
{
    guarded([this] {
        const auto state = sitting_->restoreTable();
        if (!state)
            return;
        if (sitting_->place() >= 0)
            returning_ = *state;
        layer_ = state->layer;
        setLight(state->dusk ? Light::Dusk : light_);
        setAsTyped(state->as_typed);
        stamp_view_->zoom(state->zoom);
        stamp_view_->setMagnifier(state->magnifier);
        turnTones(state->tones);
        showSession();
    });
}

void MainWindow::returnToTray(const WindowState& state)
{
    const auto tray = trayPageNamed(state.tray);
    if (!tray || (*tray == TrayPage::Meaning && !mayShowCandidates()))
        return;
    tray_->open(*tray, false);
    if (*tray == TrayPage::Text && !state.unfinished.empty())
        typed_pane_->takeUp(QString::fromStdString(state.unfinished));
    const auto field = state.focus.empty()
                           ? nullptr
                           : tray_->findChild<QWidget*>(QString::fromStdString(state.focus));
    if (field)
        field->setFocus(Qt::OtherFocusReason);
    keepWindowState();
}

}  // namespace gui
