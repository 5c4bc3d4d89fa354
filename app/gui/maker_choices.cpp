#include "app/gui/maker_choices.h"

#include <algorithm>
#include <numeric>
#include <unordered_set>

#include "app/gui/cell_words.h"

namespace gui {

MakerChoices::MakerChoices(QObject* parent) : QAbstractListModel(parent)
{
}

void MakerChoices::setKnown(std::shared_ptr<const models::MakerRegister> known)
{
    beginResetModel();
    known_ = std::move(known);
    by_name_.assign(known_ ? known_->makers.size() : 0, 0);
    std::iota(by_name_.begin(), by_name_.end(), std::size_t{0});
    std::sort(by_name_.begin(), by_name_.end(), [this](std::size_t a, std::size_t b) {
        return known_->makers[a].name < known_->makers[b].name;
    });
    arrange();
    endResetModel();
}

void MakerChoices::setCandidates(const models::CandidateList& list)
{
    beginResetModel();
    candidates_ = list.candidates;
    arrange();
    endResetModel();
}

void MakerChoices::arrange()
{
    std::unordered_set<std::string> listed;
    for (const models::Candidate& candidate : candidates_)
        listed.insert(candidate.maker_id);
    others_.clear();
    for (const std::size_t maker : by_name_)
        if (!listed.count(known_->makers[maker].maker_id))
            others_.push_back(maker);
}

std::string MakerChoices::makerAt(int row) const
{
    if (row < Specials || row >= rowCount())
        return {};
    const auto index = static_cast<std::size_t>(row - Specials);
    return index < candidates_.size()
               ? candidates_[index].maker_id
               : known_->makers[others_[index - candidates_.size()]].maker_id;
}

int MakerChoices::rowOf(const std::string& maker_id) const
{
    for (int row = Specials; !maker_id.empty() && row < rowCount(); ++row) {
        const auto index = static_cast<std::size_t>(row - Specials);
        const std::string& id = index < candidates_.size()
                                    ? candidates_[index].maker_id
                                    : known_->makers[others_[index - candidates_.size()]].maker_id;
        if (id == maker_id)
            return row;
    }
    return LeftOpen;
}

int MakerChoices::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : Specials + static_cast<int>(candidates_.size() + others_.size());
}

QVariant MakerChoices::data(const QModelIndex& index, int role) const
{
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    if (role == Qt::UserRole)
        return QString::fromStdString(makerAt(index.row()));
    if (role != Qt::DisplayRole && role != Qt::EditRole)
        return {};
    if (index.row() == LeftOpen)
        return tr("left open");
    if (index.row() == NoneOfThem)
        return tr("none of the known makers");
    const auto at = static_cast<std::size_t>(index.row() - Specials);
    if (at < candidates_.size())
        return QString::fromStdString(candidates_[at].maker) + "  (" +
               shareWord(candidates_[at].probability) + ")";
    return QString::fromStdString(known_->makers[others_[at - candidates_.size()]].name);
}

}  // namespace gui
