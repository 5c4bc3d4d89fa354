#pragma once

#include <string>

#include "models/maker_register.h"

namespace cli {

// Throws UsageError, naming the types there are, unless the register has this one; empty passes.
void requireItemType(const std::string& type_id, const models::MakerRegister& known);

}  // namespace cli
