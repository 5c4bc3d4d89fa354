#pragma once

#include <QString>
#include <vector>

#include "models/archive/records.h"
#include "models/item_dating.h"

namespace gui {

// A record told on one page (simple HTML): the item, what was concluded with rivals and what was
// replaced since, what is seen and measured on it, dates, each stamp with all its readings, newest
// first, each under its reader's name, and what was corrected.
//   dating  what the evidence gives; nullptr while it is being weighed
QString recordPage(const models::ItemRecord& item,
                   const std::vector<models::PartDating>* dating = nullptr);

}  // namespace gui
