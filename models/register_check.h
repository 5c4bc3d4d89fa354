#pragma once

#include <filesystem>
#include <vector>

#include "models/maker_register.h"
#include "models/register_loader.h"

namespace models {

// One thing that a person who keeps a register should look at.
struct RegisterFinding {
    RegisterFault what;
    bool is_fault = false;  // loadRegister refuses the register for it; else it is a remark
};

// All that is wrong with a register or looks wrong in it, by file (in the order of
// registerTables), then line. Remarks are: what stands there twice; marks of two makers that cannot
// be told apart, or differ by characters that look alike alone (O and 0); years that contradict
// each other; sources that are cited but listed nowhere; makers that succeed each other in a
// circle; codes that mean two things in one year. Takes time in proportion to the register (times a
// logarithm).
//   pending  a text that one of the files would have
std::vector<RegisterFinding> checkRegister(const std::filesystem::path& folder,
                                           const PendingFile& pending = {});

}  // namespace models
