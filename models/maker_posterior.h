#pragma once

#include <cstddef>
#include <map>
#include <string>
#include <vector>

#include "models/candidates.h"
#include "models/compiled_register.h"
#include "models/stamp_evidence.h"

namespace models {

// One maker, with every factor that made its probability. All are sums over years of a product with
// the maker's own share of each year, so that their quotients tell what each kind of evidence did.
// Many clear stamps multiply to more than a double holds.
struct MakerPosterior {
    std::size_t maker = 0;
    double share = 0;     // before looking: the maker's share by archive counts
    double type_fit = 0;  // how much of the maker's years suit the item type, 0 to 1
    double prior = 0;     // before looking, with the item type; all makers and the unknown sum to 1
    long double markless = 0;  // prior x what was read, as if no mark could be seen
    long double dated = 0;     // prior x what dates alone say
    long double joint = 0;     // prior x all that was read
    double probability = 0;
    std::size_t best_mark = 0;  // index into the compiled marks
    bool has_marks = false;
    std::vector<double> years;        // P(year | maker, all that was read), by year of the range
    std::vector<double> prior_years;  // P(year | maker, item type)
};

struct Posterior {
    std::vector<MakerPosterior> makers;  // in the register's order
    double unknown_maker = 1;
    long double unknown_joint = 0, unknown_markless = 0, unknown_dated = 0;
    // What the dates say beyond what other text would, by year, weighed with when the trade worked.
    std::vector<double> date_shares;
    bool has_dates = false;  // a date was read that tells years apart
};

// Bayes' rule over makers and years, the unknown maker among them.
Posterior weighMakers(const std::vector<StampEvidence>& stamps, const MakerRegister& known,
                      const CompiledRegister& compiled, const ItemType* type,
                      const CandidateOptions& options);

}  // namespace models
