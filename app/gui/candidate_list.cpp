#include "app/gui/candidate_list.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPlainTextEdit>
#include <QTableView>

#include "app/gui/share_delegate.h"
#include "app/gui/year_bars.h"
#include "models/settling_words.h"

namespace gui {

CandidateList::CandidateList(QWidget* parent)
    : QFrame(parent),
      model_(new CandidateModel(this)),
      table_(new QTableView),
      heading_(new QLabel),
      unknown_(new ShareBar(tr("none of the known makers"))),
      years_(new YearBars),
      reasons_(new QPlainTextEdit)
{
    setObjectName("candidateList");
    table_->setObjectName("candidateTable");
    table_->setAccessibleName(tr("What the reading can mean"));
    table_->setModel(model_);
    table_->setItemDelegateForColumn(CandidateModel::Share, new ShareDelegate(table_));
    table_->setSelectionBehavior(QAbstractItemView::SelectRows);
    table_->setSelectionMode(QAbstractItemView::SingleSelection);
    table_->setTabKeyNavigation(false);
    table_->setShowGrid(false);
    table_->setWordWrap(false);
    table_->verticalHeader()->hide();
    table_->verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 12);
    table_->horizontalHeader()->setHighlightSections(false);
    table_->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    table_->horizontalHeader()->setStretchLastSection(true);
    table_->setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    table_->setTextElideMode(Qt::ElideNone);
    reasons_->setObjectName("candidateReasons");
    reasons_->setAccessibleName(tr("Reasons"));
    reasons_->setReadOnly(true);
    reasons_->setTabChangesFocus(true);
    heading_->setObjectName("trayTitle");
    unknown_->setObjectName("unknownShare");
    auto listed = new QVBoxLayout;
    listed->setSpacing(4);
    listed->addWidget(unknown_);
    listed->addWidget(table_);
    auto beside = new QVBoxLayout;
    beside->setSpacing(4);
    beside->addWidget(heading_);
    beside->addWidget(years_);
    beside->addWidget(reasons_);
    auto layout = new QHBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addLayout(listed, 5);
    layout->addLayout(beside, 3);
    connect(table_->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            &CandidateList::showReasons);
    connect(table_, &QTableView::activated, this, &CandidateList::takeRow);
    setFocusProxy(table_);
    showReasons();
}

void CandidateList::showCandidates(const models::CandidateList& list)
{
    const models::Candidate* before = inHand();
    const std::string maker = before ? before->maker_id : std::string();
    settling_ = list.settling;
    model_->setCandidates(list);
    unknown_->showShare(list.unknown_maker);
    int row = 0;
    for (int i = 0; i < model_->rowCount(); ++i)
        if (model_->candidate(i) && model_->candidate(i)->maker_id == maker)
            row = i;
    putInHand(row);
    fitColumns();
    showReasons();
}

// As wide as what stands in them; the last one takes what is left, and where that is too little
// Left and Right lead to it.
void CandidateList::fitColumns()
{
    constexpr int beside = 12;
    for (const int column : {int{CandidateModel::Maker}, int{CandidateModel::Years}}) {
        table_->resizeColumnToContents(column);
        table_->setColumnWidth(column, table_->columnWidth(column) + beside);
    }
    table_->setColumnWidth(CandidateModel::Share,
                           fontMetrics().horizontalAdvance("more than 99 %") + 2 * beside);
    table_->horizontalHeader()->setMinimumSectionSize(fontMetrics().horizontalAdvance("NNNN"));
}

void CandidateList::clear()
{
    settling_.reset();
    model_->clear();
    unknown_->showShare(-1);
    showReasons();
}

const models::Candidate* CandidateList::inHand() const
{
    return model_->candidate(table_->currentIndex().row());
}

void CandidateList::showReasons()
{
    const models::Candidate* candidate = inHand();
    heading_->setText(candidate ? tr("Why %1").arg(QString::fromStdString(candidate->maker))
                                : tr("Why"));
    QStringList reasons;
    years_->showYears(candidate ? candidate->years : std::vector<models::YearShare>());
    years_->setVisible(candidate != nullptr);
    if (candidate) {
        for (const std::string& reason : candidate->reasons)
            reasons << QString::fromUtf8("\xE2\x80\xA2 ") + QString::fromStdString(reason);
    } else if (model_->rowCount() == 0) {
        reasons << tr("What the letters can mean is being weighed.");
    } else if (model_->folded() > 0) {
        reasons << tr("Each of them is less than 1 % likely. Enter lists them.");
    } else {
        reasons << tr("What is left for the makers that are not listed. Enter leaves it open.");
    }
    if (settling_ && model_->rowCount() > 0) {
        const models::SettlingWords words = models::settlingInWords(*settling_);
        reasons << QString() << QString::fromStdString(words.where);
        for (const std::string& meaning : words.meanings)
            reasons << QString::fromUtf8("\xE2\x80\xA2 ") + QString::fromStdString(meaning);
    }
    reasons_->setPlainText(reasons.join('\n'));
}

void CandidateList::putInHand(int row)
{
    table_->setCurrentIndex(model_->index(row, 0));
}

// The makers that are hardly likely stand there first, then one of them can be taken.
void CandidateList::takeRow()
{
    const int row = table_->currentIndex().row();
    if (inHand() || model_->folded() == 0)
        return Q_EMIT taken();
    model_->unfold();
    fitColumns();
    putInHand(row);
}

}  // namespace gui
