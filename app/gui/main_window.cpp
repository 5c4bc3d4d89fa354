#include "app/gui/main_window.h"

#include <QApplication>
#include <QCloseEvent>
#include <QDragEnterEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QMimeData>
#include <QPushButton>
#include <QSplitter>
#include <QStyleFactory>
#include <QVBoxLayout>

#include "app/gui/archive_pane.h"
#include "app/gui/candidate_list.h"
#include "app/gui/filing_form.h"
#include "app/gui/head_bar.h"
#include "app/gui/help_overlay.h"
#include "app/gui/message_bar.h"
#include "app/gui/photo_view.h"
#include "app/gui/stamp_view.h"
#include "app/gui/to_read_list.h"
#include "app/gui/tray_buttons.h"
#include "app/gui/typed_pane.h"

namespace gui {

MainWindow::MainWindow(SittingOptions options, QWidget* parent)
    : QMainWindow(parent),
      sitting_(std::make_unique<Sitting>(std::move(options))),
      head_(new HeadBar),
      message_(new MessageBar),
      stamp_view_(new StampView),
      cell_line_(new QLabel),
      letter_case_(new QLabel),
      fold_(new QPushButton),
      splitter_(new QSplitter(Qt::Vertical)),
      tray_(new Tray),
      candidates_(new CandidateList),
      photo_view_(new PhotoView),
      to_read_(new ToReadList(sitting_->queue())),
      archive_pane_(new ArchivePane),
      filing_form_(new FilingForm),
      typed_pane_(new TypedPane),
      tray_buttons_(new TrayButtons),
      hints_(new QLabel),
      help_(nullptr)
{
    setObjectName("mainWindow");
    setWindowTitle(tr("Weftmark"));
    setAcceptDrops(true);
    setMinimumSize(640, 480);
    resize(1180, 780);
    build();
    addTrayPages();
    help_ = new HelpOverlay(centralWidget());
    connectSitting();
    connectPanes();
    connectPanesToSitting();
    connectPhotoView();
    qApp->installEventFilter(this);
    addKeys();
    setLight(lightOfDesktop(QApplication::palette()));
    showSession();
    showHints();
    stamp_view_->setFocus();
}

MainWindow::~MainWindow()
{
    session_listener_.reset();
    // Nothing may be told to panes that are going.
    disconnect(sitting_.get(), nullptr, this, nullptr);
    disconnect(qApp, nullptr, this, nullptr);
    disconnect(filing_form_, nullptr, this, nullptr);  // a field that is left tells what it holds
}

void MainWindow::build()
{
    cell_line_->setObjectName("cellLine");
    cell_line_->setAccessibleName(tr("The cell in hand"));
    cell_line_->setTextFormat(Qt::PlainText);
    fold_->setObjectName("fold");
    fold_->setFocusPolicy(Qt::NoFocus);
    hints_->setObjectName("hints");
    hints_->setTextFormat(Qt::PlainText);
    for (QLabel* label : {cell_line_, hints_})
        label->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    cell_line_->setContentsMargins(12, 5, 12, 5);
    letter_case_->setObjectName("letterCase");
    letter_case_->setContentsMargins(0, 5, 12, 5);
    setAsTyped(false);
    auto line = new QHBoxLayout;
    line->setSpacing(0);
    line->addWidget(cell_line_, 1);
    line->addWidget(letter_case_);
    auto upper = new QWidget;
    auto upper_layout = new QVBoxLayout(upper);
    upper_layout->setContentsMargins(0, 0, 0, 0);
    upper_layout->setSpacing(0);
    upper_layout->addWidget(stamp_view_, 1);
    upper_layout->addLayout(line);
    upper_layout->addWidget(fold_);
    splitter_->addWidget(upper);
    splitter_->addWidget(tray_);
    splitter_->setChildrenCollapsible(false);
    splitter_->setHandleWidth(4);
    auto whole = new QWidget;
    auto layout = new QVBoxLayout(whole);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    layout->addWidget(head_);
    layout->addWidget(message_);
    layout->addWidget(splitter_, 1);
    buildFoot(layout);
    setCentralWidget(whole);
}

void MainWindow::buildFoot(QVBoxLayout* layout)
{
    auto foot = new QHBoxLayout;
    foot->setContentsMargins(12, 2, 6, 3);
    foot->addWidget(hints_, 1);
    foot->addWidget(tray_buttons_);
    layout->addLayout(foot);
}

void MainWindow::addTrayPages()
{
    tray_->addPage(TrayPage::Meaning,
                   tr("What it can mean   Alt+Enter takes the maker, Alt+Backspace says none of "
                      "these, Alt+Del leaves it open"),
                   candidates_);
    tray_->addPage(TrayPage::Photo, tr("The photo and its outlines"), photo_view_);
    tray_->addPage(TrayPage::ToRead, tr("Photos on the table"), to_read_);
    tray_->addPage(TrayPage::Archive, tr("Find records   (Enter opens one)"), archive_pane_);
    tray_->addPage(TrayPage::Filing, tr("The record of the piece"), filing_form_);
    tray_->addPage(TrayPage::Text, tr("The reading as text, a line a line"), typed_pane_);
}

void MainWindow::setLight(Light light)
{
    light_ = light;
    const Colours colours = coloursOf(light);
    QApplication::setPalette(paletteOf(colours));
    setPalette(paletteOf(colours));
    setStyleSheet(styleSheetOf(colours));
    tray_buttons_->setColours(colours);
}

void MainWindow::openPhotos(const std::vector<std::filesystem::path>& files)
{
    guarded([&] { sitting_->openPhotos(files); });
}

void MainWindow::guarded(const std::function<void()>& action)
{
    try {
        action();
    } catch (const std::exception& error) {
        message_->say(Tone::Trouble, QString::fromUtf8(error.what()), Until::NextPhoto);
    }
}

void MainWindow::offerDrafts()
{
    guarded([this] {
        std::vector<Draft> drafts = sitting_->earlierDrafts();
        std::erase_if(drafts, [this](const Draft& draft) {
            // Those are taken up by themselves when their photo is opened.
            return sitting_->queue()->find(draft.photo) >= 0;
        });
        if (drafts.empty())
            return;
        const QString newest = drafts.front().photo.empty() ? tr("a record without a photo")
                                                            : nameOf(drafts.front().photo);
        message_->ask(
            drafts.size() == 1
                ? tr("An earlier sitting left %1 begun and not filed.").arg(newest)
                : tr("An earlier sitting left %1 photos begun and not filed, %2 last.")
                      .arg(drafts.size())
                      .arg(newest),
            {{tr("Take it up"), [this, drafts] { guarded([&] { sitting_->takeUp(drafts); }); }},
             {tr("Leave it for later"), [this] { stamp_view_->setFocus(); }}});
    });
}

void MainWindow::closeEvent(QCloseEvent* event)
{
    filing_form_->settle();
    QString trouble;
    try {
        sitting_->keepDrafts();
    } catch (const std::exception& error) {
        trouble = QString::fromUtf8(error.what());
    }
    const QStringList unfiled = sitting_->unfiled(!trouble.isEmpty());
    if (closing_ || unfiled.isEmpty()) {
        sitting_->stop();
        sitting_->leaveTable();
        event->accept();
        return;
    }
    event->ignore();
    const Answer leave{trouble.isEmpty() ? tr("Close, the draft is kept") : tr("Close and lose it"),
                       [this] {
                           closing_ = true;
                           close();
                       }};
    const Answer stay{tr("Stay"), [this] { stamp_view_->setFocus(); }};
    const QString names = unfiled.size() == 1
                              ? tr("%1 is not filed yet.").arg(unfiled.front())
                              : tr("%1 photos are not filed yet.").arg(unfiled.size());
    if (trouble.isEmpty())
        message_->ask(names, {leave, stay});
    else
        message_->ask(names + " " + trouble, {stay, leave});
}

void MainWindow::dragEnterEvent(QDragEnterEvent* event)
{
    if (event->mimeData()->hasUrls())
        event->acceptProposedAction();
}

void MainWindow::dropEvent(QDropEvent* event)
{
    std::vector<std::filesystem::path> files;
    for (const QUrl& url : event->mimeData()->urls())
        if (url.isLocalFile())
            files.emplace_back(url.toLocalFile().toStdString());
    openPhotos(files);
}

}  // namespace gui
