#include "app/gui/conclusion_fields.h"

#include <QComboBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <algorithm>
#include <utility>

#include "app/gui/maker_choices.h"
#include "app/gui/piece_fields.h"
#include "app/gui/window_undo.h"

namespace gui {

namespace {

const models::Candidate* candidateOf(const models::CandidateList& list, const std::string& maker_id)
{
    const auto found =
        std::find_if(list.candidates.begin(), list.candidates.end(),
                     [&](const auto& candidate) { return candidate.maker_id == maker_id; });
    return found == list.candidates.end() ? nullptr : &*found;
}

}  // namespace

ConclusionFields::ConclusionFields(QWidget* parent)
    : QWidget(parent),
      choices_(new MakerChoices(this)),
      maker_(new QComboBox),
      date_(new QLineEdit),
      certainty_(new QComboBox),
      reasons_(new QPlainTextEdit),
      stands_(new QComboBox),
      why_changed_(new QLineEdit),
      form_(new QFormLayout(this))
{
    build();
    chooseMaker(MakerChoices::LeftOpen);
    listen();
    setFocusProxy(maker_);
}

void ConclusionFields::build()
{
    maker_->setObjectName("maker");
    date_->setObjectName("date");
    certainty_->setObjectName("certainty");
    reasons_->setObjectName("reasons");
    stands_->setObjectName("stands");
    why_changed_->setObjectName("whyChanged");
    certainty_->addItems({tr("certain"), tr("probable"), tr("possible")});
    certainty_->setCurrentIndex(static_cast<int>(models::Certainty::Possible));
    reasons_->setTabChangesFocus(true);
    reasons_->setFixedHeight(fontMetrics().height() * 3);
    date_->setPlaceholderText(tr("such as 1940, 194X, 1940?, 1938/1940"));
    reasons_->setPlaceholderText(tr("what you conclude it from, in your words"));
    why_changed_->setPlaceholderText(tr("recorded with what you take back"));
    maker_->setModel(choices_);
    for (QComboBox* list : {maker_, stands_}) {
        list->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
        list->setMinimumContentsLength(12);
    }
    form_->setContentsMargins(0, 0, 0, 0);
    form_->setVerticalSpacing(4);
    form_->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
    addNamedRow(*form_, tr("&Maker"), maker_);
    addNamedRow(*form_, tr("&Date (EDTF)"), date_);
    addNamedRow(*form_, tr("&I call this"), certainty_);
    addNamedRow(*form_, tr("&Reasons"), reasons_);
    addNamedRow(*form_, tr("It stand&s"), stands_);
    addNamedRow(*form_, tr("&Why changed"), why_changed_);
}

void ConclusionFields::listen()
{
    const auto tell = [this] {
        if (!filling_)
            Q_EMIT changed();
    };
    for (QLineEdit* field : {date_, why_changed_}) {
        leaveUndoToWindow(field);
        connect(field, &QLineEdit::textChanged, this, tell);
    }
    leaveUndoToWindow(reasons_);
    connect(reasons_, &QPlainTextEdit::textChanged, this, tell);
    connect(certainty_, &QComboBox::currentIndexChanged, this, tell);
    connect(stands_, &QComboBox::currentIndexChanged, this, tell);
    connect(maker_, &QComboBox::currentIndexChanged, this, [this, tell] {
        if (!filling_) {
            const bool was_filling = std::exchange(filling_, true);  // one change for all of them
            proposeDate();
            proposeReasons();
            filling_ = was_filling;
        }
        tell();
    });
}

void ConclusionFields::showKnown(std::shared_ptr<const models::MakerRegister> known)
{
    known_ = std::move(known);
    filling_ = true;
    choices_->setKnown(known_);
    filling_ = false;
    chooseMaker(shown_.none_of_them ? int{MakerChoices::NoneOfThem}
                                    : choices_->rowOf(shown_.maker_id));
}

void ConclusionFields::chooseMaker(int row)
{
    const bool was_filling = std::exchange(filling_, true);
    maker_->setCurrentIndex(row);
    filling_ = was_filling;
}

std::string ConclusionFields::makerChosen() const
{
    return choices_->makerAt(maker_->currentIndex());
}

void ConclusionFields::showCandidates(const models::CandidateList& list)
{
    const std::string chosen = makerChosen();
    const int special = maker_->currentIndex();
    candidates_ = list;
    const bool was_filling = std::exchange(filling_, true);
    choices_->setCandidates(list);
    filling_ = was_filling;
    chooseMaker(chosen.empty() ? std::max(0, special) : choices_->rowOf(chosen));
}

void ConclusionFields::takeMaker(const QString& maker_id)
{
    maker_->setCurrentIndex(choices_->rowOf(maker_id.toStdString()));
}

void ConclusionFields::takeNoneOfThem()
{
    maker_->setCurrentIndex(MakerChoices::NoneOfThem);
}

void ConclusionFields::proposeDate()
{
    if (!date_->text().isEmpty() && date_->text() != proposed_date_)
        return;
    const auto* candidate = candidateOf(candidates_, makerChosen());
    proposed_date_ =
        candidate && candidate->edtf ? QString::fromStdString(*candidate->edtf) : QString();
    date_->setText(proposed_date_);
}

void ConclusionFields::proposeReasons()
{
    const QString written = reasons_->toPlainText().trimmed();
    if (!written.isEmpty() && written != proposed_reasons_)
        return;
    QStringList shown;
    if (const auto* candidate = candidateOf(candidates_, makerChosen()))
        for (const std::string& reason : candidate->reasons)
            shown << QString::fromStdString(reason);
    proposed_reasons_ = shown.join('\n').trimmed();
    reasons_->setPlainText(proposed_reasons_);
}

void ConclusionFields::focusWord()
{
    certainty_->setFocus(Qt::OtherFocusReason);
}

void ConclusionFields::showStanding(const std::vector<models::AttributionRecord>& standing)
{
    stands_->clear();
    stands_->addItem(tr("beside what was concluded, as a rival"), QString());
    for (const models::AttributionRecord& one : standing) {
        const QString maker =
            one.maker_name.empty() ? tr("no maker") : QString::fromStdString(one.maker_name);
        const QString date =
            one.date_edtf.empty() ? tr("undated") : QString::fromStdString(one.date_edtf);
        stands_->addItem(tr("in place of %1, %2").arg(maker, date), QString::fromStdString(one.id));
    }
}

void ConclusionFields::show(const FilingFields& fields,
                            const std::vector<models::AttributionRecord>& standing, bool is_filed)
{
    filling_ = true;
    shown_ = fields;
    chooseMaker(fields.none_of_them ? int{MakerChoices::NoneOfThem}
                                    : choices_->rowOf(fields.maker_id));
    date_->setText(QString::fromStdString(fields.date_edtf));
    certainty_->setCurrentIndex(static_cast<int>(fields.certainty));
    reasons_->setPlainText(QString::fromStdString(fields.reasons));
    why_changed_->setText(QString::fromStdString(fields.why_changed));
    showStanding(standing);
    stands_->setCurrentIndex(
        std::max(0, stands_->findData(QString::fromStdString(fields.replaces))));
    const std::pair<QWidget*, bool> rows[] = {{stands_, !standing.empty()},
                                              {why_changed_, is_filed}};
    for (const auto& [field, is_there] : rows) {
        field->setVisible(is_there);
        form_->labelForField(field)->setVisible(is_there);
    }
    filling_ = false;
}

FilingFields ConclusionFields::putInto(FilingFields fields) const
{
    fields.maker_id = makerChosen();
    fields.none_of_them = maker_->currentIndex() == MakerChoices::NoneOfThem;
    const bool is_same = fields.maker_id == shown_.maker_id;
    fields.maker_name = is_same ? shown_.maker_name : std::string();
    fields.mark = is_same ? shown_.mark : std::string();
    fields.engine_reasons = is_same ? shown_.engine_reasons : std::string();
    if (const auto* candidate = candidateOf(candidates_, fields.maker_id)) {
        fields.maker_name = candidate->maker;
        fields.mark = candidate->mark;
        fields.engine_reasons.clear();
        for (const std::string& reason : candidate->reasons)
            fields.engine_reasons += (fields.engine_reasons.empty() ? "" : "\n") + reason;
    } else if (const auto* maker = known_ ? known_->maker(fields.maker_id) : nullptr) {
        fields.maker_name = maker->name;
    }
    fields.date_edtf = date_->text().trimmed().toStdString();
    fields.certainty = static_cast<models::Certainty>(certainty_->currentIndex());
    fields.reasons = reasons_->toPlainText().trimmed().toStdString();
    fields.replaces = stands_->currentData().toString().toStdString();
    fields.why_changed = why_changed_->text().trimmed().toStdString();
    return fields;
}

}  // namespace gui
