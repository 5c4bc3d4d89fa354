#include "app/gui/candidate_model.h"

#include <algorithm>

#include "app/gui/cell_words.h"

namespace gui {

CandidateModel::CandidateModel(QObject* parent) : QAbstractTableModel(parent)
{
}

void CandidateModel::setCandidates(const models::CandidateList& list)
{
    beginResetModel();
    list_ = list;
    const auto likelier = [&](const auto& candidate) {
        return candidate.probability >= list.unknown_maker;
    };
    unknown_row_ =
        static_cast<int>(std::count_if(list.candidates.begin(), list.candidates.end(), likelier));
    known_ = true;
    endResetModel();
}

void CandidateModel::clear()
{
    beginResetModel();
    list_ = {};
    known_ = false;
    endResetModel();
}

const models::Candidate* CandidateModel::candidate(int row) const
{
    if (!known_ || row < 0 || row == unknown_row_)
        return nullptr;
    const auto index = static_cast<std::size_t>(row < unknown_row_ ? row : row - 1);
    return index < list_.candidates.size() ? &list_.candidates[index] : nullptr;
}

int CandidateModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() || !known_ ? 0 : static_cast<int>(list_.candidates.size()) + 2;
}

int CandidateModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : Columns;
}

double CandidateModel::share(int row) const
{
    if (const models::Candidate* listed = candidate(row))
        return listed->probability;
    return row == unknown_row_ ? list_.unknown_maker : list_.other_makers;
}

QString CandidateModel::text(int row, int column) const
{
    if (column == Share)
        return shareWord(share(row));
    const models::Candidate* listed = candidate(row);
    if (!listed) {
        const QString none = tr("none of the known makers");
        return column != Maker ? QString() : row == unknown_row_ ? none : tr("all other makers");
    }
    switch (column) {
        case Maker:
            return QString::fromStdString(listed->maker);
        case Years:
            return listed->edtf ? QString::fromStdString(*listed->edtf) : tr("undated");
        default:
            return QString::fromStdString(listed->mark);
    }
}

QVariant CandidateModel::data(const QModelIndex& index, int role) const
{
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    if (role == Qt::DisplayRole)
        return text(index.row(), index.column());
    if (role == share_role)
        return share(index.row());
    if (role == Qt::TextAlignmentRole && index.column() == Share)
        return QVariant(Qt::AlignRight | Qt::AlignVCenter);
    if (role == Qt::AccessibleTextRole && index.column() == Maker)
        return tr("%1, %2, %3")
            .arg(text(index.row(), Maker), text(index.row(), Share), text(index.row(), Years));
    return {};
}

QVariant CandidateModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole)
        return {};
    switch (section) {
        case Maker:
            return tr("maker");
        case Share:
            return tr("how likely");
        case Years:
            return tr("years");
        default:
            return tr("mark that fits");
    }
}

}  // namespace gui
