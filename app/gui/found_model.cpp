#include "app/gui/found_model.h"

#include <utility>

namespace gui {

FoundModel::FoundModel(QObject* parent) : QAbstractTableModel(parent)
{
}

void FoundModel::setFound(std::vector<models::FoundItem> found)
{
    beginResetModel();
    found_ = std::move(found);
    endResetModel();
}

const models::FoundItem* FoundModel::item(int row) const
{
    const bool inside = row >= 0 && row < static_cast<int>(found_.size());
    return inside ? &found_[static_cast<std::size_t>(row)] : nullptr;
}

int FoundModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(found_.size());
}

int FoundModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : Columns;
}

QVariant FoundModel::data(const QModelIndex& index, int role) const
{
    if (!checkIndex(index, CheckIndexOption::IndexIsValid) || role != Qt::DisplayRole)
        return {};
    const models::FoundItem& found = *item(index.row());
    switch (index.column()) {
        case Accession:
            return found.accession_number.empty() ? tr("(not owned)")
                                                  : QString::fromStdString(found.accession_number);
        case Maker:
            return QString::fromStdString(found.maker_name);
        case Date:
            return QString::fromStdString(found.date_edtf);
        case Text:
            return QString::fromStdString(found.text);
        default:
            return QString::fromStdString(found.type_id);
    }
}

QVariant FoundModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole)
        return {};
    switch (section) {
        case Accession:
            return tr("number");
        case Maker:
            return tr("maker");
        case Date:
            return tr("date");
        case Text:
            return tr("letters");
        default:
            return tr("item type");
    }
}

}  // namespace gui
