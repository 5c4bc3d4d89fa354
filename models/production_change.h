#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "models/year_weights.h"

// From dated items with and without a detail: when did production change?
namespace models {

// One item on which the detail could be seen.
struct ChangeItem {
    std::string name;      // of the item, for what is told of it
    std::string maker_id;  // empty when unknown
    bool has_detail = false;
    std::vector<double> years;  // P(made in this year), by year of the range; sums to 1; dated
                                //   without the detail itself
};

enum class ChangeDirection { Introduced, GivenUp };

struct ChangeOptions {
    double interval_share = 0.9;      // of the probability, that the stated time holds
    int steps_a_year = 4;             // how finely the time is looked for
    double least_change = 0.8;        // a change less likely than this is not stated
    double widest_interval = 0.5;     // of the range: a wider interval says that nothing is known
    double makers_apart_years = 2.5;  // how far makers' changes lie apart (e-fold, either way)
};

// When the change took place, of all items or of one maker's.
struct ChangePosterior {
    std::size_t with = 0, without = 0;  // items
    double is_change = 0;               // 0 to 1: that there was one within the range
    double introduced = 0;              // 0 to 1: that the detail came in, given a change
    std::vector<double> time;           // by step: P(the middle of the change lies in it | change)
    double from = 0, to = 0;            // the shortest stated interval, in years (1938.25)
    double likeliest = 0;               // the middle of the likeliest step
    double overlap_years = 0;           // how long old and new were made side by side, mean
    bool can_say = false;
    std::string words;  // a sentence

    ChangeDirection direction() const
    {
        return introduced >= 0.5 ? ChangeDirection::Introduced : ChangeDirection::GivenUp;
    }
};

struct MakerChange {
    std::string maker_id;
    ChangePosterior change;
};

struct ProductionChange {
    YearRange range;
    int steps_a_year = 4;
    ChangePosterior pooled;
    std::vector<MakerChange> makers;  // of two items or more, in the order of maker_id
    std::vector<std::string> odd;     // items that the change does not explain, most odd first
};

// The share of items with the detail goes from none to all (or all to none) along a straight line
// of some length, the overlap (0 to 8 years), about the middle of the change; beside it, any item
// may show the other state (a repair, old stock, a slip) with a rate that is itself unknown (0.5 to
// 15 %). Times, overlaps, rates and both directions are alike before looking, and as likely as a
// change is that there was none, the share being anything and always the same. Summed over all of
// them by Bayes' rule, and over each item's years. A maker's change lies, before looking at its
// items, about where the other makers' items put it, or anywhere.
// A detail that came and went gives a change only to whichever side outweighs.
// Throws std::invalid_argument if an item's years differ from the range or sum to nothing, or an
// option is out of range. No items: every time alike.
ProductionChange findProductionChange(const std::vector<ChangeItem>& items, const YearRange& range,
                                      const ChangeOptions& options = {});

// "late 1938" for 1938.7: early, mid, late, a third each.
std::string timeInWords(double year);

}  // namespace models
