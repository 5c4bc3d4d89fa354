#pragma once

#include <vector>

#include "models/archive/records.h"

// What of a record still stands: nothing recorded is overwritten, so corrected readings and
// replaced attributions remain beside what corrected or replaced them.
namespace models {

// Attributions that no other one replaces, in the order of recording; rivals may stand together.
std::vector<AttributionRecord> standingAttributions(const ItemRecord& item);

// Readings of a stamp, of the object and of every view, that no other one corrects, in the order
// of recording: the object's own last.
std::vector<ReadingRecord> standingReadings(const StampRecord& stamp);

// Dated events and measurements that nobody took back, in the order of recording.
std::vector<DatedEventRecord> standingEvents(const ItemRecord& item);
std::vector<MeasurementRecord> standingMeasurements(const ItemRecord& item);

// Of each feature what was recorded last and not taken back, in the order of recording.
std::vector<FeatureSeenRecord> standingFeatures(const ItemRecord& item);

}  // namespace models
