#include "app/cli/records.h"

#include "app/flow/date_item.h"

namespace cli {

std::optional<models::ItemRecord> recordOf(const models::Archive& archive, const std::string& item,
                                           Surroundings& around)
{
    std::optional<models::ItemRecord> record = archive.item(item);
    if (!record)
        around.err << "weftmark: there is no item '" << item
                   << "' in the archive; look for it with find\n";
    return record;
}

std::vector<models::PartDating> dateRecord(const models::ItemRecord& record,
                                           const models::MakerRegister& known, Surroundings& around)
{
    models::DatedItem item = flow::datedItem(record);
    if (!item.type_id.empty() && !known.itemType(item.type_id)) {
        around.err << "weftmark: the register has no item type '" << item.type_id
                   << "' any more, so that its years are left out; give the item another type "
                      "with item --type\n";
        item.type_id.clear();
    }
    return models::dateItem(item, known);
}

}  // namespace cli
