#pragma once

#include <QAbstractTableModel>
#include <memory>
#include <vector>

#include "app/gui/fact_rows.h"

namespace gui {

// What is seen on a piece as a table that is filled in. Rows with a choice have it under
// `ChoicesRole` (the words) and Qt::EditRole (its number).
class FactModel : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Roles { ChoicesRole = Qt::UserRole + 1, HeadingRole };

    explicit FactModel(QObject* parent = nullptr);

    void setKnown(std::shared_ptr<const models::MakerRegister> known);
    void setFacts(const FilingFields& fields, const std::vector<std::string>& stamps);
    // The same fields with the facts as they are here.
    FilingFields putInto(FilingFields fields) const;
    const std::vector<FactRow>& rows() const { return rows_; }
    const std::vector<std::string>& stamps() const { return stamps_; }
    void takeOutRow(int row);

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role = Qt::EditRole) override;

Q_SIGNALS:
    void factsChanged();  // by the person

private:
    QString shown(const FactRow& row, FactColumn column) const;
    void arrange(const FilingFields& fields);

    std::shared_ptr<const models::MakerRegister> known_;
    FilingFields fields_;
    std::vector<std::string> stamps_;
    std::vector<FactRow> rows_;
};

}  // namespace gui
