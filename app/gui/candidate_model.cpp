#include "app/gui/candidate_model.h"

#include <algorithm>
#include <numeric>

#include "app/gui/cell_words.h"

namespace gui {

CandidateModel::CandidateModel(QObject* parent) : QAbstractTableModel(parent)
{
}

void CandidateModel::setCandidates(const models::CandidateList& list)
{
    beginResetModel();
    list_ = list;
    const auto unlikely = std::find_if(list_.candidates.begin(), list_.candidates.end(),
                                       [](const auto& one) { return one.probability < 0.01; });
    shown_ = static_cast<std::size_t>(unlikely - list_.candidates.begin());
    if (unfolded_ || shown_ + 1 == list_.candidates.size())  // one row is no shorter folded
        shown_ = list_.candidates.size();
    known_ = true;
    endResetModel();
}

std::size_t CandidateModel::folded() const
{
    return list_.candidates.size() - shown_;
}

void CandidateModel::unfold()
{
    beginResetModel();
    unfolded_ = true;
    shown_ = list_.candidates.size();
    endResetModel();
}

void CandidateModel::clear()
{
    beginResetModel();
    list_ = {};
    shown_ = 0;
    known_ = unfolded_ = false;
    endResetModel();
}

const models::Candidate* CandidateModel::candidate(int row) const
{
    const auto index = static_cast<std::size_t>(std::max(0, row));
    return row >= 0 && index < shown_ ? &list_.candidates[index] : nullptr;
}

int CandidateModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() || !known_ ? 0 : static_cast<int>(shown_) + 1;
}

int CandidateModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : Columns;
}

double CandidateModel::share(int row) const
{
    if (const models::Candidate* listed = candidate(row))
        return listed->probability;
    return std::accumulate(list_.candidates.begin() + static_cast<std::ptrdiff_t>(shown_),
                           list_.candidates.end(), list_.other_makers,
                           [](double sum, const auto& one) { return sum + one.probability; });
}

QString CandidateModel::text(int row, int column) const
{
    if (column == Share)
        return shareWord(share(row));
    const models::Candidate* listed = candidate(row);
    if (!listed && column == Maker)
        return folded() > 0 ? tr("%1 makers under 1 %, and all others").arg(folded())
                            : tr("all other makers");
    if (!listed)
        return {};
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
