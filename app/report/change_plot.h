#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "models/production_change.h"

// A change of production as a picture: items with and without the detail by year, when the change
// lies, and what holds 90 %.
namespace report {

struct ChangePlot {
    std::string title;  // "Blackened steel buckle"
    models::ProductionChange change;
    std::vector<models::ChangeItem> items;
};

// Writes SVG or PNG, by the file's ending. A QGuiApplication must live.
// Throws std::runtime_error naming the file and the remedy if it cannot be written, and
// std::invalid_argument for another ending.
void writeChangePlot(const ChangePlot& plot, const std::filesystem::path& file);

}  // namespace report
