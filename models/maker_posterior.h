#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "models/candidates.h"
#include "models/compiled_register.h"
#include "models/stamp_evidence.h"
#include "models/year_product.h"

namespace models {

// One maker, with every factor that made its probability. All are sums over years of a product with
// the maker's own share of each year, so that their quotients tell what each kind of evidence did.
// They are natural logarithms: many clear stamps multiply to more than a double holds.
struct MakerPosterior {
    std::size_t maker = 0;
    double share = 0;     // before looking: the maker's share by archive counts
    double type_fit = 0;  // how much of the maker's years suit the item type, 0 to 1
    double prior = 0;     // before looking, with the item type; all makers and the unknown sum to 1
    double log_markless = 0;  // prior x what was read, as if no mark could be seen
    double log_dated = 0;     // prior x what dates alone say
    double log_joint = 0;     // prior x all that was read
    double probability = 0;
    std::size_t best_mark = 0;  // index into the compiled marks
    bool has_marks = false;

    // How much more the letters of its marks say than text that is no mark would: a logarithm.
    double lettersFactor() const { return log_joint - log_markless; }
};

struct Posterior {
    std::vector<MakerPosterior> makers;  // in the register's order
    double unknown_maker = 1;
    // The same for the unknown maker, and for all makers and it together.
    double log_unknown_joint = 0;
    double log_all_joint = 0, log_all_markless = 0, log_all_dated = 0;
    // What the dates say beyond what other text would, by year, weighed with when the trade worked.
    std::vector<double> date_shares;
    bool has_dates = false;        // a date was read that tells years apart
    std::vector<int> plain_years;  // that lines name plainly, ascending
    // A year that was read plainly and lies beyond all that the register knows: then it has none.
    std::optional<int> year_beyond;
};

// Bayes' rule over makers and years, the unknown maker among them. What it is given must outlive
// it.
class MakerWeigher {
public:
    MakerWeigher(const std::vector<StampEvidence>& stamps, const MakerRegister& known,
                 const CompiledRegister& compiled, const ItemType* type,
                 const CandidateOptions& options);

    Posterior weigh() const;

    // P(year | maker, all that was read), by year of the range.
    std::vector<double> yearsOf(std::size_t maker) const;
    // The same of an unknown maker, who worked when the known ones did.
    std::vector<double> yearsOfUnknown() const;

private:
    void suitType(const ItemType* type);
    const std::vector<std::vector<double>>& priorYears() const
    {
        return typed_years_.empty() ? compiled_.year_shares : typed_years_;
    }
    std::vector<MakerPosterior> priors() const;
    void weighDates(Posterior& posterior) const;
    void weighYears(Posterior& posterior) const;
    void weighMarks(MakerPosterior& maker) const;
    void weighUnknown(Posterior& posterior) const;
    YearProduct jointOf(std::size_t maker) const;
    std::size_t bestMark(std::size_t maker) const;
    std::vector<double> marksOnStamp(std::size_t maker, const StampEvidence& stamp) const;
    std::vector<double> tradeYears(const std::vector<MakerPosterior>& makers) const;

    const std::vector<StampEvidence>& stamps_;
    const MakerRegister& known_;
    const CompiledRegister& compiled_;
    const CandidateOptions& options_;
    // By index of the register's shapes of years: how well the shape suits the item type, and
    // P(year | maker, item type); empty where no type is known.
    std::vector<double> type_fit_;
    std::vector<std::vector<double>> typed_years_;
    std::vector<MakerPosterior> priors_;  // before looking
    std::vector<double> trade_years_;     // how much all known makers made in each year
    // Products over all stamps.
    YearProduct dates_, markless_, other_marks_, unknown_;
    std::vector<bool> touched_;  // by maker: a stamp can hold one of its marks
};

}  // namespace models
