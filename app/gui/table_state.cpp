#include "app/gui/table_state.h"

#include <fstream>
#include <nlohmann/json.hpp>

#include "app/gui/replace_file.h"

namespace gui {

namespace {

constexpr int table_version = 1;

}  // namespace

void keepTable(const std::filesystem::path& file, const TableState& state)
{
    nlohmann::ordered_json photos = nlohmann::ordered_json::array();
    for (const TableState::Laid& laid : state.photos)
        photos.push_back(
            {{"photo", laid.photo.string()}, {"piece", laid.piece}, {"filed_as", laid.filed_as}});
    const nlohmann::ordered_json json = {{"table_version", table_version},
                                         {"place", state.place},
                                         {"stamp", state.stamp},
                                         {"cell", {state.cell.line, state.cell.cell}},
                                         {"layer", state.layer},
                                         {"tray", state.tray},
                                         {"dusk", state.dusk},
                                         {"as_typed", state.as_typed},
                                         {"photos", photos}};
    std::error_code ignored;
    std::filesystem::create_directories(file.parent_path(), ignored);
    const std::string text =
        json.dump(-1, ' ', false, nlohmann::ordered_json::error_handler_t::replace);
    replaceFile(file, text, true);  // where it fails one merely starts at an empty table
}

std::optional<TableState> keptTable(const std::filesystem::path& file)
{
    std::ifstream in(file);
    if (!in)
        return std::nullopt;
    try {
        const auto json = nlohmann::json::parse(in);
        if (json.at("table_version").get<int>() != table_version)
            return std::nullopt;
        TableState state;
        state.place = json.at("place").get<int>();
        state.stamp = json.at("stamp").get<int>();
        state.cell = {json.at("cell").at(0).get<std::size_t>(),
                      json.at("cell").at(1).get<std::size_t>()};
        state.layer = json.at("layer").get<int>();
        state.tray = json.at("tray").get<std::string>();
        state.dusk = json.at("dusk").get<bool>();
        state.as_typed = json.value("as_typed", false);  // older files say nothing of it
        for (const auto& laid : json.at("photos"))
            state.photos.push_back({laid.at("photo").get<std::string>(),
                                    laid.at("piece").get<int>(),
                                    laid.at("filed_as").get<std::string>()});
        return state;
    } catch (const nlohmann::json::exception&) {
        return std::nullopt;
    }
}

}  // namespace gui
