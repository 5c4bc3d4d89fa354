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

    void undo() override;
    void redo() override;
    int id() const override { return join_key_; }
    bool mergeWith(const QUndoCommand* next) override;

private:
    std::function<void()> undo_, redo_;
    int join_key_;
    bool done_ = true;
};

}  // namespace gui
