#pragma once

#include <QUndoCommand>
#include <functional>

namespace gui {

// One undoable change given by two functions. What it does has been done already when it is
// pushed: the first redo is skipped.
class ChangeCommand : public QUndoCommand {
public:
    // join_key  changes pushed one after the other with the same key (not negative) become one
    ChangeCommand(const QString& what, std::function<void()> undo, std::function<void()> redo,
                  int join_key = -1);

    // Joined with the changes before it, all is as it was: nothing stays to be undone.
    void setTakesBack() { takes_back_ = true; }
    // Which of two changes, though on different stacks, was made later: the greater.
    int order() const { return order_; }
    void undo() override;
    void redo() override;
    int id() const override { return join_key_; }
    bool mergeWith(const QUndoCommand* next) override;

private:
    std::function<void()> undo_, redo_;
    int join_key_;
    int order_;
    bool done_ = true;
    bool takes_back_ = false;
};

}  // namespace gui
