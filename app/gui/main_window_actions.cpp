// What the window's keys do.
#include <QFileDialog>
#include <QKeyEvent>
#include <QLabel>
#include <QSplitter>
#include <set>
#include <utility>

#include "app/gui/archive_pane.h"
#include "app/gui/filing_form.h"
#include "app/gui/main_window.h"
#include "app/gui/message_bar.h"
#include "app/gui/stamp_view.h"
#include "app/gui/to_read_list.h"
#include "app/gui/tray_buttons.h"

namespace gui {

bool MainWindow::mayShowCandidates() const
{
    WorkSession* session = sitting_->session();
    const StampWork* stamp = session ? session->stamp() : nullptr;
    const bool none_to_read = session && session->stamps().empty() && sitting_->record();
    return none_to_read || (stamp && (stamp->gone_through || stamp->looked_ahead));
}

void MainWindow::lettersGoneThrough()
{
    if (tray_->isClosed())
        tray_->open(TrayPage::Meaning, false);
    else
        trayChanged();
}

void MainWindow::openMeaning()
{
    if (WorkSession* session = sitting_->session())
        session->setCandidatesInView(true, true);
    toggleTray(TrayPage::Meaning);
}

// A key pressed again leads in, then out.
void MainWindow::toggleTray(TrayPage page)
{
    if (tray_->isOpen(page) && tray_->holdsFocus()) {
        tray_->close();
        return;
    }
    if (page == TrayPage::ToRead && !tray_->isOpen(page))
        to_read_->setCurrentPhoto(sitting_->place());
    tray_->open(page, true);
    if (page == TrayPage::Archive)
        archive_pane_->searchNow();
}

void MainWindow::trayChanged()
{
    if (tray_->isClosed()) {
        stamp_view_->setFocus();
    } else {
        const bool large = tray_->page() == TrayPage::Photo || tray_->page() == TrayPage::Filing;
        constexpr int low_px = 520;  // then a large page gets what it needs to be used
        const int whole = splitter_->height();
        const int above = !large ? whole * 3 / 5 : whole < low_px ? whole / 4 : whole * 2 / 5;
        splitter_->setSizes({above, whole - above});
    }
    const bool in_view = tray_->isOpen(TrayPage::Meaning);
    if (WorkSession* session = sitting_->session())
        session->setCandidatesInView(in_view, false);
    sitting_->followLetters(mayShowCandidates() && (in_view || tray_->isOpen(TrayPage::Filing)));
    sitting_->followDating(mayShowCandidates() && tray_->isOpen(TrayPage::Filing));
    if (tray_->isOpen(TrayPage::Text))
        showLetters();
    if (tray_->isOpen(TrayPage::Filing) && sitting_->session())
        filing_form_->showStamps(sitting_->stampKeys());
    tellNothingConfirmed();
    tray_buttons_->showOpen(tray_->isClosed() ? std::nullopt : std::optional(tray_->page()));
    keepWindowState();
    showFold();
    showHints();
}

void MainWindow::escape()
{
    if (!message_->isAsking() && sitting_->stop())
        return;
    if (message_->isVisible())
        message_->dismiss();
    else if (!tray_->isClosed())
        tray_->close();
    stamp_view_->setFocus();
}

// What was said before is over.
void MainWindow::actionDone()
{
    message_->pass(Until::NextAction);
}

void MainWindow::undo(bool again)
{
    actionDone();
    guarded([&] { again ? sitting_->redo() : sitting_->undo(); });
}

// The photo as it is, without layer and tones: until the key is let go, or, after a short press,
// from then on.
void MainWindow::holdPhoto()
{
    if (held_layer_)
        return;
    held_layer_ = layer_;
    held_since_.start();
    stamp_view_->setTones({});
    pickLayer(0);
}

bool MainWindow::eventFilter(QObject* watched, QEvent* event)
{
    constexpr qint64 short_press_ms = 300;
    if (event->type() == QEvent::ShortcutOverride || event->type() == QEvent::KeyPress ||
        event->type() == QEvent::MouseButtonPress || event->type() == QEvent::Drop)
        message_->age();
    if (watched == hints_ && event->type() == QEvent::Resize)
        showHints();
    if (event->type() == QEvent::KeyRelease && held_layer_) {
        const auto key = static_cast<QKeyEvent*>(event);
        if (key->key() == Qt::Key_F2 && !key->isAutoRepeat()) {
            const int layer = *std::exchange(held_layer_, std::nullopt);
            stamp_view_->setTones(tones_);
            if (held_since_.elapsed() > short_press_ms)
                pickLayer(layer);
        }
    }
    return QMainWindow::eventFilter(watched, event);
}

void MainWindow::turnTones(const Tones& tones)
{
    tones_ = tones;
    stamp_view_->setTones(tones);
    keepWindowState();
}

void MainWindow::chooseFiles()
{
    std::vector<std::filesystem::path> files;
    const QStringList chosen = QFileDialog::getOpenFileNames(
        this, tr("Open photos"), QString(),
        tr("Photos (*.jpg *.jpeg *.png *.tif *.tiff *.webp *.bmp *.heic *.heif *.JPG *.JPEG *.PNG "
           "*.TIF *.TIFF *.WEBP *.BMP *.HEIC *.HEIF);;Every file (*)"));
    for (const QString& file : chosen)
        files.emplace_back(file.toStdString());
    openPhotos(files);
}

bool MainWindow::file()
{
    filing_form_->settle();
    WorkSession* session = sitting_->session();
    if (!session || (session->stamps().empty() && !sitting_->record())) {
        message_->say(Tone::Note, tr("There is nothing to file yet; open a photo and read "
                                     "a stamp first."));
        return false;
    }
    if (!filing_form_->trouble().isEmpty()) {
        message_->say(Tone::Trouble, filing_form_->trouble());
        return false;
    }
    session->setFields(filing_form_->fields());
    bool filed = false;
    guarded([&] { filed = sitting_->fileRecord(layerName()); });
    if (filed)
        tray_->close();
    return filed;
}

// What was taken over from the piece before is seen before it is filed.
void MainWindow::fileAndGoOn()
{
    WorkSession* session = sitting_->session();
    if (session && !session->confirmRest())
        return stamp_view_->setFocus();
    const bool lends = session && session->lent() != FilingFields{};
    if (lends && !tray_->isOpen(TrayPage::Filing)) {
        tray_->open(TrayPage::Filing, true);
        return message_->say(Tone::Note, tr("The letters are confirmed. The record takes over "
                                            "what was said of the piece before; if that is "
                                            "right, press the same keys again."));
    }
    if (file())
        guarded([&] { sitting_->goToNextUnfiled(); });
}

// What the person makes of the candidates goes into the record; no letter is changed by it.
void MainWindow::conclude(Conclusion conclusion)
{
    if (!sitting_->session())
        return message_->say(Tone::Note, tr("Open a photo first."));
    if (conclusion == Conclusion::TakeMaker) {
        const models::Candidate* candidate = candidates_->inHand();
        if (!candidate)
            return message_->say(
                Tone::Note, mayShowCandidates()
                                ? tr("No maker is in hand; F11 leads to the list.")
                                : tr("Go once through the letters first; F11 unfolds the makers "
                                     "sooner, which is recorded."));
        filing_form_->takeMaker(QString::fromStdString(candidate->maker_id));
    } else if (conclusion == Conclusion::NoneOfThem) {
        filing_form_->takeNoneOfThem();
    } else {
        filing_form_->takeMaker({});
    }
    tray_->open(TrayPage::Filing, true);
    if (conclusion == Conclusion::TakeMaker)
        filing_form_->focusWord();
}

void MainWindow::restoreLetters()
{
    const models::Candidate* candidate = candidates_->inHand();
    if (!candidate || !sitting_->session())
        return message_->say(Tone::Note, tr("No maker is in hand whose mark could tell the lost "
                                            "letters; F11 leads to the list."));
    sitting_->session()->restoreFrom(candidate->mark);
}

void MainWindow::search(const models::FindQuery& query)
{
    guarded([&] { archive_pane_->showFound(sitting_->find(query)); });
}

void MainWindow::openFound(const QString& id)
{
    guarded([&] {
        const auto item = sitting_->look(id.toStdString());
        if (!item)
            return;
        tray_->close();
        sitting_->openRecord(*item);
    });
}

bool MainWindow::isFiledOutline(int stamp)
{
    const RecordLink* record = sitting_->record();
    const auto& stamps = sitting_->session()->stamps();
    if (!record || !record->views.count(stamps.at(static_cast<std::size_t>(stamp)).id))
        return false;
    message_->say(Tone::Note, tr("A filed outline stays as it was filed; Ins adds another."));
    return true;
}

void MainWindow::moveOutline(int stamp, const vision::Quad& corners, int gesture)
{
    if (sitting_->session() && !isFiledOutline(stamp))
        guarded([&] { sitting_->session()->setOutline(stamp, corners, gesture); });
}

void MainWindow::deleteOutline(int stamp)
{
    if (sitting_->session() && stamp >= 0 && !isFiledOutline(stamp))
        guarded([&] { sitting_->session()->deleteOutline(stamp); });
}

void MainWindow::deleteOtherOutlines()
{
    WorkSession* session = sitting_->session();
    if (!session || session->stamps().empty())
        return message_->say(Tone::Note, tr("There is no stamp here to take out."));
    const RecordLink* record = sitting_->record();
    guarded(
        [&] { session->deleteOtherOutlines(record ? record->views : std::set<std::string>{}); });
}

}  // namespace gui
