#include "app/gui/filing_form.h"

#include <QComboBox>
#include <QFormLayout>
#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <algorithm>

#include "app/gui/maker_choices.h"
#include "app/gui/window_undo.h"
#include "models/edtf.h"

namespace gui {

namespace {

QLabel* labelFor(QWidget* field, const QString& words)
{
    auto label = new QLabel(words);
    label->setBuddy(field);
    field->setAccessibleName(QString(words).remove('&'));
    return label;
}

const models::Candidate* candidateOf(const models::CandidateList& list, const std::string& maker_id)
{
    const auto found =
        std::find_if(list.candidates.begin(), list.candidates.end(),
                     [&](const auto& candidate) { return candidate.maker_id == maker_id; });
    return found == list.candidates.end() ? nullptr : &*found;
}

}  // namespace

FilingForm::FilingForm(QWidget* parent)
    : QFrame(parent),
      choices_(new MakerChoices(this)),
      accession_(new QLineEdit),
      type_(new QComboBox),
      maker_(new QComboBox),
      date_(new QLineEdit),
      certainty_(new QComboBox),
      notes_(new QPlainTextEdit),
      reasons_(new QPlainTextEdit),
      trouble_(new QLabel),
      file_(new QPushButton(tr("File the record  Ctrl+S")))
{
    setObjectName("filingForm");
    accession_->setObjectName("accessionNumber");
    type_->setObjectName("itemType");
    maker_->setObjectName("maker");
    date_->setObjectName("date");
    certainty_->setObjectName("certainty");
    notes_->setObjectName("notes");
    reasons_->setObjectName("reasons");
    trouble_->setObjectName("filingTrouble");
    file_->setObjectName("fileButton");
    certainty_->addItems({tr("certain"), tr("probable"), tr("possible")});
    certainty_->setCurrentIndex(static_cast<int>(models::Certainty::Possible));
    for (QPlainTextEdit* text : {notes_, reasons_}) {
        text->setTabChangesFocus(true);
        text->setMinimumHeight(fontMetrics().height() * 3);
    }
    trouble_->setWordWrap(true);
    for (QWidget* field : std::initializer_list<QWidget*>{accession_, date_, notes_, reasons_})
        leaveUndoToWindow(field);
    maker_->setModel(choices_);
    maker_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    maker_->setMinimumContentsLength(20);
    build();
    chooseMaker(MakerChoices::LeftOpen);
    const auto changed = [this] {
        showTrouble();
        if (!filling_)
            Q_EMIT fieldsChanged();
    };
    connect(accession_, &QLineEdit::textChanged, this, changed);
    connect(date_, &QLineEdit::textChanged, this, changed);
    connect(notes_, &QPlainTextEdit::textChanged, this, changed);
    connect(reasons_, &QPlainTextEdit::textChanged, this, changed);
    connect(type_, &QComboBox::currentIndexChanged, this, changed);
    connect(certainty_, &QComboBox::currentIndexChanged, this, changed);
    connect(maker_, &QComboBox::currentIndexChanged, this, [this, changed] {
        if (!filling_)
            proposeDate();
        changed();
    });
    connect(file_, &QPushButton::clicked, this, &FilingForm::fileWanted);
    setFocusProxy(accession_);
}

void FilingForm::build()
{
    auto grid = new QGridLayout(this);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(10);
    const auto place = [&](int row, int column, QWidget* field, const QString& words) {
        grid->addWidget(labelFor(field, words), row, column * 2);
        grid->addWidget(field, row, column * 2 + 1);
    };
    place(0, 0, accession_, tr("&Accession number"));
    place(1, 0, type_, tr("Item &type"));
    place(2, 0, notes_, tr("&Notes"));
    place(0, 1, maker_, tr("&Maker"));
    place(1, 1, date_, tr("&Date (EDTF)"));
    place(2, 1, reasons_, tr("&Reasons"));
    auto last = new QHBoxLayout;
    last->addWidget(trouble_, 1);
    last->addWidget(labelFor(certainty_, tr("&I call this")));
    last->addWidget(certainty_);
    last->addWidget(file_);
    grid->addLayout(last, 3, 0, 1, 4);
    accession_->setPlaceholderText(tr("empty: seen, not owned"));
    date_->setPlaceholderText(tr("such as 1940, 194X, 1940?, 1938/1940"));
    reasons_->setPlaceholderText(tr("what you conclude it from, in your words"));
    grid->setColumnStretch(1, 1);
    grid->setColumnStretch(3, 1);
    grid->setRowStretch(2, 1);
    const QList<QWidget*> order{accession_, type_,    notes_,     maker_,
                                date_,      reasons_, certainty_, file_};
    for (qsizetype i = 1; i < order.size(); ++i)
        setTabOrder(order[i - 1], order[i]);
}

void FilingForm::showKnown(std::shared_ptr<const models::MakerRegister> known)
{
    const FilingFields before = fields();
    known_ = std::move(known);
    filling_ = true;
    choices_->setKnown(known_);
    type_->clear();
    type_->addItem(tr("not said"), QString());
    for (const models::ItemType& type : known_->item_types) {
        const QString pattern = QString::fromStdString(type.pattern);
        const QString name = QString::fromStdString(type.name);
        type_->addItem(pattern.isEmpty() ? name : name + ", " + pattern,
                       QString::fromStdString(type.type_id));
    }
    filling_ = false;
    showFields(before);
}

void FilingForm::chooseMaker(int row)
{
    const bool was_filling = filling_;
    filling_ = true;
    maker_->setCurrentIndex(row);
    filling_ = was_filling;
}

std::string FilingForm::makerChosen() const
{
    return choices_->makerAt(maker_->currentIndex());
}

void FilingForm::showCandidates(const models::CandidateList& list)
{
    const std::string chosen = makerChosen();
    const int special = maker_->currentIndex();
    candidates_ = list;
    const bool was_filling = filling_;
    filling_ = true;
    choices_->setCandidates(list);
    filling_ = was_filling;
    chooseMaker(chosen.empty() ? std::max(0, special) : choices_->rowOf(chosen));
}

void FilingForm::takeMaker(const QString& maker_id)
{
    maker_->setCurrentIndex(choices_->rowOf(maker_id.toStdString()));
}

void FilingForm::takeNoneOfThem()
{
    maker_->setCurrentIndex(MakerChoices::NoneOfThem);
}

void FilingForm::proposeDate()
{
    if (!date_->text().isEmpty() && date_->text() != proposed_date_)
        return;
    const auto* candidate = candidateOf(candidates_, makerChosen());
    proposed_date_ =
        candidate && candidate->edtf ? QString::fromStdString(*candidate->edtf) : QString();
    date_->setText(proposed_date_);
}

void FilingForm::showFields(const FilingFields& fields)
{
    filling_ = true;
    accession_->setText(QString::fromStdString(fields.accession_number));
    type_->setCurrentIndex(std::max(0, type_->findData(QString::fromStdString(fields.type_id))));
    notes_->setPlainText(QString::fromStdString(fields.notes));
    chooseMaker(fields.none_of_them ? int{MakerChoices::NoneOfThem}
                                    : choices_->rowOf(fields.maker_id));
    date_->setText(QString::fromStdString(fields.date_edtf));
    certainty_->setCurrentIndex(static_cast<int>(fields.certainty));
    reasons_->setPlainText(QString::fromStdString(fields.reasons));
    filling_ = false;
    showTrouble();
}

FilingFields FilingForm::fields() const
{
    FilingFields fields;
    fields.accession_number = accession_->text().trimmed().toStdString();
    fields.type_id = type_->currentData().toString().toStdString();
    fields.notes = notes_->toPlainText().trimmed().toStdString();
    fields.maker_id = makerChosen();
    fields.none_of_them = maker_->currentIndex() == MakerChoices::NoneOfThem;
    if (const auto* candidate = candidateOf(candidates_, fields.maker_id)) {
        fields.maker_name = candidate->maker;
        fields.mark = candidate->mark;
        for (const std::string& reason : candidate->reasons)
            fields.engine_reasons += (fields.engine_reasons.empty() ? "" : "\n") + reason;
    } else if (const auto* maker = known_ ? known_->maker(fields.maker_id) : nullptr) {
        fields.maker_name = maker->name;
    }
    fields.date_edtf = date_->text().trimmed().toStdString();
    fields.certainty = static_cast<models::Certainty>(certainty_->currentIndex());
    fields.reasons = reasons_->toPlainText().trimmed().toStdString();
    return fields;
}

void FilingForm::setFilable(bool filable, const QString& why_not)
{
    filable_ = filable;
    why_not_ = why_not;
    showTrouble();
}

QString FilingForm::trouble() const
{
    const std::string date = date_->text().trimmed().toStdString();
    const std::string no_date = date.empty() ? "" : models::whyNoYearBounds(date);
    if (!no_date.empty())
        return tr("This date is not EDTF: %1. Write 1940, 194X, 1940?, [1940,1946] or 1938/1940.")
            .arg(QString::fromStdString(no_date));
    return filable_ ? QString() : why_not_;
}

void FilingForm::showTrouble()
{
    trouble_->setText(trouble());
    file_->setEnabled(trouble().isEmpty());
}

}  // namespace gui
