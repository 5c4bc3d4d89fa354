#pragma once

#include <cstdint>
#include <vector>

#include "models/compiled_register.h"

namespace models {

struct MarkOdds {
    std::uint32_t mark = 0;  // index into the compiled marks
    double odds = 0;         // P(cells | this mark among them) / P(cells | other text)
};

// What a mark must come to, to be looked for in one stretch of a stamp.
struct MarkLimits {
    double least = 0.01;    // odds x worth below which it changes nothing
    double of_best = 1e-4;  // share of the best odds x worth, likewise
    double to_beat = 0;     // odds x worth of the best mark known so far, told for this stretch
    // How well the stamp's dates suit each mark's maker, 0 to 1, by number of the tries' texts.
    const std::vector<double>* worth = nullptr;
};

// The odds of those marks of the register that a stretch of cells can hold, ascending, each mark
// once. `cells` are odds (cellsAsOdds). Left out are marks below the least odds x worth and those
// below a share of the best odds x worth. Cells of which no letter was read tell no mark.
// Where a text may be cut at both ends and neither was seen to be, being cut at both is left out
// too.
std::vector<MarkOdds> findMarks(const CompiledRegister& known,
                                const std::vector<AlignedCell>& cells, const AlignmentPlan& plan,
                                const MarkLimits& limits);

// How many cells say which letter stood there; a space or a full stop hardly tells marks apart.
// Where there is none, no mark is likelier for it, known or unknown.
std::size_t lettersRead(const std::vector<AlignedCell>& cells);

// P(a length of text) of texts that are no mark: odds are divided by it.
inline constexpr double length_share = 0.1;

}  // namespace models
