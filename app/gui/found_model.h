#pragma once

#include <QAbstractTableModel>
#include <vector>

#include "models/archive/archive.h"

namespace gui {

// Records found, newest first, as a table.
class FoundModel : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column { Accession, Maker, Date, Text, Type, Columns };

    explicit FoundModel(QObject* parent = nullptr);

    void setFound(std::vector<models::FoundItem> found);
    const models::FoundItem* item(int row) const;  // nullptr outside the table

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation,
                        int role = Qt::DisplayRole) const override;

private:
    std::vector<models::FoundItem> found_;
};

}  // namespace gui
