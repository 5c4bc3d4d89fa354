#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/cli/surroundings.h"
#include "models/archive/archive.h"
#include "models/item_dating.h"

// What several commands do with one filed record.
namespace cli {

// The record; nullopt, with a sentence on `around.err`, when there is none.
std::optional<models::ItemRecord> recordOf(const models::Archive& archive, const std::string& item,
                                           Surroundings& around);

// Its datings. A type that the register does not have is told and left out.
std::vector<models::PartDating> dateRecord(const models::ItemRecord& record,
                                           const models::MakerRegister& known,
                                           Surroundings& around);

}  // namespace cli
