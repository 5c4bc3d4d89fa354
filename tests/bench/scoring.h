#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "tests/bench/bench_sets.h"
#include "tests/bench/read_marks.h"
#include "tests/support/reading_metrics.h"

// How what was read is set against what is true.
//
// Place first: a line read lies on a true line when their common area, in photo pixels, is at least
// half of the smaller one (engines box the ink, truths the letters or a stamp's outline). Then
// text: of all pairs that lie so, those of fewest edits for the true line's length are taken first,
// on equal terms those that cover each other more; each line is in one pair at most.
//
// A line is right when its text is the true one but for case and runs of spaces. A line read that
// is in no pair is a false line; where not everything is labelled, only if it lies on a line that
// is: the label's box of a tilted line has room for other text. Character errors count letters and
// digits, case folded, over all true lines, a line not read as all its letters; false lines are not
// in them. Cells are letters and digits read; they are right where an alignment of least edits
// pairs them with the same character. Cells that a reader left unread are not among them; those of
// false lines are, as wrong.
namespace bench {

struct Verdict {
    std::optional<std::size_t> truth, read;  // places in the picture's lines and among those read
    bool right = false;
};

// First the true lines in their order, then the false ones.
std::vector<Verdict> judge(const Picture& picture, const ReadPicture& read);

struct Score {
    std::size_t pictures = 0, lines = 0, exact = 0, false_lines = 0;
    std::size_t misled = 0;  // pictures with a false line of certainty 0.5 or more
    bool all_labelled = true;
    metrics::CharacterErrors characters;
    std::vector<metrics::Judged> judged_lines, judged_cells;
    std::vector<int> maker_ranks;  // of the true maker, where there is one; 0: not listed
};

Score scoreOf(const std::vector<Picture>& pictures, const std::vector<ReadPicture>& reads);

}  // namespace bench
