#include "models/archive/standing.h"

#include <set>
#include <string>

namespace models {

std::vector<AttributionRecord> standingAttributions(const ItemRecord& item)
{
    std::set<std::string> replaced;
    for (const AttributionRecord& attribution : item.attributions)
        replaced.insert(attribution.supersedes);
    std::vector<AttributionRecord> standing;
    for (const AttributionRecord& attribution : item.attributions)
        if (attribution.id.empty() || !replaced.contains(attribution.id))
            standing.push_back(attribution);
    return standing;
}

std::vector<ReadingRecord> standingReadings(const StampRecord& stamp)
{
    std::vector<ReadingRecord> all;
    for (const ViewRecord& view : stamp.views)
        all.insert(all.end(), view.readings.begin(), view.readings.end());
    all.insert(all.end(), stamp.readings.begin(), stamp.readings.end());
    std::set<std::string> corrected;
    for (const ReadingRecord& reading : all)
        corrected.insert(reading.supersedes);
    std::erase_if(all, [&](const ReadingRecord& reading) {
        return !reading.id.empty() && corrected.contains(reading.id);
    });
    return all;
}

}  // namespace models
