// What is added to an item that is filed already.
#include "models/archive/connection.h"
#include "models/archive/corrections.h"
#include "models/archive/entry.h"

namespace models {

std::string newRecordId()
{
    return idOrNew({});
}

void Archive::addTo(const std::string& item_id, const RecordAdditions& additions)
{
    sql::Transaction transaction(connection_->database, sql::Transaction::Kind::Writing);
    const Entry entry = connection_->entry();
    requireItem(entry.database, item_id);
    const PhotoIds photo_ids = photoIdsOf(entry.database, item_id);
    for (const StampRecord& stamp : additions.stamps)
        saveStamp(entry, item_id, stamp, photo_ids);
    for (const DatedEventRecord& event : additions.dated_events)
        saveDatedEvent(entry, item_id, event);
    for (const FeatureSeenRecord& feature : additions.features)
        saveFeatureSeen(entry, item_id, feature);
    for (const MeasurementRecord& measurement : additions.measurements)
        saveMeasurement(entry, item_id, measurement);
    for (const AttributionRecord& attribution : additions.attributions)
        saveAttribution(entry, item_id, attribution);
    for (const CorrectionRecord& correction : additions.corrections)
        saveCorrection(entry, item_id, correction);
    transaction.commit();
}

}  // namespace models
