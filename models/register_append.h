#pragma once

#include <cstddef>
#include <filesystem>
#include <map>
#include <string>
#include <vector>

#include "models/register_check.h"
#include "models/register_tables.h"

namespace models {

// What became of a row that was to be added to a register.
struct Appended {
    std::filesystem::path file;
    std::size_t line = 0;                // where it stands now; 0 when it was refused
    std::vector<RegisterFault> refused;  // why nothing was written; empty when it was
    std::vector<RegisterFault> remarks;  // what checkRegister remarks on the new line
};

// Adds a row at the end of a file of the register, which keeps its separator, byte order mark, line
// ends, quoting, order of columns and columns of its own (left empty). The row is refused, and
// nothing is written, when the register would have a fault that it has not now, or when the file
// itself cannot be read. A missing file is made with its header, save makers.csv and marks.csv. The
// file is replaced whole once the disk has the new one, so that not even a power cut leaves it half
// written; a write that fails is told as refused.
//   fields  by column; blanks round them are cut off; columns not named are left empty
Appended appendToRegister(const std::filesystem::path& folder, const RegisterTable& table,
                          const std::map<std::string, std::string>& fields);

}  // namespace models
