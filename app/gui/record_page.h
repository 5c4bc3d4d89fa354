#pragma once

#include <QString>
#include <vector>

#include "models/archive/records.h"
#include "models/item_dating.h"

namespace gui {

// The name that a record goes by: its accession number.
QString recordName(const models::ItemRecord& item);

// A record told on one page (simple HTML): the item, what was concluded with rivals and what was
// replaced since, what is seen and measured on it, dates, each stamp with all its readings, newest
// first, each under its reader's name, and what was corrected.
//   dating  what the evidence gives; nullptr while it is being weighed
//   known   has the names of types and details; without it, and where it has none, they go by id
QString recordPage(const models::ItemRecord& item,
                   const std::vector<models::PartDating>* dating = nullptr,
                   const models::MakerRegister* known = nullptr);

}  // namespace gui
