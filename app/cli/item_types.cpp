#include "app/cli/item_types.h"

#include "app/cli/command_line.h"

namespace cli {

void requireItemType(const std::string& type_id, const models::MakerRegister& known)
{
    if (type_id.empty() || known.itemType(type_id))
        return;
    std::string types;
    for (const models::ItemType& type : known.item_types)
        types += (types.empty() ? "" : ", ") + type.type_id;
    throw UsageError("the register has no item type '" + type_id + "'; " +
                     (types.empty() ? "it has none at all" : "it has " + types));
}

}  // namespace cli
