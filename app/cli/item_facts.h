#pragma once

#include <optional>
#include <string>

#include "models/archive/records.h"

// Facts of an item as they are typed after an option of `weftmark item`. Each throws UsageError, a
// sentence with the remedy, for what it cannot understand.
namespace cli {

// "end-tab=present", "end-tab=absent", "end-tab=hidden" (cannot be seen), "end-tab=altered".
models::FeatureSeenRecord featureFrom(const std::string& typed);

// "length=914 mm", "width=2 1/4 in, tape", "width=2.25\"": what, value, unit (mm, cm or in) and how
// it was measured.
models::MeasurementRecord measurementFrom(const std::string& typed);

// "inspected=1943", "contract=1938..1940"; the bound goes by the kind. With ", stamp 2" it was read
// from that stamp (1 is the first), whose number is returned beside it.
struct TypedEvent {
    models::DatedEventRecord event;
    std::optional<std::size_t> stamp;  // 1 or more
};
TypedEvent eventFrom(const std::string& typed);

models::StampPart partFrom(const std::string& typed);
models::StampMethod methodFrom(const std::string& typed);

}  // namespace cli
