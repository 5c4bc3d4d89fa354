#pragma once

#include <filesystem>
#include <functional>
#include <optional>
#include <ostream>
#include <string>

#include "app/flow/examine.h"
#include "app/gui/run_window.h"
#include "models/archive/archive.h"

namespace cli {

// What a command meets outside itself. main.cpp takes it from the machine, a test makes its own.
struct Surroundings {
    std::ostream& out;            // results
    std::ostream& err;            // complaints and progress
    bool progress_shown = false;  // progress is for terminals only
    std::function<std::optional<std::string>(const std::string&)> environment;
    std::string login_name;
    std::filesystem::path installed_register;  // used when the environment names none
    models::Clock clock;
    std::function<flow::Engines(const std::filesystem::path& register_folder)> make_engines;
    std::function<std::optional<std::string>()> display_trouble;  // nullopt: a window can be opened
    std::function<int(const gui::WindowOptions&)> run_window;
};

}  // namespace cli
