#pragma once

#include <functional>
#include <vector>

#include "app/cli/surroundings.h"

namespace CLI {
class App;
}

// The words behind `weftmark register`, one file each; see Command::prepare for what they do.
namespace cli {

std::function<int()> prepareRegisterCheck(CLI::App& options, Surroundings& around);
std::function<int()> prepareRegisterList(CLI::App& options, Surroundings& around);
std::function<int()> prepareRegisterShow(CLI::App& options, Surroundings& around);
std::function<int()> prepareRegisterAdd(CLI::App& options, Surroundings& around);

// A word behind a word: `prepare` as Command has it.
struct WordBehind {
    const char* name;
    const char* summary;
    std::function<std::function<int()>(CLI::App& options, Surroundings& around)> prepare;
};

// Puts words behind a command, one of which must be said; returns what runs the one that was.
std::function<int()> prepareWords(CLI::App& command, Surroundings& around,
                                  const std::vector<WordBehind>& words);

}  // namespace cli
