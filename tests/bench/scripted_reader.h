#pragma once

#include <string>
#include <vector>

#include "tests/gui/window_harness.h"

namespace bench {

// Someone at the window who can read every mark: knows what stands on a stamp and brings the cells
// there by key presses alone, by the shortest way that the keys offer.
class ScriptedReader {
public:
    explicit ScriptedReader(gui_tests::WindowHarness& window) : window_(window) {}

    // One key press; text counts a press a character.
    void press(Qt::Key key, Qt::KeyboardModifiers with = Qt::NoModifier);

    // Makes the stamp in hand say these lines (typed notation; a letter that it
    // calls unsure is made so) and confirms them, line by line or, once nothing is wrong any more,
    // at once. Lines that nobody reads any more are left to the caller.
    //   returns  whether it says them now
    bool read(const std::vector<std::string>& lines);

    int presses() const { return presses_; }      // all but those that follow
    int unread_typed() const { return unread_; }  // letters typed where the engine left one unread

private:
    using Tokens = std::vector<std::string>;
    Tokens shown(std::size_t line) const;
    void sign(const QString& key);
    void type(const std::string& token, bool unread);
    void goToCell(std::size_t cell);
    bool mend(const Tokens& truth);
    bool confirmAtOnce(const std::vector<std::string>& lines, std::size_t from);
    void takeOutFrom(std::size_t line);
    std::size_t lineCount() const;

    gui_tests::WindowHarness& window_;
    int presses_ = 0, unread_ = 0;
};

}  // namespace bench
