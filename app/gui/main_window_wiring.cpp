// What leads where: signals of the sitting and of the panes, keys.
#include <QAction>
#include <QApplication>
#include <QPushButton>

#include "app/gui/archive_pane.h"
#include "app/gui/candidate_list.h"
#include "app/gui/filing_form.h"
#include "app/gui/head_bar.h"
#include "app/gui/help_overlay.h"
#include "app/gui/main_window.h"
#include "app/gui/message_bar.h"
#include "app/gui/photo_view.h"
#include "app/gui/record_page.h"
#include "app/gui/stamp_view.h"
#include "app/gui/to_read_list.h"

namespace gui {

void MainWindow::connectSitting()
{
    Sitting* sitting = sitting_.get();
    connect(sitting, &Sitting::sessionChanged, this, [this] {
        connectSession();
        showSession();
    });
    connect(sitting, &Sitting::knownChanged, this,
            [this] { filing_form_->showKnown(sitting_->known()); });
    connect(sitting, &Sitting::candidatesChanged, this, &MainWindow::showCandidates);
    connect(sitting, &Sitting::progressed, head_, &HeadBar::showProgress);
    connect(sitting, &Sitting::idle, this, [this] {
        head_->hideProgress();
        stamp_view_->setEmptyWords(emptyWords());
    });
    connect(sitting, &Sitting::noted, this,
            [this](const QString& sentence) { message_->say(Tone::Note, sentence); });
    connect(sitting, &Sitting::troubled, this, [this](const QString& sentence) {
        message_->say(Tone::Trouble, sentence);
        showSession();
    });
}

// The session in hand; whatever listened to the one before stops.
void MainWindow::connectSession()
{
    session_listener_ = std::make_unique<QObject>();
    WorkSession* session = sitting_->session();
    if (!session)
        return;
    QObject* listener = session_listener_.get();
    connect(session, &WorkSession::stampChanged, listener, [this] { showStamp(); });
    connect(session, &WorkSession::lettersChanged, listener, [this] { showLetters(); });
    connect(session, &WorkSession::placeChanged, listener, [this] { showPlace(); });
    connect(session, &WorkSession::outlinesChanged, listener, [this] { showOutlines(); });
    connect(session, &WorkSession::goneThrough, listener, [this] { lettersGoneThrough(); });
    connect(session, &WorkSession::couldNot, listener,
            [this](const QString& sentence) { message_->say(Tone::Note, sentence); });
}

void MainWindow::connectPanes()
{
    const auto session = [this] { return sitting_->session(); };
    connect(stamp_view_, &StampView::typed, this, [session](const QString& text) {
        if (session())
            session()->type(text);
    });
    connect(stamp_view_, &StampView::edited, this, [session](Edit edit) {
        if (session())
            session()->apply(edit);
    });
    connect(stamp_view_, &StampView::moved, this, [session](Move move) {
        if (session())
            session()->move(move);
    });
    connect(stamp_view_, &StampView::placed, this, [session](CellPlace place) {
        if (session())
            session()->moveTo(place);
    });
    connect(fold_, &QPushButton::clicked, this, &MainWindow::openMeaning);
    connect(head_, &HeadBar::layerPicked, this, &MainWindow::pickLayer);
    connect(head_, &HeadBar::stopWanted, this, [this] { sitting_->stop(); });
    connect(to_read_, &ToReadList::opened, this, [this](int place) {
        tray_->close();
        guarded([&] { sitting_->goTo(place); });
    });
    connect(candidates_, &CandidateList::taken, this, &MainWindow::takeMaker);
    connect(filing_form_, &FilingForm::fieldsChanged, this, [this, session] {
        if (session())
            session()->setFields(filing_form_->fields());
    });
    connect(filing_form_, &FilingForm::fileWanted, this, &MainWindow::file);
    connect(archive_pane_, &ArchivePane::searched, this, &MainWindow::search);
    connect(archive_pane_, &ArchivePane::opened, this, &MainWindow::openFound);
    connect(archive_pane_, &ArchivePane::looked, this, [this](const QString& id) {
        guarded([&] {
            const auto item = id.isEmpty() ? std::nullopt : sitting_->look(id.toStdString());
            archive_pane_->showRecord(item ? recordPage(*item) : QString());
        });
    });
    connect(tray_, &Tray::changed, this, &MainWindow::trayChanged);
    connect(qApp, &QApplication::focusChanged, this, [this] { showHints(); });
    connect(message_, &MessageBar::dismissed, this, [this] {
        if (!QApplication::focusWidget() || QApplication::focusWidget()->parent() == message_)
            stamp_view_->setFocus();
    });
    connect(help_, &HelpOverlay::closed, this, [this] { stamp_view_->setFocus(); });
}

void MainWindow::connectPhotoView()
{
    connect(photo_view_, &PhotoView::outlineMoved, this, &MainWindow::moveOutline);
    connect(photo_view_, &PhotoView::outlineAdded, this, [this](const vision::Quad& corners) {
        if (sitting_->session())
            guarded([&] { sitting_->session()->addOutline(corners); });
    });
    connect(photo_view_, &PhotoView::outlineDeleted, this, &MainWindow::deleteOutline);
    connect(photo_view_, &PhotoView::stampPicked, this, [this](int stamp) {
        if (sitting_->session())
            sitting_->session()->setCurrent(stamp);
    });
    connect(photo_view_, &PhotoView::couldNot, this,
            [this](const QString& sentence) { message_->say(Tone::Note, sentence); });
}

void MainWindow::addKey(const char* name, const QKeySequence& keys,
                        const std::function<void()>& action)
{
    auto key = new QAction(this);
    key->setObjectName(name);
    key->setShortcut(keys);
    connect(key, &QAction::triggered, this, action);
    addAction(key);
}

void MainWindow::addKeys()
{
    constexpr int most_layers = 7;
    for (int layer = 0; layer < most_layers; ++layer)
        addKey("layerKey", QKeySequence(Qt::Key_F2 + layer), [this, layer] { pickLayer(layer); });
    const auto stamp_by = [this](int by) {
        if (WorkSession* session = sitting_->session())
            session->setCurrent(session->current() + by);
    };
    addKey("helpKey", Qt::Key_F1, [this] { help_->open(); });
    addKey("photoKey", Qt::Key_F9, [this] { toggleTray(TrayPage::Photo); });
    addKey("toReadKey", Qt::Key_F10, [this] { toggleTray(TrayPage::ToRead); });
    addKey("meaningKey", Qt::Key_F11, [this] { openMeaning(); });
    addKey("archiveKey", Qt::Key_F12, [this] { toggleTray(TrayPage::Archive); });
    addKey("escapeKey", Qt::Key_Escape, [this] { escape(); });
    addKey("openKey", Qt::CTRL | Qt::Key_O, [this] { chooseFiles(); });
    addKey("fileKey", Qt::CTRL | Qt::Key_S,
           [this] { tray_->isOpen(TrayPage::Filing) ? file() : toggleTray(TrayPage::Filing); });
    addKey("undoKey", Qt::CTRL | Qt::Key_Z, [this] { undo(false); });
    addKey("redoKey", Qt::CTRL | Qt::Key_Y, [this] { undo(true); });
    addKey("redoKeyToo", Qt::CTRL | Qt::SHIFT | Qt::Key_Z, [this] { undo(true); });
    addKey("lightKey", Qt::CTRL | Qt::Key_D,
           [this] { setLight(light_ == Light::Day ? Light::Dusk : Light::Day); });
    addKey("nextPhotoKey", Qt::CTRL | Qt::Key_PageDown,
           [this] { guarded([&] { sitting_->step(+1); }); });
    addKey("lastPhotoKey", Qt::CTRL | Qt::Key_PageUp,
           [this] { guarded([&] { sitting_->step(-1); }); });
    addKey("readAgainKey", Qt::CTRL | Qt::Key_R, [this] {
        if (!sitting_->session())
            guarded([&] { sitting_->goTo(sitting_->place()); });
    });
    addKey("nextStampKey", Qt::CTRL | Qt::Key_Right, [stamp_by] { stamp_by(+1); });
    addKey("lastStampKey", Qt::CTRL | Qt::Key_Left, [stamp_by] { stamp_by(-1); });
    addKey("mirrorKey", Qt::CTRL | Qt::Key_M, [this] {
        if (WorkSession* session = sitting_->session())
            guarded([&] { session->turnMirrored(); });
    });
    addKey("noStampKey", Qt::CTRL | Qt::Key_Delete, [this] {
        if (sitting_->session())
            deleteOutline(sitting_->session()->current());
    });
    addKey("closeKey", Qt::CTRL | Qt::Key_Q, [this] { close(); });
}

}  // namespace gui
