#pragma once

#include <functional>
#include <vector>

#include "app/cli/command_line.h"

// The commands of weftmark, one file each; see Command::prepare for what they do.
namespace cli {

std::function<int()> prepareRead(CLI::App& options, Surroundings& around);
std::function<int()> prepareMatch(CLI::App& options, Surroundings& around);
std::function<int()> prepareAdd(CLI::App& options, Surroundings& around);
std::function<int()> prepareFind(CLI::App& options, Surroundings& around);
std::function<int()> prepareItem(CLI::App& options, Surroundings& around);
std::function<int()> prepareDate(CLI::App& options, Surroundings& around);
std::function<int()> prepareChange(CLI::App& options, Surroundings& around);
std::function<int()> prepareShow(CLI::App& options, Surroundings& around);
std::function<int()> prepareConfusion(CLI::App& options, Surroundings& around);
std::function<int()> prepareExport(CLI::App& options, Surroundings& around);
std::function<int()> prepareRegister(CLI::App& options, Surroundings& around);
std::function<int()> prepareWindow(CLI::App& options, Surroundings& around);

// All of them, in the order in which the help lists them.
const std::vector<Command>& allCommands();

}  // namespace cli
