#pragma once

#include <optional>
#include <vector>

#include "models/candidates.h"
#include "models/maker_posterior.h"

namespace models {

// Of the likeliest makers, so many are looked at.
inline constexpr std::size_t settling_contenders = 40;

// The unread cell whose letter is expected to tell most of the maker: the mutual information of the
// letter and the maker, given all that was read (Lindley 1956). What each likely maker's marks and
// dates would show there is summed over all ways to align them; for an unknown maker it goes by the
// letter model. nullopt where no unread cell tells anything.
//   ranked  all makers, likeliest first as far as they matter
std::optional<SettlingCell> settlingCell(const ItemEvidence& evidence,
                                         const std::vector<StampEvidence>& stamps,
                                         const MakerWeigher& weigher, const Posterior& posterior,
                                         const std::vector<const MakerPosterior*>& ranked,
                                         const MakerRegister& known,
                                         const CompiledRegister& compiled);

}  // namespace models
