#include "app/gui/table_state.h"

#include <fstream>
#include <nlohmann/json.hpp>

#include "app/gui/replace_file.h"

namespace gui {

namespace {

constexpr int table_version = 1;

WindowState windowFromJson(const nlohmann::json& json)
{
    WindowState window;
    window.layer = json.at("layer").get<int>();
    window.tray = json.at("tray").get<std::string>();
    window.dusk = json.at("dusk").get<bool>();
    // Tables of an earlier version have none of these.
    window.focus = json.value("focus", "");
    window.unfinished = json.value("unfinished", "");
    window.zoom = json.value("zoom", 1.0);
    window.magnifier = json.value("magnifier", false);
    window.tones = {json.value("contrast", 1.0), json.value("gamma", 1.0)};
    window.as_typed = json.value("as_typed", false);
    return window;
}

}  // namespace

void keepTable(const std::filesystem::path& file, const TableState& state)
{
    nlohmann::ordered_json photos = nlohmann::ordered_json::array();
    for (const TableState::Laid& laid : state.photos)
        photos.push_back({{"photo", laid.photo.string()},
                          {"piece", laid.piece},
                          {"filed_as", laid.filed_as},
                          {"set_aside", laid.set_aside}});
    const nlohmann::ordered_json json = {{"table_version", table_version},
                                         {"place", state.place},
                                         {"stamp", state.stamp},
                                         {"cell", {state.cell.line, state.cell.cell}},
                                         {"ahead_paused", state.ahead_paused},
                                         {"layer", state.window.layer},
                                         {"tray", state.window.tray},
                                         {"dusk", state.window.dusk},
                                         {"focus", state.window.focus},
                                         {"unfinished", state.window.unfinished},
                                         {"zoom", state.window.zoom},
                                         {"magnifier", state.window.magnifier},
                                         {"contrast", state.window.tones.contrast},
                                         {"gamma", state.window.tones.gamma},
                                         {"as_typed", state.window.as_typed},
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
        state.window = windowFromJson(json);
        state.ahead_paused = json.value("ahead_paused", false);
        for (const auto& laid : json.at("photos"))
            state.photos.push_back(
                {laid.at("photo").get<std::string>(), laid.at("piece").get<int>(),
                 laid.at("filed_as").get<std::string>(), laid.value("set_aside", false)});
        return state;
    } catch (const nlohmann::json::exception&) {
        return std::nullopt;
    }
}

}  // namespace gui
