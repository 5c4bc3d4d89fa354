#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include "tests/support/synthetic_stamp.h"

// The standing test set `drawn-marks`: photographs of marks whose capitals are 20 px high, on
// cloth and leather of all kinds, tilted and seen a little from the side; a hundred at each of
// three contrasts, 0.15, 0.25 and 0.40 of the cloth's brightness. The hundred are the same at each
// contrast, so that nothing but the contrast differs. Drawn on demand from a fixed list of seeds;
// nothing is ever to be trained or tuned on them.
struct DrawnMark {
    std::string id;  // drawn-CONTRAST-SEED
    double contrast = 0;
    synthetic::SceneOptions scene;  // for synthetic::drawPhoto; one stamp, its lines are the truth
};

// The contrasts of the set, faintest first.
std::vector<double> drawnMarkContrasts();

// The hundred marks at a contrast, in the order of the seeds.
//   contrast  of ink against the cloth beside it, as a share of the cloth's brightness; any that
//             fresh ink can reach (up to 0.40 is safe), not only those of the set
// Throws std::invalid_argument for a contrast outside 0.02 to 0.9.
std::vector<DrawnMark> drawnMarks(double contrast);

// Others of the same kind, of the seeds first_seed and on, to fit, to tune or to measure more on;
// the seeds of the standing set are passed over.
std::vector<DrawnMark> otherMarks(double contrast, std::uint32_t first_seed, std::size_t count);
