#include "models/register_tables.h"

#include <stdexcept>

namespace models {

const std::vector<RegisterTable>& registerTables()
{
    static const std::vector<RegisterTable> tables = {
        {"maker",
         "makers.csv",
         {{"maker_id", "name"}, {"place", "from", "to", "successor_of", "notes", "source_id"}},
         true},
        {"mark",
         "marks.csv",
         {{"maker_id", "text"}, {"kind", "frame", "from", "to", "notes", "source_id"}},
         true},
        {"type",
         "item_types.csv",
         {{"type_id", "name"},
          {"pattern", "introduced", "withdrawn", "parts", "sizes", "notes", "source_id"}},
         false},
        {"feature",
         "features.csv",
         {{"feature_id", "type_id", "name"}, {"from", "to", "maker_id", "notes", "source_id"}},
         false},
        {"code",
         "codes.csv",
         {{"code", "stands_for", "value"}, {"issuer", "from", "to", "notes", "source_id"}},
         false},
        {"spelling", "spellings.csv", {{"text", "same_as"}, {}}, false},
        {"source", "sources.csv", {{"source_id", "citation"}, {}}, false},
    };
    return tables;
}

const RegisterTable& registerTable(const std::string& file)
{
    for (const RegisterTable& table : registerTables())
        if (table.file == file)
            return table;
    throw std::invalid_argument("the register has no file " + file);
}

}  // namespace models
