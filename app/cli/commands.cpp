#include "app/cli/commands.h"

namespace cli {

const std::vector<Command>& allCommands()
{
    static const std::vector<Command> commands = {
        {"read", "Read the stamps in photographs and tell what they can mean", prepareRead},
        {"match", "Tell what a reading that you type can mean", prepareMatch},
        {"add", "File an item with its photographs and readings", prepareAdd},
        {"item", "Record an item or more of it, and tell what the evidence now gives", prepareItem},
        {"date", "Tell when a filed item was made, why, and what contradicts what", prepareDate},
        {"change", "Tell from dated items when production changed", prepareChange},
        {"find", "Find filed items by words, maker or year", prepareFind},
        {"show", "Show one filed item", prepareShow},
        {"export", "Write all filed items as a table or as JSON", prepareExport},
        {"register", "Check the register, look things up in it, add to it", prepareRegister},
        {"confusion", "Show what letters are taken for, as corrections taught it, or forget them",
         prepareConfusion},
        {"window", "Open the window", prepareWindow},
    };
    return commands;
}

}  // namespace cli
