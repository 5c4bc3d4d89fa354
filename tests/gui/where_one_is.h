#pragma once

#include <string>

#include "app/gui/main_window.h"

namespace gui_tests {

// Where a person is in the window and what they have written there, as one line of text: photo,
// stamp, cell, letters in the typed notation, what is said of the piece, layer, open tray.
std::string whereOneIs(gui::MainWindow& window);

// A sitting that goes on until the process is killed: a window on the made-up examiner with its
// archive in `folder`, keys pressed at random from `seed` on. Before a press is kept, a line
// "now " + whereOneIs is printed, then "kept" once it is.
int sitUntilKilled(const std::string& folder, unsigned seed);

}  // namespace gui_tests
