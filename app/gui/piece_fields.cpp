#include "app/gui/piece_fields.h"

#include <QComboBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <algorithm>

#include "app/gui/window_undo.h"

namespace gui {

namespace {

std::string trimmedText(const QLineEdit* field)
{
    return field->text().trimmed().toStdString();
}

}  // namespace

void addNamedRow(QFormLayout& form, const QString& words, QWidget* field)
{
    form.addRow(words, field);
    field->setAccessibleName(QString(words).remove('&'));
}

PieceFields::PieceFields(QWidget* parent)
    : QWidget(parent),
      accession_(new QLineEdit),
      type_(new QComboBox),
      owner_(new QLineEdit),
      condition_(new QLineEdit),
      place_(new QLineEdit),
      notes_(new QPlainTextEdit),
      lent_words_(new QLabel),
      leave_out_(new QPushButton(tr("Lea&ve that out")))
{
    build();
    setFocusProxy(accession_);
    const auto tell = [this] {
        tellLent();
        if (!filling_)
            Q_EMIT changed();
    };
    for (QLineEdit* field : {accession_, owner_, condition_, place_}) {
        leaveUndoToWindow(field);
        connect(field, &QLineEdit::textChanged, this, tell);
    }
    leaveUndoToWindow(notes_);
    connect(notes_, &QPlainTextEdit::textChanged, this, tell);
    connect(type_, &QComboBox::currentIndexChanged, this, tell);
    connect(leave_out_, &QPushButton::clicked, this, &PieceFields::leaveOut);
}

void PieceFields::build()
{
    accession_->setObjectName("accessionNumber");
    type_->setObjectName("itemType");
    owner_->setObjectName("owner");
    condition_->setObjectName("condition");
    place_->setObjectName("placeFound");
    notes_->setObjectName("notes");
    lent_words_->setObjectName("lentWords");
    leave_out_->setObjectName("leaveOut");
    lent_words_->setWordWrap(true);
    accession_->setPlaceholderText(tr("empty: seen, not owned"));
    condition_->setPlaceholderText(tr("worn, mended, complete \u2026"));
    notes_->setTabChangesFocus(true);
    notes_->setFixedHeight(fontMetrics().height() * 3);
    type_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    type_->setMinimumContentsLength(12);
    auto form = new QFormLayout(this);
    form->setContentsMargins(0, 0, 0, 0);
    form->setVerticalSpacing(4);
    form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
    addNamedRow(*form, tr("&Accession number"), accession_);
    addNamedRow(*form, tr("Item &type"), type_);
    addNamedRow(*form, tr("&Owner"), owner_);
    addNamedRow(*form, tr("&Place found"), place_);
    auto lent = new QHBoxLayout;
    lent->addWidget(lent_words_, 1);
    lent->addWidget(leave_out_);
    form->addRow(lent);
    addNamedRow(*form, tr("&Condition"), condition_);
    addNamedRow(*form, tr("&Notes"), notes_);
}

void PieceFields::showKnown(const models::MakerRegister& known)
{
    filling_ = true;
    const QString before = type_->currentData().toString();
    type_->clear();
    type_->addItem(tr("not said"), QString());
    for (const models::ItemType& type : known.item_types) {
        const QString pattern = QString::fromStdString(type.pattern);
        const QString name = QString::fromStdString(type.name);
        type_->addItem(pattern.isEmpty() ? name : name + ", " + pattern,
                       QString::fromStdString(type.type_id));
    }
    type_->setCurrentIndex(std::max(0, type_->findData(before)));
    filling_ = false;
}

void PieceFields::show(const FilingFields& fields, const FilingFields& lent, bool is_filed)
{
    filling_ = true;
    lent_ = lent;
    is_filed_ = is_filed;
    accession_->setText(QString::fromStdString(fields.accession_number));
    accession_->setReadOnly(is_filed);
    accession_->setToolTip(is_filed ? tr("It stays as it was given when the record was filed.")
                                    : QString());
    const QString type = QString::fromStdString(fields.type_id);
    if (!type.isEmpty() && type_->findData(type) < 0)  // the register has it no more
        type_->addItem(type, type);
    type_->setCurrentIndex(std::max(0, type_->findData(type)));
    owner_->setText(QString::fromStdString(fields.owner));
    condition_->setText(QString::fromStdString(fields.condition));
    place_->setText(QString::fromStdString(fields.place_found));
    notes_->setPlainText(QString::fromStdString(fields.notes));
    filling_ = false;
    tellLent();
}

FilingFields PieceFields::putInto(FilingFields fields) const
{
    fields.accession_number = trimmedText(accession_);
    if (type_->count() > 0)
        fields.type_id = type_->currentData().toString().toStdString();
    fields.owner = trimmedText(owner_);
    fields.condition = trimmedText(condition_);
    fields.place_found = trimmedText(place_);
    fields.notes = notes_->toPlainText().trimmed().toStdString();
    return fields;
}

void PieceFields::tellLent()
{
    const FilingFields now = putInto({});
    QStringList names;
    if (!lent_.type_id.empty() && now.type_id == lent_.type_id)
        names << tr("type");
    if (!lent_.owner.empty() && now.owner == lent_.owner)
        names << tr("owner");
    if (!lent_.place_found.empty() && now.place_found == lent_.place_found)
        names << tr("place");
    const bool any = !names.isEmpty() && !is_filed_;
    lent_words_->setText(any ? tr("As with the item before: %1.").arg(names.join(", "))
                             : QString());
    lent_words_->setVisible(any);
    leave_out_->setVisible(any);
}

void PieceFields::leaveOut()
{
    const FilingFields now = putInto({});
    filling_ = true;
    if (now.type_id == lent_.type_id)
        type_->setCurrentIndex(0);
    if (now.owner == lent_.owner)
        owner_->clear();
    if (now.place_found == lent_.place_found)
        place_->clear();
    filling_ = false;
    type_->setFocus();
    tellLent();
    Q_EMIT changed();
}

}  // namespace gui
