#pragma once

#include <functional>
#include <optional>
#include <string>

namespace cli {

// Whether a window can be opened, asked before the window toolkit, which ends the program when it
// cannot.
//   environment  looks a variable up
//   returns  nullopt when it can, else a sentence with the remedy
std::optional<std::string> displayTrouble(
    const std::function<std::optional<std::string>(const std::string&)>& environment);

}  // namespace cli
