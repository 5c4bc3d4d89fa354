#pragma once

#include <optional>
#include <string>
#include <vector>

#include "models/date_bound.h"
#include "models/dating.h"
#include "models/item_type.h"
#include "models/item_words.h"
#include "models/maker_register.h"
#include "models/year_weights.h"

// Pieces of evidence from what a register and a record say. How often a piece misleads and how soft
// its limits are: common practice, no source; the constants stand at the top of date_evidence.cpp
// and mark_evidence.cpp, and the bench `dating_simulation` shows what follows from them.
namespace models {

// That the years a register gives for a period are wrong.
inline constexpr double register_slips = 0.03;

// Years in which an item of this type was made; nullopt where the register does not say.
std::optional<DateEvidence> typeEvidence(const ItemType& type, const YearRange& range);

// What a detail says. Present: made in its years, or the part is not the item's first one. Absent:
// rather not made in its years, since not every item of them has it (0.7 have). Altered later: the
// alteration was made in its years, so that the item is not younger. Cannot be seen: nothing,
// nullopt, as where the register gives no years.
std::optional<DateEvidence> featureEvidence(const Feature& feature, FeatureSeen seen,
                                            const YearRange& range);

// A dated event of a record. How long after or before the making it happens goes by its kind; the
// bound decides the side. nullopt for a bound of None and for dates without years.
struct DatedEvent {
    EventKind kind = EventKind::Made;
    DateBound bound = DateBound::Exact;
    std::string edtf;
    std::string printed;  // as it stands, or empty
};
std::optional<DateEvidence> eventEvidence(const DatedEvent& event, const YearRange& range);

// A maker that the item's letters can mean, or that somebody concluded.
struct MakerShare {
    std::string maker_id;
    std::string mark;        // a mark of it, in the typed notation; empty: any
    double probability = 0;  // all sum to at most 1, the rest is some other maker
};

// Years in which the makers worked, or used the mark. Where one is likelier than not, the others
// are what may be wrong. nullopt where no share has years in the register.
std::optional<DateEvidence> makerEvidence(const std::string& source,
                                          const std::vector<MakerShare>& shares,
                                          const MakerRegister& known, const YearRange& range);

}  // namespace models
