#include "models/most_to_come.h"

#include <algorithm>

namespace models {

MostToCome::MostToCome(const AlignmentPlaces& places, const LetterMatches& matches,
                       std::size_t longest)
    : places_(places.size()), up_to_((longest + 1) * places_, 0)
{
    const std::vector<double>&stays = matches.mostStays(), &steps = matches.mostSteps();
    for (std::size_t n = 0; n <= longest; ++n) {
        double* here = &up_to_[n * places_];
        if (n == 0)
            std::copy(places.end().begin(), places.end().end(), here);
        for (std::size_t p = 0; n > 0 && p < places_; ++p) {
            const double* behind = here - places_;
            here[p] = stays[p] * behind[p] + (p + 1 < places_ ? steps[p] * behind[p + 1] : 0);
        }
        places.gatherOnward(here);
    }
    from_ = up_to_;
    for (std::size_t n = 1; n <= longest; ++n)
        for (std::size_t p = 0; p < places_; ++p) {
            double& less = up_to_[n * places_ + p];
            less = std::max(less, up_to_[(n - 1) * places_ + p]);
            double& more = from_[(longest - n) * places_ + p];
            more = std::max(more, from_[(longest - n + 1) * places_ + p]);
        }
}

}  // namespace models
