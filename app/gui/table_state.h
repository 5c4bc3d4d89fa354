#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "app/gui/reading_editor.h"

namespace gui {

// What lies on the table and where one was, as it is kept while working, so that the window opens
// there again whatever ended it.
struct TableState {
    struct Laid {
        std::filesystem::path photo;
        int piece = -1;        // place of the photo with which it is one piece; -1: of its own
        std::string filed_as;  // id of its record; empty while it is not filed

        bool operator==(const Laid&) const = default;
    };
    std::vector<Laid> photos;
    int place = -1;  // of the photo in hand
    int stamp = 0;
    CellPlace cell;
    int layer = 0;
    std::string tray;  // name of the page that is open; empty: closed
    bool dusk = false;
    bool as_typed = false;  // letters typed small stay small

    bool operator==(const TableState&) const = default;
};

// Kept as one file, replaced whole. Reading gives nothing where there is none or it is no such
// file: then the window starts empty.
void keepTable(const std::filesystem::path& file, const TableState& state);
std::optional<TableState> keptTable(const std::filesystem::path& file);

}  // namespace gui
