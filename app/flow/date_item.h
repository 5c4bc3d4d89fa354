#pragma once

#include <functional>
#include <vector>

#include "app/flow/ranking.h"
#include "models/archive/records.h"
#include "models/item_dating.h"
#include "models/production_change.h"

// From filed records to datings; the command line and the window both date so.
namespace flow {

// What of a record speaks of dates: each stamp once, by the reading of it that a person made last,
// else by its engines' joint reading of the view that they are surest of; facts that still stand;
// makers that standing attributions name. Dates that somebody attributed are no evidence.
models::DatedItem datedItem(const models::ItemRecord& record);

// Ranks what letters can mean, as models::DateItemOptions ask for it.
using LetterRanking = std::function<models::CandidateList(const models::ItemEvidence&)>;

// The dating of a record, by a register that is kept ready. A type that the register does not know
// (any more) is left out.
std::vector<models::PartDating> dateRecord(const models::ItemRecord& record,
                                           const models::MakerRegister& known,
                                           const Ranking& ranking);

// One of the records on which the feature can be seen, dated without it, for
// models::findProductionChange; of the maker that is likelier than not, as concluded or else by the
// letters. `range` is that of the change; nothing for an item that says nothing within it, or does
// not say whether it has the feature.
std::optional<models::ChangeItem> changeItem(const models::ItemRecord& record,
                                             const std::string& feature_id,
                                             const models::MakerRegister& known,
                                             const models::YearRange& range,
                                             const LetterRanking& rank_letters = {});

}  // namespace flow
