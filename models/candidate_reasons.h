#pragma once

#include <string>
#include <vector>

#include "models/candidates.h"
#include "models/maker_posterior.h"

namespace models {

// What moved one maker's probability, in words, weightiest first, each with how many times it makes
// the maker likelier or less likely beside all others; never empty.
std::vector<std::string> reasonsFor(const MakerPosterior& maker, const Posterior& posterior,
                                    const ItemEvidence& evidence,
                                    const std::vector<StampEvidence>& stamps,
                                    const MakerRegister& known, const CompiledRegister& compiled,
                                    const CandidateOptions& options);

}  // namespace models
