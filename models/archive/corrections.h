#pragma once

#include <string>
#include <vector>

#include "models/archive/entry.h"

namespace models {

// `before` is filled in from what holds now. Throws as Archive::addTo tells.
void saveCorrection(const Entry& entry, const std::string& item_id, CorrectionRecord correction);

std::vector<CorrectionRecord> loadCorrections(const sql::Database& database,
                                              const std::string& item_id);

// Puts what holds now into the record's fields and the corrections beside them.
void applyCorrections(ItemRecord& item, std::vector<CorrectionRecord> corrections);

}  // namespace models
