#pragma once

#include <QAbstractListModel>
#include <QStringList>
#include <memory>
#include <vector>

#include "models/candidates.h"
#include "models/maker_register.h"

namespace gui {

// What can be concluded of an item's maker: left open, none of the known ones, the candidates
// likeliest first, then the register's other makers by name. Quick for ten thousand of them.
class MakerChoices : public QAbstractListModel {
    Q_OBJECT

public:
    // Roles of the two choices that are no maker.
    enum Special { LeftOpen, NoneOfThem, Specials };

    explicit MakerChoices(QObject* parent = nullptr);

    void setKnown(std::shared_ptr<const models::MakerRegister> known);
    void setCandidates(const models::CandidateList& list);
    int rowOf(const std::string& maker_id) const;  // LeftOpen for none
    std::string makerAt(int row) const;            // empty for the two that are no maker

    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;

private:
    void arrange();

    std::shared_ptr<const models::MakerRegister> known_;
    std::vector<std::size_t> by_name_;  // of the register's makers
    std::vector<models::Candidate> candidates_;
    std::vector<std::size_t> others_;  // as by_name_, without the candidates
};

}  // namespace gui
