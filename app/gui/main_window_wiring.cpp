// What leads where: signals of the sitting and of the panes.
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
#include "app/gui/stamp_view.h"
#include "app/gui/to_read_list.h"
#include "app/gui/tray_buttons.h"
#include "app/gui/typed_pane.h"

namespace gui {

void MainWindow::connectSitting()
{
    Sitting* sitting = sitting_.get();
    connect(sitting, &Sitting::sessionChanged, this, [this] {
        connectSession();
        showSession();
    });
    connect(sitting, &Sitting::knownChanged, this, [this] {
        filing_form_->showKnown(sitting_->known());
        showFields();
    });
    connect(sitting, &Sitting::dated, this, &MainWindow::showEvidence);
    connect(sitting, &Sitting::recordDated, this, [this](const QString& id, auto parts) {
        guarded([&] { showFound(id, parts.get()); });
    });
    connect(sitting, &Sitting::aheadChanged, this, &MainWindow::showAhead);
    connect(sitting, &Sitting::candidatesChanged, this, &MainWindow::showCandidates);
    connect(sitting, &Sitting::progressed, head_, &HeadBar::showProgress);
    connect(sitting, &Sitting::idle, this, [this] {
        head_->hideProgress();
        stamp_view_->setEmptyWords(emptyWords());
        showHints();
    });
    connect(sitting, &Sitting::noted, this,
            [this](const QString& sentence) { message_->say(Tone::Note, sentence); });
    connect(sitting, &Sitting::notedOfPhoto, this, [this](const QString& sentence) {
        message_->say(Tone::Note, sentence, Until::NextPhoto);
    });
    connect(sitting, &Sitting::troubled, this, [this](const QString& sentence) {
        message_->say(Tone::Trouble, sentence, Until::NextPhoto);
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
    connect(session->undoStack(), &QUndoStack::indexChanged, listener, [this] { actionDone(); });
    connect(session, &WorkSession::outlinesChanged, listener, [this] { showOutlines(); });
    connect(session, &WorkSession::fieldsChanged, listener, [this, session] {
        if (filing_form_->fields() != session->fields())
            showFields();
    });
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
    connect(typed_pane_, &TypedPane::written, this,
            [this, session](const std::vector<models::Line>& lines, int gesture) {
                if (session())
                    session()->write(lines, gesture);
                keepWindowState();
            });
    connect(typed_pane_, &TypedPane::faulty, this, &MainWindow::keepWindowState);
    connect(tray_buttons_, &TrayButtons::wanted, this, [this](TrayPage page) {
        page == TrayPage::Meaning ? openMeaning() : toggleTray(page);
    });
    connect(fold_, &QPushButton::clicked, this, &MainWindow::openMeaning);
    connect(head_, &HeadBar::layerPicked, this, &MainWindow::pickLayer);
    connect(tray_, &Tray::changed, this, &MainWindow::trayChanged);
    connect(qApp, &QApplication::focusChanged, this, [this](QWidget*, QWidget* now) {
        showHints();
        if (now && isAncestorOf(now))  // not while another program has the keys
            keepWindowState();
    });
    connect(message_, &MessageBar::dismissed, this, [this] {
        if (!QApplication::focusWidget() || QApplication::focusWidget()->parent() == message_)
            stamp_view_->setFocus();
    });
    connect(help_, &HelpOverlay::closed, this, [this] { stamp_view_->setFocus(); });
}

// The tray's pages.
void MainWindow::connectPanesToSitting()
{
    const auto session = [this] { return sitting_->session(); };
    connect(head_, &HeadBar::stopWanted, this, [this] { sitting_->stop(); });
    connect(to_read_, &ToReadList::opened, this, [this](int place) {
        tray_->close();
        guarded([&] { sitting_->goTo(place); });
    });
    connect(to_read_, &ToReadList::stampLaidOnto, this,
            [this](const StampPlace& stamp, const StampPlace& onto) {
                guarded([&] { sitting_->joinViews(stamp, onto); });
            });
    connect(candidates_, &CandidateList::taken, this, [this] {
        conclude(candidates_->inHand() ? Conclusion::TakeMaker : Conclusion::LeaveOpen);
    });
    connect(filing_form_, &FilingForm::fieldsChanged, this, [this, session] {
        if (session())
            session()->setFields(filing_form_->fields());
    });
    connect(filing_form_, &FilingForm::fileWanted, this, &MainWindow::file);
    connect(archive_pane_, &ArchivePane::searched, this, &MainWindow::search);
    connect(archive_pane_, &ArchivePane::opened, this, &MainWindow::openFound);
    connect(archive_pane_, &ArchivePane::looked, this,
            [this](const QString& id) { guarded([&] { showFound(id); }); });
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

}  // namespace gui
