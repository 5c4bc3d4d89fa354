#include "app/gui/fact_model.h"

#include <QFont>
#include <QGuiApplication>
#include <QPalette>
#include <algorithm>
#include <iterator>
#include <utility>

#include "app/flow/item_facts.h"

namespace gui {

FactModel::FactModel(QObject* parent) : QAbstractTableModel(parent)
{
    rows_ = factRows(fields_, stamps_, nullptr);
}

void FactModel::setKnown(std::shared_ptr<const models::MakerRegister> known)
{
    known_ = std::move(known);
    arrange(fields_);
}

void FactModel::setFacts(const FilingFields& fields, const std::vector<std::string>& stamps)
{
    if (fields == fields_ && stamps == stamps_)
        return;
    stamps_ = stamps;
    arrange(fields);
}

// Rows that stay keep their places, so that whoever is in one stays there.
void FactModel::arrange(const FilingFields& fields)
{
    std::vector<FactRow> rows = factRows(fields, stamps_, known_.get());
    const auto [was, is] = std::mismatch(rows_.begin(), rows_.end(), rows.begin(), rows.end());
    const auto [was_end, is_end] =
        std::mismatch(std::make_reverse_iterator(rows_.end()), std::make_reverse_iterator(was),
                      std::make_reverse_iterator(rows.end()), std::make_reverse_iterator(is));
    const auto first = static_cast<int>(was - rows_.begin());
    const auto taken = static_cast<int>(was_end.base() - was);
    const auto put = static_cast<int>(is_end.base() - is);
    if (taken > 0 && put > 0)
        beginResetModel();
    else if (taken > 0)
        beginRemoveRows({}, first, first + taken - 1);
    else if (put > 0)
        beginInsertRows({}, first, first + put - 1);
    fields_ = fields;
    rows_ = std::move(rows);
    if (taken > 0 && put > 0)
        endResetModel();
    else if (taken > 0)
        endRemoveRows();
    else if (put > 0)
        endInsertRows();
    Q_EMIT dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
}

FilingFields FactModel::putInto(FilingFields fields) const
{
    fields.stamps = fields_.stamps;
    fields.features = fields_.features;
    fields.measurements = fields_.measurements;
    fields.events = fields_.events;
    return fields;
}

int FactModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

int FactModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : 3;
}

QString FactModel::shown(const FactRow& row, FactColumn column) const
{
    if (column == FactColumn::What && !row.label.isEmpty())
        return row.label;
    if (const auto choice = choiceAt(fields_, row, column, stamps_); choice && choice->chosen >= 0)
        return choice->words[choice->chosen];
    const QString written = writtenAt(fields_, row, column).value_or(QString());
    if (row.kind != FactKind::Measurement || column != FactColumn::How)
        return written;
    const auto length = flow::lengthFrom(written.toStdString());
    return length ? QString::fromStdString(flow::lengthInWords(length->value, length->unit))
                  : written;
}

QVariant FactModel::data(const QModelIndex& index, int role) const
{
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    const FactRow& row = rows_[static_cast<std::size_t>(index.row())];
    const auto column = static_cast<FactColumn>(index.column());
    const QString text = shown(row, column);
    switch (role) {
        case Qt::DisplayRole:
            return text.isEmpty() ? hintAt(row, column) : text;
        case Qt::ForegroundRole:
            return text.isEmpty() ? QVariant(QGuiApplication::palette().placeholderText())
                                  : QVariant();
        case Qt::FontRole: {
            QFont font;
            font.setBold(row.kind == FactKind::Heading);
            return row.kind == FactKind::Heading ? QVariant(font) : QVariant();
        }
        case Qt::AccessibleTextRole:
            return index.column() == 0 ? text : shown(row, FactColumn::What) + ": " + text;
        case Qt::EditRole:
            if (const auto choice = choiceAt(fields_, row, column, stamps_))
                return choice->chosen;
            return writtenAt(fields_, row, column).value_or(QString());
        case ChoicesRole:
            if (const auto choice = choiceAt(fields_, row, column, stamps_))
                return choice->words;
            return {};
        case HeadingRole:
            return row.kind == FactKind::Heading;
        default:
            return {};
    }
}

QVariant FactModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole)
        return {};
    return section == 0 ? tr("what") : section == 1 ? tr("how it is") : tr("note");
}

Qt::ItemFlags FactModel::flags(const QModelIndex& index) const
{
    const Qt::ItemFlags usual = QAbstractTableModel::flags(index);
    if (!index.isValid())
        return usual;
    const FactRow& row = rows_[static_cast<std::size_t>(index.row())];
    const auto column = static_cast<FactColumn>(index.column());
    const bool can_change =
        choiceAt(fields_, row, column, stamps_) || writtenAt(fields_, row, column);
    return can_change ? usual | Qt::ItemIsEditable : usual;
}

bool FactModel::setData(const QModelIndex& index, const QVariant& value, int role)
{
    if (role != Qt::EditRole || !(flags(index) & Qt::ItemIsEditable))
        return false;
    const FactRow row = rows_[static_cast<std::size_t>(index.row())];
    const auto column = static_cast<FactColumn>(index.column());
    FilingFields after = fields_;
    if (const auto choice = choiceAt(fields_, row, column, stamps_)) {
        const int chosen = value.toInt();
        if (chosen < 0 || chosen >= choice->words.size())
            return false;
        choose(after, row, column, chosen, stamps_);
    } else {
        write(after, row, column, value.toString());
    }
    if (after == fields_)
        return true;
    arrange(after);
    Q_EMIT factsChanged();
    return true;
}

void FactModel::takeOutRow(int row)
{
    if (row < 0 || row >= rowCount())
        return;
    FilingFields after = fields_;
    takeOut(after, rows_[static_cast<std::size_t>(row)]);
    if (after == fields_)
        return;
    arrange(after);
    Q_EMIT factsChanged();
}

}  // namespace gui
