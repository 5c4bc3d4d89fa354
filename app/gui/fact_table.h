#pragma once

#include <QPersistentModelIndex>
#include <QTableView>
#include <optional>

#include "app/gui/fact_model.h"

namespace gui {

// What is seen on a piece, filled in by key: Space goes through what can be chosen, its first
// letter chooses, Enter opens what can be chosen or written, writing writes, Del takes a row out.
class FactTable : public QTableView {
    Q_OBJECT

public:
    explicit FactTable(QWidget* parent = nullptr);

    FactModel& facts() { return *model_; }

    // Takes over what is being written.
    void settle();

protected:
    void closeEditor(QWidget* editor, QAbstractItemDelegate::EndEditHint hint) override;
    void keyPressEvent(QKeyEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    bool chooseBy(QKeyEvent* event);
    void headRows();
    void goToBegun();

    FactModel* model_;
    std::optional<QPersistentModelIndex> begun_;  // a fact made in the row for one more
};

}  // namespace gui
