#include "app/gui/fact_table.h"

#include <QComboBox>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLineEdit>
#include <QStyledItemDelegate>
#include <QTimer>

#include "app/gui/window_undo.h"

namespace gui {

namespace {

// Fields for what is written, lists for what is chosen.
class FactDelegate : public QStyledItemDelegate {
public:
    using QStyledItemDelegate::QStyledItemDelegate;

    QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem&,
                          const QModelIndex& index) const override
    {
        const QStringList words = index.data(FactModel::ChoicesRole).toStringList();
        if (words.isEmpty()) {
            auto field = new QLineEdit(parent);
            field->setAccessibleName(index.data(Qt::AccessibleTextRole).toString());
            field->setFrame(false);
            leaveUndoToWindow(field);
            return field;
        }
        auto list = new QComboBox(parent);
        list->setAccessibleName(index.data(Qt::AccessibleTextRole).toString());
        list->addItems(words);
        QTimer::singleShot(0, list, &QComboBox::showPopup);
        connect(list, &QComboBox::activated, this, [this, list] {
            auto self = const_cast<FactDelegate*>(this);
            Q_EMIT self->commitData(list);
            Q_EMIT self->closeEditor(list);
        });
        return list;
    }

    void setEditorData(QWidget* editor, const QModelIndex& index) const override
    {
        if (auto list = qobject_cast<QComboBox*>(editor))
            list->setCurrentIndex(index.data(Qt::EditRole).toInt());
        else
            static_cast<QLineEdit*>(editor)->setText(index.data(Qt::EditRole).toString());
    }

    void setModelData(QWidget* editor, QAbstractItemModel* model,
                      const QModelIndex& index) const override
    {
        if (auto list = qobject_cast<QComboBox*>(editor))
            model->setData(index, list->currentIndex());
        else
            model->setData(index, static_cast<QLineEdit*>(editor)->text());
    }
};

}  // namespace

FactTable::FactTable(QWidget* parent) : QTableView(parent), model_(new FactModel(this))
{
    setObjectName("facts");
    setAccessibleName(tr("What is seen on the piece"));
    setModel(model_);
    setItemDelegate(new FactDelegate(this));
    setSelectionMode(QAbstractItemView::SingleSelection);
    setEditTriggers(QAbstractItemView::AnyKeyPressed | QAbstractItemView::DoubleClicked |
                    QAbstractItemView::SelectedClicked);
    setTabKeyNavigation(false);
    setShowGrid(false);
    setWordWrap(false);
    verticalHeader()->hide();
    horizontalHeader()->hide();
    horizontalHeader()->setMinimumSectionSize(20);
    connect(model_, &FactModel::modelReset, this, &FactTable::headRows);
    connect(model_, &FactModel::rowsRemoved, this, &FactTable::headRows);
    connect(model_, &FactModel::rowsInserted, this, [this](const QModelIndex&, int first) {
        headRows();
        const FactKind kind = model_->rows()[static_cast<std::size_t>(first)].kind;
        if (kind != FactKind::Measurement && kind != FactKind::Event)
            return;
        begun_ = QPersistentModelIndex(model_->index(first, 1));
        if (state() != EditingState)
            goToBegun();
    });
    headRows();
}

// Headings go across; one is always in a row.
void FactTable::headRows()
{
    const auto& rows = model_->rows();
    clearSpans();
    int first = -1;
    for (std::size_t i = 0; i < rows.size(); ++i)
        if (rows[i].kind == FactKind::Heading)
            setSpan(static_cast<int>(i), 0, 1, 3);
        else if (first < 0)
            first = static_cast<int>(i);
    const bool in_hand = hasFocus() || state() == EditingState;
    if (!currentIndex().isValid() || !in_hand)
        setCurrentIndex(model_->index(first, 1));
}

// What was begun in the row for one more is gone on with.
void FactTable::goToBegun()
{
    if (begun_ && begun_->isValid())
        setCurrentIndex(*begun_);
    begun_.reset();
}

void FactTable::closeEditor(QWidget* editor, QAbstractItemDelegate::EndEditHint hint)
{
    const bool has_begun = begun_.has_value();
    QTableView::closeEditor(editor, has_begun ? QAbstractItemDelegate::NoHint : hint);
    if (!has_begun)
        return;
    goToBegun();
    if (hint == QAbstractItemDelegate::EditNextItem)
        edit(currentIndex());
}

void FactTable::settle()
{
    if (state() == EditingState)
        setFocus();  // leaving a field takes over what is written in it
}

void FactTable::resizeEvent(QResizeEvent* event)
{
    QTableView::resizeEvent(event);
    const int width = viewport()->width();
    setColumnWidth(0, width * 2 / 5);
    setColumnWidth(1, width * 7 / 20);
    setColumnWidth(2, width - width * 2 / 5 - width * 7 / 20);
}

// Space and Shift+Space, or the first letter of what is meant.
bool FactTable::chooseBy(QKeyEvent* event)
{
    const QStringList words = currentIndex().data(FactModel::ChoicesRole).toStringList();
    const bool plain = !(event->modifiers() & (Qt::ControlModifier | Qt::AltModifier));
    if (words.isEmpty() || event->text().isEmpty() || !plain)
        return false;
    const int count = static_cast<int>(words.size());
    const int now = currentIndex().data(Qt::EditRole).toInt();
    if (event->key() == Qt::Key_Space) {
        const int step = event->modifiers() & Qt::ShiftModifier ? count - 1 : 1;
        return model_->setData(currentIndex(), (std::max(now, 0) + step) % count);
    }
    for (int i = 1; i <= count; ++i) {
        const int choice = (now + i + count) % count;
        if (words[choice].startsWith(event->text(), Qt::CaseInsensitive))
            return model_->setData(currentIndex(), choice);
    }
    return event->text().at(0).isPrint();
}

void FactTable::keyPressEvent(QKeyEvent* event)
{
    const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
    if (state() == EditingState)
        return QTableView::keyPressEvent(event);
    if (enter && (model_->flags(currentIndex()) & Qt::ItemIsEditable))
        return edit(currentIndex());
    if (event->key() == Qt::Key_Delete || event->key() == Qt::Key_Backspace)
        return model_->takeOutRow(currentIndex().row());
    if (!chooseBy(event))
        QTableView::keyPressEvent(event);
}

}  // namespace gui
