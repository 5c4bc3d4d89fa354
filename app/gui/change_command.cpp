#include "app/gui/change_command.h"

#include <utility>

namespace gui {

namespace {

int changes_made = 0;

}  // namespace

ChangeCommand::ChangeCommand(const QString& what, std::function<void()> undo,
                             std::function<void()> redo, int join_key)
    : QUndoCommand(what),
      undo_(std::move(undo)),
      redo_(std::move(redo)),
      join_key_(join_key),
      order_(++changes_made)
{
}

void ChangeCommand::undo()
{
    undo_();
}

void ChangeCommand::redo()
{
    if (!done_)
        redo_();
    done_ = false;
}

bool ChangeCommand::mergeWith(const QUndoCommand* next)
{
    // Qt asks only commands of one id(), and every command of this stack is a ChangeCommand.
    const auto joined = static_cast<const ChangeCommand*>(next);
    redo_ = joined->redo_;
    order_ = joined->order_;
    setObsolete(joined->takes_back_);
    return true;
}

}  // namespace gui
