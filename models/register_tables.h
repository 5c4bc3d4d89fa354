#pragma once

#include <string>
#include <vector>

namespace models {

// The columns that a file of the register has; the first ones must be there.
struct ColumnPlan {
    std::vector<std::string> required, optional;
};

// One file of a register folder.
struct RegisterTable {
    std::string row;   // what one row of it is, in a word: "maker"
    std::string file;  // its name: "makers.csv"
    ColumnPlan columns;
    bool needed = false;  // there is no register without it
};

// All of them, in the order in which they are told of.
const std::vector<RegisterTable>& registerTables();

// The one of this file name. Throws std::invalid_argument for another name.
const RegisterTable& registerTable(const std::string& file);

}  // namespace models
