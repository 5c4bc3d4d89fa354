#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "app/gui/reading_editor.h"
#include "app/gui/tones.h"

namespace gui {

// How the window stood.
struct WindowState {
    int layer = 0;
    std::string tray;  // name of the page that is open; empty: closed
    bool dusk = false;
    std::string focus;       // name of what has the keys in the tray; empty: the letters
    std::string unfinished;  // the reading as text, where it is not understood yet
    double zoom = 1;
    bool magnifier = false;
    Tones tones;
    bool as_typed = false;  // letters typed small stay small

    bool operator==(const WindowState&) const = default;
};

// What lies on the table and where one was, as it is kept while working, so that the window opens
// there again whatever ended it.
struct TableState {
    struct Laid {
        std::filesystem::path photo;
        int piece = -1;        // place of the photo with which it is one piece; -1: of its own
        std::string filed_as;  // id of its record; empty while it is not filed
        bool set_aside = false;

        bool operator==(const Laid&) const = default;
    };
    std::vector<Laid> photos;
    int place = -1;  // of the photo in hand
    int stamp = 0;
    CellPlace cell;
    bool ahead_paused = false;  // reading ahead
    WindowState window;

    bool operator==(const TableState&) const = default;
};

// Kept as one file, replaced whole. Reading gives nothing where there is none or it is no such
// file: then the window starts empty.
void keepTable(const std::filesystem::path& file, const TableState& state);
std::optional<TableState> keptTable(const std::filesystem::path& file);

}  // namespace gui
