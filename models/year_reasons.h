#pragma once

#include <optional>
#include <string>
#include <vector>

#include "models/maker_posterior.h"

namespace models {

// Natural logarithm of a factor: what changes odds by less than 1.4 is not worth telling.
inline constexpr double worth_telling = 0.35;

// One thing that moved a maker's probability.
struct Reason {
    double weight = 0;  // natural log of the factor: above 0 for the maker, below 0 against
    std::string text;
};

// What the dates of an item say of a maker, against what they say of all makers together; nullopt
// where no date was read or the register does not say when the maker worked.
std::optional<Reason> yearReason(const MakerPosterior& maker, const Posterior& posterior,
                                 const MakerRegister& known, const CompiledRegister& compiled);

// Where a year was read in which the maker's mark was not in use.
std::optional<Reason> markYearReason(const MakerPosterior& maker, const Posterior& posterior,
                                     const CompiledRegister& compiled);

}  // namespace models
