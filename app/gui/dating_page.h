#pragma once

#include <QString>
#include <vector>

#include "models/candidates.h"
#include "models/item_dating.h"

namespace gui {

// What an item's evidence gives, as simple HTML: for the item and each part that is dated on its
// own the years, what contradicts what and the likeliest culprit, what each piece of evidence did,
// the weightiest first, and what says nothing.
QString datingPage(const std::vector<models::PartDating>& parts);

// The item's years that are worth a bar, in the order of time; empty where nothing is known.
std::vector<models::YearShare> yearsOf(const std::vector<models::PartDating>& parts);

}  // namespace gui
