// The keys that are listened to everywhere in the window.
#include <QAction>

#include "app/gui/help_overlay.h"
#include "app/gui/main_window.h"
#include "app/gui/message_bar.h"
#include "app/gui/photo_view.h"
#include "app/gui/stamp_view.h"
#include "app/gui/to_read_list.h"

namespace gui {

void MainWindow::addKey(const QKeySequence& keys, const std::function<void()>& action)
{
    auto key = new QAction(this);
    key->setShortcut(keys);
    connect(key, &QAction::triggered, this, action);
    addAction(key);
}

void MainWindow::addKeys()
{
    addTrayKeys();
    addLookingKeys();
    addPhotoKeys();
    addStampKeys();
    addMeaningKeys();
    addKey(Qt::Key_F1, [this] { help_->open(); });
    addKey(Qt::Key_Escape, [this] { escape(); });
    addKey(Qt::CTRL | Qt::Key_Z, [this] { undo(false); });
    addKey(Qt::CTRL | Qt::Key_Y, [this] { undo(true); });
    addKey(Qt::CTRL | Qt::SHIFT | Qt::Key_Z, [this] { undo(true); });
    addKey(Qt::CTRL | Qt::Key_Q, [this] { close(); });
}

void MainWindow::addTrayKeys()
{
    addKey(Qt::Key_F9, [this] { toggleTray(TrayPage::Photo); });
    addKey(Qt::Key_F10, [this] { toggleTray(TrayPage::ToRead); });
    addKey(Qt::Key_F11, [this] { openMeaning(); });
    addKey(Qt::Key_F12, [this] { toggleTray(TrayPage::Archive); });
    addKey(Qt::CTRL | Qt::Key_T, [this] { toggleTray(TrayPage::Text); });
    addKey(Qt::CTRL | Qt::Key_S, [this] {
        if (tray_->isOpen(TrayPage::Filing))
            file();
        else
            toggleTray(TrayPage::Filing);
    });
}

void MainWindow::addLookingKeys()
{
    constexpr int most_layers = 7;
    addKey(Qt::Key_F2, [this] { holdPhoto(); });
    for (int layer = 1; layer < most_layers; ++layer)
        addKey(QKeySequence(Qt::Key_F2 + layer), [this, layer] { wantLayer(layer); });
    constexpr double step = 1.3;
    const auto zoom = [this](double factor) {
        return [this, factor] {
            stamp_view_->zoom(factor);
            keepWindowState();
        };
    };
    addKey(Qt::CTRL | Qt::Key_Plus, zoom(step));
    addKey(Qt::CTRL | Qt::Key_Equal, zoom(step));  // the same key unshifted
    addKey(Qt::CTRL | Qt::Key_Minus, zoom(1 / step));
    addKey(Qt::CTRL | Qt::SHIFT | Qt::Key_Up, [this] { turnTones(withContrast(tones_, +1)); });
    addKey(Qt::CTRL | Qt::SHIFT | Qt::Key_Down, [this] { turnTones(withContrast(tones_, -1)); });
    addKey(Qt::CTRL | Qt::SHIFT | Qt::Key_Right, [this] { turnTones(withGamma(tones_, +1)); });
    addKey(Qt::CTRL | Qt::SHIFT | Qt::Key_Left, [this] { turnTones(withGamma(tones_, -1)); });
    addKey(Qt::CTRL | Qt::Key_0, [this] {
        stamp_view_->zoom(0);
        turnTones({});
    });
    addKey(Qt::CTRL | Qt::Key_G, [this] {
        stamp_view_->setMagnifier(!stamp_view_->hasMagnifier());
        keepWindowState();
    });
    addKey(Qt::CTRL | Qt::SHIFT | Qt::Key_C, [this] {
        setAsTyped(!as_typed_);
        keepChoices();
    });
    addKey(Qt::CTRL | Qt::Key_D, [this] {
        setLight(light_ == Light::Day ? Light::Dusk : Light::Day);
        keepChoices();
    });
}

// The card chosen in the drawer where that is open, else the photo in hand.
int MainWindow::photoMeant() const
{
    return tray_->isOpen(TrayPage::ToRead) ? to_read_->currentIndex().row() : sitting_->place();
}

void MainWindow::addPhotoKeys()
{
    addKey(Qt::CTRL | Qt::Key_O, [this] { chooseFiles(); });
    addKey(Qt::CTRL | Qt::Key_N, [this] {
        tray_->close();
        guarded([&] { sitting_->goToNextUnfiled(); });
    });
    addKey(Qt::CTRL | Qt::Key_PageDown, [this] { guarded([&] { sitting_->step(+1); }); });
    addKey(Qt::CTRL | Qt::Key_PageUp, [this] { guarded([&] { sitting_->step(-1); }); });
    addKey(Qt::CTRL | Qt::Key_R, [this] {
        if (sitting_->session())
            return;
        message_->pass(Until::NextPhoto);  // why it was not read: it is tried anew
        guarded([&] { sitting_->goTo(sitting_->place()); });
    });
    addKey(Qt::CTRL | Qt::Key_P, [this] { sitting_->setReadsAhead(!sitting_->readsAhead()); });
    addKey(Qt::CTRL | Qt::Key_I, [this] {
        const int place = photoMeant();
        guarded([&] { sitting_->joinPiece(place, sitting_->queue()->beside(place, -1)); });
    });
    addKey(Qt::CTRL | Qt::SHIFT | Qt::Key_N,
           [this] { guarded([&] { sitting_->setAside(photoMeant()); }); });
    addKey(Qt::CTRL | Qt::Key_W, [this] { guarded([&] { sitting_->takeOff(photoMeant()); }); });
}

void MainWindow::addStampKeys()
{
    const auto with_session = [this](const std::function<void(WorkSession&)>& action) {
        return [this, action] {
            if (WorkSession* session = sitting_->session())
                guarded([&] { action(*session); });
        };
    };
    addKey(Qt::CTRL | Qt::Key_Right,
           with_session([](WorkSession& session) { session.setCurrent(session.current() + 1); }));
    addKey(Qt::CTRL | Qt::Key_Left,
           with_session([](WorkSession& session) { session.setCurrent(session.current() - 1); }));
    addKey(Qt::CTRL | Qt::Key_M,
           with_session([](WorkSession& session) { session.turnMirrored(); }));
    addKey(Qt::CTRL | Qt::Key_U, with_session([this](WorkSession& session) {
               if (session.current() < 0 || !isFiledOutline(session.current()))
                   session.turn(2);
           }));
    addKey(Qt::CTRL | Qt::SHIFT | Qt::Key_U, with_session([this](WorkSession& session) {
               if (session.current() < 0 || !isFiledOutline(session.current()))
                   session.turn(1);
           }));
    addKey(Qt::CTRL | Qt::Key_Delete,
           with_session([this](WorkSession& session) { deleteOutline(session.current()); }));
    addKey(Qt::CTRL | Qt::SHIFT | Qt::Key_Backspace, [this] { deleteOtherOutlines(); });
    addKey(Qt::CTRL | Qt::Key_E, [this] { guarded([&] { sitting_->turnViewOf(); }); });
}

void MainWindow::addMeaningKeys()
{
    addKey(Qt::ALT | Qt::Key_Return, [this] { conclude(Conclusion::TakeMaker); });
    addKey(Qt::ALT | Qt::Key_Backspace, [this] { conclude(Conclusion::NoneOfThem); });
    addKey(Qt::ALT | Qt::Key_Delete, [this] { conclude(Conclusion::LeaveOpen); });
    addKey(Qt::CTRL | Qt::SHIFT | Qt::Key_S, [this] { fileAndGoOn(); });
    addKey(Qt::ALT | Qt::Key_Insert, [this] { guarded([&] { restoreLetters(); }); });
}

}  // namespace gui
