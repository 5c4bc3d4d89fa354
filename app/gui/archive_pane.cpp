#include "app/gui/archive_pane.h"

#include <QGridLayout>
#include <QHeaderView>
#include <QIntValidator>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QTableView>
#include <QTextBrowser>

namespace gui {

ArchivePane::ArchivePane(QWidget* parent)
    : QFrame(parent),
      model_(new FoundModel(this)),
      words_(new QLineEdit),
      maker_(new QLineEdit),
      from_(new QLineEdit),
      to_(new QLineEdit),
      count_(new QLabel),
      table_(new QTableView),
      record_(new QTextBrowser)
{
    setObjectName("archivePane");
    build();
    pause_.setSingleShot(true);
    pause_.setInterval(250);
    connect(&pause_, &QTimer::timeout, this, &ArchivePane::searchNow);
    for (QLineEdit* field : {words_, maker_, from_, to_}) {
        connect(field, &QLineEdit::textChanged, &pause_, qOverload<>(&QTimer::start));
        field->installEventFilter(this);
    }
    connect(table_->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            [this] { Q_EMIT looked(idInHand()); });
    connect(table_, &QTableView::activated, this, [this] { Q_EMIT opened(idInHand()); });
    setFocusProxy(words_);
}

void ArchivePane::build()
{
    words_->setObjectName("searchWords");
    words_->setAccessibleName(tr("Words to find"));
    words_->setPlaceholderText(tr("words; 19[.]1 and [- - -]ER match unread letters"));
    maker_->setObjectName("searchMaker");
    maker_->setAccessibleName(tr("Maker"));
    maker_->setPlaceholderText(tr("maker"));
    from_->setObjectName("searchFrom");
    from_->setAccessibleName(tr("From year"));
    from_->setPlaceholderText(tr("from year"));
    to_->setObjectName("searchTo");
    to_->setAccessibleName(tr("To year"));
    to_->setPlaceholderText(tr("to year"));
    for (QLineEdit* year : {from_, to_}) {
        year->setValidator(new QIntValidator(0, 9999, year));
        year->setMaximumWidth(fontMetrics().horizontalAdvance("from year 000"));
    }
    count_->setObjectName("foundCount");
    table_->setObjectName("foundTable");
    table_->setAccessibleName(tr("Records found"));
    table_->setModel(model_);
    table_->setSelectionBehavior(QAbstractItemView::SelectRows);
    table_->setSelectionMode(QAbstractItemView::SingleSelection);
    table_->setTabKeyNavigation(false);
    table_->setShowGrid(false);
    table_->setWordWrap(false);
    table_->verticalHeader()->hide();
    table_->horizontalHeader()->setHighlightSections(false);
    table_->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    table_->horizontalHeader()->setSectionResizeMode(FoundModel::Text, QHeaderView::Stretch);
    record_->setObjectName("recordText");
    record_->setAccessibleName(tr("The record in hand"));
    record_->setOpenLinks(false);
    auto line = new QHBoxLayout;
    line->addWidget(words_, 3);
    line->addWidget(maker_, 1);
    line->addWidget(from_);
    line->addWidget(to_);
    line->addWidget(count_);
    auto grid = new QGridLayout(this);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->addLayout(line, 0, 0, 1, 2);
    grid->addWidget(table_, 1, 0);
    grid->addWidget(record_, 1, 1);
    grid->setColumnStretch(0, 5);
    grid->setColumnStretch(1, 3);
    grid->setRowStretch(1, 1);
}

bool ArchivePane::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() != QEvent::KeyPress)
        return QFrame::eventFilter(watched, event);
    const int key = static_cast<QKeyEvent*>(event)->key();
    const bool enter = key == Qt::Key_Return || key == Qt::Key_Enter;
    if (!enter && key != Qt::Key_Down)
        return QFrame::eventFilter(watched, event);
    if (pause_.isActive())
        searchNow();
    if (model_->rowCount() > 0)
        table_->setFocus(Qt::OtherFocusReason);
    return true;
}

models::FindQuery ArchivePane::query() const
{
    const auto year = [](const QLineEdit* field) {
        bool given = false;
        const int number = field->text().toInt(&given);
        return given ? std::optional<int>(number) : std::nullopt;
    };
    return {words_->text().trimmed().toStdString(), maker_->text().trimmed().toStdString(),
            year(from_), year(to_)};
}

void ArchivePane::searchNow()
{
    pause_.stop();
    Q_EMIT searched(query());
}

void ArchivePane::showFound(std::vector<models::FoundItem> found)
{
    model_->setFound(std::move(found));
    const int rows = model_->rowCount();
    count_->setText(rows == 0   ? tr("nothing found")
                    : rows == 1 ? tr("one record")
                                : tr("%1 records").arg(rows));
    for (const int column : {FoundModel::Accession, FoundModel::Maker, FoundModel::Date})
        table_->resizeColumnToContents(column);
    const models::FindQuery asked = query();
    const bool any =
        asked.words.empty() && asked.maker.empty() && !asked.year_from && !asked.year_to;
    record_->setPlaceholderText(
        any ? tr("No record is filed in this archive yet. Read a photo, then file its record with "
                 "Ctrl+S; it is found here from then on.")
            : tr("No record has all of this; leave a word or a field out to find more."));
    if (rows > 0)
        table_->setCurrentIndex(model_->index(0, 0));
    else
        Q_EMIT looked(QString());
}

void ArchivePane::showRecord(const QString& html)
{
    record_->setHtml(html);
}

QString ArchivePane::idInHand() const
{
    const models::FoundItem* item = model_->item(table_->currentIndex().row());
    return item ? QString::fromStdString(item->id) : QString();
}

}  // namespace gui
