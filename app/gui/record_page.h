#pragma once

#include <QString>

#include "models/archive/records.h"

namespace gui {

// A record told on one page (simple HTML): the item, what was concluded, and each stamp with all
// its readings, newest first, each under its reader's name.
QString recordPage(const models::ItemRecord& item);

}  // namespace gui
