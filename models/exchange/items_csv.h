#pragma once

#include <string>

#include "models/archive/records.h"

// Records as a table for spreadsheets and other catalogues: CSV of RFC 4180 in UTF-8, one row an
// item. A table cannot hold a whole record; the JSON does.
namespace models {

// One field: quoted where it holds a comma, a quotation mark or a line break. Text that a
// spreadsheet would take for a formula (it begins with = + - @, a tab or a return) gets an
// apostrophe before it, as does text that begins with an apostrophe: so take one leading apostrophe
// away to have the text as recorded.
std::string csvField(const std::string& text);

// The names of the columns, and one item; each ends with CR LF. Several values in one field are
// parted by " | ". Readings are in the typed notation, those of one item in the order of its
// stamps, corrected ones left out; maker and date are those of the latest standing attribution,
// rivals are in `other_attributions`.
std::string itemsCsvHeader();
std::string itemCsvRow(const ItemRecord& item);

}  // namespace models
