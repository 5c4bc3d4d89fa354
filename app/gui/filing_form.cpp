#include "app/gui/filing_form.h"

#include <QApplication>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>
#include <algorithm>
#include <vector>

#include "app/gui/conclusion_fields.h"
#include "app/gui/evidence_pane.h"
#include "app/gui/fact_table.h"
#include "app/gui/piece_fields.h"
#include "models/edtf.h"

namespace gui {

FilingForm::FilingForm(QWidget* parent)
    : QFrame(parent),
      piece_(new PieceFields),
      conclusion_(new ConclusionFields),
      facts_(new FactTable),
      evidence_(new EvidencePane),
      columns_(new QBoxLayout(QBoxLayout::LeftToRight)),
      beside_(new QBoxLayout(QBoxLayout::LeftToRight)),
      trouble_(new QLabel),
      file_(new QPushButton(tr("File the record  Ctrl+S")))
{
    setObjectName("filingForm");
    trouble_->setObjectName("filingTrouble");
    file_->setObjectName("fileButton");
    trouble_->setWordWrap(true);
    build();
    const auto changed = [this] {
        showTrouble();
        Q_EMIT fieldsChanged();
    };
    connect(piece_, &PieceFields::changed, this, [this, changed] {
        facts_->facts().setFacts(fields(), facts_->facts().stamps());  // details go by the type
        changed();
    });
    connect(conclusion_, &ConclusionFields::changed, this, changed);
    connect(&facts_->facts(), &FactModel::factsChanged, this, changed);
    connect(file_, &QPushButton::clicked, this, &FilingForm::fileWanted);
    setFocusProxy(piece_);
}

void FilingForm::build()
{
    auto fields = new QWidget;
    fields->setObjectName("recordFields");
    auto stacked = new QVBoxLayout(fields);
    stacked->setContentsMargins(0, 0, 6, 0);
    stacked->setSpacing(10);
    stacked->addWidget(piece_);
    stacked->addWidget(conclusion_);
    stacked->addStretch(1);
    auto scrolled = new QScrollArea;
    scrolled->setObjectName("recordScroll");
    scrolled->setWidget(fields);
    scrolled->setWidgetResizable(true);
    scrolled->setFrameShape(QFrame::NoFrame);
    scrolled->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scrolled->setFocusPolicy(Qt::NoFocus);
    connect(qApp, &QApplication::focusChanged, scrolled,
            [scrolled, fields](QWidget*, QWidget* now) {
                if (now && fields->isAncestorOf(now))
                    scrolled->ensureWidgetVisible(now);
            });
    auto seen = new QVBoxLayout;
    seen->setSpacing(4);
    auto seen_heading = new QLabel(tr("W&hat is seen on it"));
    seen_heading->setObjectName("trayTitle");
    seen_heading->setBuddy(facts_);
    seen->addWidget(seen_heading);
    seen->addWidget(facts_, 1);
    beside_->addLayout(seen, 5);
    beside_->addWidget(evidence_, 5);
    columns_->setSpacing(12);
    columns_->addWidget(scrolled, 5);
    columns_->addLayout(beside_, 10);
    auto last = new QHBoxLayout;
    last->addWidget(trouble_, 1);
    last->addWidget(file_);
    auto layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addLayout(columns_, 1);
    layout->addLayout(last);
    alignFields();
}

// The fields of both parts stand below each other, whatever words are before them.
void FilingForm::alignFields()
{
    std::vector<QLabel*> labels;
    for (QWidget* part : {static_cast<QWidget*>(piece_), static_cast<QWidget*>(conclusion_)})
        for (QLabel* label : part->findChildren<QLabel*>())
            if (label->buddy())
                labels.push_back(label);
    int width = 0;
    for (const QLabel* label : labels)
        width = std::max(width, label->sizeHint().width());
    for (QLabel* label : labels)
        label->setMinimumWidth(width);
}

void FilingForm::resizeEvent(QResizeEvent* event)
{
    QFrame::resizeEvent(event);
    // Three columns, two, or one.
    const int letters = width() / fontMetrics().averageCharWidth();
    const bool three = letters > 175, two = letters > 85;
    beside_->setDirection(three ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
    beside_->setSpacing(three ? 12 : 4);
    columns_->setDirection(two ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
    columns_->setStretch(1, three ? 10 : 6);
}

void FilingForm::showKnown(std::shared_ptr<const models::MakerRegister> known)
{
    piece_->showKnown(*known);
    facts_->facts().setKnown(known);
    conclusion_->showKnown(std::move(known));
}

void FilingForm::showCandidates(const models::CandidateList& list)
{
    conclusion_->showCandidates(list);
}

void FilingForm::takeMaker(const QString& maker_id)
{
    conclusion_->takeMaker(maker_id);
}

// With the reasons below it in view, where they have room.
void FilingForm::focusWord()
{
    if (auto scrolled = findChild<QScrollArea*>("recordScroll"))
        scrolled->ensureWidgetVisible(conclusion_->findChild<QWidget*>("reasons"));
    conclusion_->focusWord();
}

void FilingForm::takeNoneOfThem()
{
    conclusion_->takeNoneOfThem();
}

void FilingForm::showFields(const FilingFields& fields, const Beside& beside)
{
    shown_ = fields;
    piece_->show(fields, beside.lent, beside.is_filed);
    conclusion_->show(fields, beside.standing, beside.is_filed);
    facts_->facts().setFacts(fields, beside.stamps);
    showTrouble();
}

void FilingForm::showStamps(const std::vector<std::string>& stamps)
{
    facts_->facts().setFacts(fields(), stamps);
}

FilingFields FilingForm::fields() const
{
    return facts_->facts().putInto(conclusion_->putInto(piece_->putInto(shown_)));
}

void FilingForm::settle()
{
    facts_->settle();
}

void FilingForm::setFilable(bool filable, const QString& why_not)
{
    filable_ = filable;
    why_not_ = why_not;
    showTrouble();
}

void FilingForm::setRemark(const QString& remark)
{
    remark_ = remark;
    showTrouble();
}

QString FilingForm::trouble() const
{
    const FilingFields now = fields();
    const std::string& date = now.date_edtf;
    const std::string no_date = date.empty() ? "" : models::whyNoYearBounds(date);
    if (!no_date.empty())
        return tr("This date is not EDTF: %1. Write 1940, 194X, 1940?, [1940,1946] or 1938/1940.")
            .arg(QString::fromStdString(no_date));
    const FactTrouble fact = troubleIn(now);
    const QString text = QString::fromStdString(fact.text);
    switch (fact.kind) {
        case FactTrouble::LengthOfNothing:
            return tr("Nobody has said what measures %1; write length, width or the like.")
                .arg(text);
        case FactTrouble::Length:
            return tr("The %1 is no length yet; write it as 914 mm, 91.4 cm or 2 1/4 in.")
                .arg(text);
        case FactTrouble::Date:
            return text.isEmpty()
                       ? tr("A date on the piece is not written yet; write it, or take its row out "
                            "with Del.")
                       : tr("%1 is not EDTF: %2. Write 1940, 194X, 1940?, [1940,1946] or "
                            "1938/1940.")
                             .arg(text, QString::fromStdString(fact.why));
        case FactTrouble::None:
            break;
    }
    return filable_ ? QString() : why_not_;
}

void FilingForm::showTrouble()
{
    const QString trouble = this->trouble();
    trouble_->setText(trouble.isEmpty() ? remark_ : trouble);
    file_->setEnabled(trouble.isEmpty());
}

}  // namespace gui
