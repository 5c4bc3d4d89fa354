#include "models/archive/standing.h"

#include <set>
#include <string>

namespace models {

namespace {

// Ids of facts that were taken back.
std::set<std::string> withdrawnFacts(const ItemRecord& item)
{
    std::set<std::string> ids;
    for (const CorrectionRecord& correction : item.corrections)
        if (correction.field == "withdrawn")
            ids.insert(correction.about_id);
    return ids;
}

}  // namespace

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

std::vector<DatedEventRecord> standingEvents(const ItemRecord& item)
{
    const std::set<std::string> withdrawn = withdrawnFacts(item);
    std::vector<DatedEventRecord> standing = item.dated_events;
    std::erase_if(standing, [&](const auto& event) { return withdrawn.contains(event.id); });
    return standing;
}

std::vector<MeasurementRecord> standingMeasurements(const ItemRecord& item)
{
    const std::set<std::string> withdrawn = withdrawnFacts(item);
    std::vector<MeasurementRecord> standing = item.measurements;
    std::erase_if(standing, [&](const auto& one) { return withdrawn.contains(one.id); });
    return standing;
}

std::vector<FeatureSeenRecord> standingFeatures(const ItemRecord& item)
{
    const std::set<std::string> withdrawn = withdrawnFacts(item);
    std::vector<FeatureSeenRecord> standing;
    for (const FeatureSeenRecord& feature : item.features) {
        if (withdrawn.contains(feature.id))
            continue;
        std::erase_if(standing, [&](const FeatureSeenRecord& earlier) {
            return earlier.feature_id == feature.feature_id;
        });
        standing.push_back(feature);
    }
    return standing;
}

}  // namespace models
