#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "models/date_evidence.h"
#include "models/dating.h"
#include "models/maker_register.h"
#include "models/mark_evidence.h"

// From everything known of one item to when it, and each part that is not its own, was made.
namespace models {

struct ItemStamp : StampSeen {
    StampPart part = StampPart::Unknown;  // Body and Unknown speak for the item, others for their
                                          //   part alone
};

struct ItemEvent : DatedEvent {
    std::optional<std::size_t> stamp;  // index of the stamp that it was read from
};

struct ItemFeature {
    std::string feature_id;
    FeatureSeen seen = FeatureSeen::CannotBeSeen;
};

// A maker that somebody concluded.
struct MakerConcluded {
    std::string maker_id, mark;
    Certainty certainty = Certainty::Possible;
};

struct DatedItem {
    std::string type_id;            // empty when not said
    std::vector<ItemStamp> stamps;  // each once, in however many photos it is
    std::vector<ItemEvent> events;
    std::vector<ItemFeature> features;
    std::vector<MakerConcluded> makers;  // rivals may stand; none: the letters of the stamps tell
};

struct DateItemOptions {
    DatingOptions dating;
    std::string without_feature;  // a feature's id whose evidence is left out
    // Ranks what letters can mean; empty: rankCandidates by the same register. Where there are
    // several items, give one that keeps the register made ready.
    std::function<CandidateList(const ItemEvidence&)> rank_letters;
};

// The dating of the item's body, or of one part that is dated on its own.
struct PartDating {
    std::string name;  // "the item", or the stamp's name and its part
    bool is_item = true;
    std::vector<DateEvidence> evidence;
    Dating dating;
    std::vector<std::string> silent;  // what was looked at and says nothing, with why
    std::vector<MakerShare> makers;   // as concluded, or else by the letters; not in order
};

// The item itself first; then every stamp on a fitting, lining or replaced part, which does not
// speak for the item. A dated event that was read from a stamp stands for that stamp's own dates. A
// date that somebody concluded is no evidence and is not asked for.
// Throws std::invalid_argument if the type is not in the register or an option is out of range.
std::vector<PartDating> dateItem(const DatedItem& item, const MakerRegister& known,
                                 const DateItemOptions& options = {});

// The years that the item is dated within: those of the register, and all that its dates reach.
YearRange datingRange(const DatedItem& item, const MakerRegister& known);

}  // namespace models
