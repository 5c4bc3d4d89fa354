// What the window shows of the sitting.
#include <QLabel>
#include <QPushButton>
#include <utility>

#include "app/gui/archive_pane.h"
#include "app/gui/candidate_list.h"
#include "app/gui/cell_words.h"
#include "app/gui/evidence_pane.h"
#include "app/gui/filing_form.h"
#include "app/gui/head_bar.h"
#include "app/gui/main_window.h"
#include "app/gui/message_bar.h"
#include "app/gui/photo_view.h"
#include "app/gui/record_page.h"
#include "app/gui/stamp_view.h"
#include "app/gui/to_read_list.h"
#include "app/gui/typed_pane.h"

namespace gui {

void MainWindow::showSession()
{
    const int place = sitting_->place();
    PhotoQueue* queue = sitting_->queue();
    if (place != std::exchange(shown_place_, place)) {
        message_->pass(Until::NextPhoto);
        to_read_->setCurrentPhoto(place);
    }
    head_->showPhoto(place < 0 ? tr("No photo yet") : queue->name(place),
                     place < 0 ? 0 : queue->numberOf(place), queue->onTable());
    countUnfiled();
    WorkSession* session = sitting_->session();
    photo_view_->showPhoto(session ? session->photo().pixels : cv::Mat());
    showFields();
    filing_form_->setFilable(session && (!session->stamps().empty() || sitting_->record()),
                             session ? tr("Outline a stamp first.") : tr("Open a photo first."));
    showStamp();
    showOutlines();
    showCandidates();
    showEvidence();
    if (tray_->isClosed() && !message_->isAsking())
        stamp_view_->setFocus();
    if (session && returning_)
        returnToTray(*std::exchange(returning_, std::nullopt));
}

void MainWindow::countUnfiled()
{
    tray_->setTitle(TrayPage::ToRead,
                    tr("Photos on the table, %1 not filed   Enter opens one, Ctrl+I (or laying "
                       "a card on another) puts photos of one piece together, a stamp laid on "
                       "another is a view of it")
                        .arg(sitting_->queue()->stillToRead()));
}

QString MainWindow::emptyWords() const
{
    if (const WorkSession* session = sitting_->session()) {
        if (session->photo().pixels.empty())
            return session->stamps().empty()
                       ? tr("No photo, and no stamp was read.  Ctrl+S shows the record.")
                       : tr("No photo; the letters as they were recorded.");
        if (session->stamp())
            return tr("The stamp is being read.  Esc stops it.");
        return tr(
            "No stamp is outlined in this photo. F9 opens the photo; there Ins puts an "
            "outline where you see a mark.");
    }
    if (sitting_->isBusy())
        return tr("The photo is being read.  Esc stops it.");
    const int place = sitting_->place();
    if (place >= 0 && sitting_->queue()->state(place) == PhotoState::Unreadable)
        return tr(
            "This photo cannot be read.  Once it is mended Ctrl+R reads it, F10 shows the "
            "others.");
    if (place >= 0)
        return tr("This photo has not been read.  Ctrl+R reads it, F10 shows the others.");
    return tr(
        "Open photos with Ctrl+O, or drop them, or a folder of them, here.  F1 shows every "
        "key.");
}

void MainWindow::showStamp()
{
    WorkSession* session = sitting_->session();
    const StampWork* stamp = session ? session->stamp() : nullptr;
    stamp_view_->setEmptyWords(emptyWords());
    pickLayer(layer_);
    showLetters();
    if (tray_->isOpen(TrayPage::Meaning) && !mayShowCandidates())
        tray_->close();
    if (stamp && filing_form_)
        filing_form_->setFilable(true, {});
}

void MainWindow::pickLayer(int layer)
{
    WorkSession* session = sitting_->session();
    const StampWork* stamp = session ? session->stamp() : nullptr;
    if (!stamp || !stamp->examined) {
        head_->showLayers({}, 0);
        stamp_view_->showPicture({});
        return;
    }
    const vision::EnhancedStamp& enhanced = stamp->examined->enhanced;
    const int count = static_cast<int>(enhanced.layers.size());
    if (layer > count)
        return;
    layer_ = layer;
    QStringList words{layerWord({})};
    for (const vision::Layer& one : enhanced.layers)
        words << layerWord(one.name);
    head_->showLayers(words, layer_);
    keepWindowState();
    stamp_view_->showPicture(layer_ == 0
                                 ? enhanced.rectified.pixels
                                 : enhanced.layers[static_cast<std::size_t>(layer_ - 1)].grey);
}

std::string MainWindow::layerName() const
{
    WorkSession* session = sitting_->session();
    const StampWork* stamp = session ? session->stamp() : nullptr;
    if (!stamp || !stamp->examined || layer_ == 0)
        return {};
    return stamp->examined->enhanced.layers[static_cast<std::size_t>(layer_ - 1)].name;
}

void MainWindow::showLetters()
{
    WorkSession* session = sitting_->session();
    const StampWork* stamp = session ? session->stamp() : nullptr;
    stamp_view_->showLines(stamp ? stamp->shown.lines : std::vector<models::Line>(),
                           session ? session->person() : std::string());
    const models::Reading proposal =
        stamp && stamp->examined ? stamp->examined->proposal : models::Reading{};
    stamp_view_->showBeside(proposal, stamp
                                          ? shownRoles(stamp->shown.lines, sitting_->guessedRoles())
                                          : std::vector<std::vector<ShownRole>>());
    if (tray_->isOpen(TrayPage::Text))
        typed_pane_->showLines(stamp ? stamp->shown.lines : std::vector<models::Line>());
    if (tray_->isOpen(TrayPage::Filing))
        tellNothingConfirmed();
    showPlace();
}

void MainWindow::showFold()
{
    WorkSession* session = sitting_->session();
    const StampWork* stamp = session ? session->stamp() : nullptr;
    fold_->setVisible(stamp && tray_->isClosed());
    if (!stamp)
        return;
    const LettersSeen count = lettersSeen(*stamp);
    fold_->setText(mayShowCandidates()
                       ? tr("What it can mean   F11")
                       : tr("What it can mean   folded until you have gone once through the "
                            "letters: %1 of %2   F11 unfolds it now")
                             .arg(count.seen)
                             .arg(count.all));
}

void MainWindow::showOutlines()
{
    WorkSession* session = sitting_->session();
    std::vector<vision::Quad> outlines;
    if (session)
        for (const StampWork& stamp : session->stamps())
            outlines.push_back(stamp.outline.corners);
    photo_view_->showOutlines(outlines, session ? session->current() : -1);
    head_->showStamp(session ? session->current() + 1 : 0, static_cast<int>(outlines.size()),
                     sitting_->viewedInHand());
    showHints();
}

void MainWindow::showCandidates()
{
    const models::CandidateList* list = sitting_->candidates();
    if (!list || !mayShowCandidates()) {
        candidates_->clear();
        filing_form_->showCandidates({});
        return;
    }
    candidates_->showCandidates(*list);
    filing_form_->showCandidates(*list);
}

void MainWindow::showFields()
{
    const WorkSession* session = sitting_->session();
    FilingForm::Beside beside;
    if (session) {
        beside.stamps = sitting_->stampKeys();
        beside.lent = session->lent();
        beside.standing = sitting_->conclusions();
        beside.is_filed = sitting_->record() != nullptr;
    }
    filing_form_->showFields(session ? session->fields() : FilingFields{}, beside);
}

// Makers and years stay out of view until the letters were gone through.
void MainWindow::showEvidence()
{
    const std::vector<models::PartDating>* parts = sitting_->dating();
    if (parts && mayShowCandidates())
        filing_form_->evidence().showDating(*parts);
    else
        filing_form_->evidence().showFolded();
}

// A record in the list of those found; what its evidence gives follows.
void MainWindow::showFound(const QString& item_id, const std::vector<models::PartDating>* parts)
{
    const auto item = item_id.isEmpty() ? std::nullopt : sitting_->look(item_id.toStdString());
    if (parts && (!item || archive_pane_->idInHand() != item_id))
        return;
    archive_pane_->showRecord(item ? recordPage(*item, parts, sitting_->known().get()) : QString());
    if (item && !parts)
        sitting_->dateRecord(*item);
}

void MainWindow::showAhead(int read, int all)
{
    countUnfiled();
    head_->showAhead(all < 2 || read >= all   ? QString()
                     : sitting_->readsAhead() ? tr("%1 of %2 read").arg(read).arg(all)
                                              : tr("%1 of %2 read, paused").arg(read).arg(all));
}

}  // namespace gui
