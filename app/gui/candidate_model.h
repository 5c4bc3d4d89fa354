#pragma once

#include <QAbstractTableModel>

#include "models/candidates.h"

namespace gui {

// What the readings can mean, as a table: the candidates best first, last the share of all other
// makers together: of those that are each less than 1 % likely until they are unfolded, and of the
// register's others.
class CandidateModel : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column { Maker, Share, Years, Mark, Columns };
    static constexpr int share_role = Qt::UserRole;  // the probability as a double, 0 to 1

    explicit CandidateModel(QObject* parent = nullptr);

    void setCandidates(const models::CandidateList& list);
    void clear();
    // nullptr for the last row and outside the table.
    const models::Candidate* candidate(int row) const;
    // How many of the candidates are told together in the last row.
    std::size_t folded() const;
    void unfold();  // until they are cleared

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation,
                        int role = Qt::DisplayRole) const override;

private:
    QString text(int row, int column) const;
    double share(int row) const;

    models::CandidateList list_;
    std::size_t shown_ = 0;  // candidates with a row of their own
    bool known_ = false, unfolded_ = false;
};

}  // namespace gui
