#pragma once

#include <QAbstractTableModel>

#include "models/candidates.h"

namespace gui {

// What the readings can mean, as a table: the candidates best first, the share of none of the
// known makers at its place among them, the share of the register's other makers last.
class CandidateModel : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column { Maker, Share, Years, Mark, Columns };
    static constexpr int share_role = Qt::UserRole;  // the probability as a double, 0 to 1

    explicit CandidateModel(QObject* parent = nullptr);

    void setCandidates(const models::CandidateList& list);
    void clear();
    // nullptr for the two shares without a maker and outside the table.
    const models::Candidate* candidate(int row) const;
    // The row of the share of none of the known makers; -1 while there are no rows.
    int unknownRow() const { return known_ ? unknown_row_ : -1; }

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation,
                        int role = Qt::DisplayRole) const override;

private:
    QString text(int row, int column) const;
    double share(int row) const;

    models::CandidateList list_;
    int unknown_row_ = 0;
    bool known_ = false;
};

}  // namespace gui
