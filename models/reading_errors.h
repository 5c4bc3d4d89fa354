#pragma once

#include "models/confusion.h"

namespace models {

// How often the letters that one kind of reader tells are others. Shares, 0 to 1.
struct LetterErrors {
    // Of a clear letter: how much of it goes by the confusion table; the rest is sure.
    double clear_slip = 0.3;
    // Of what a letter's named alternatives leave over, how much goes to what they are taken for by
    // the table; the rest to all letters.
    double look_alike_share = 0.7;
    // Of all letters, those that may be whatever letter, told just as surely.
    double any_letter = 0.005;
};

// How often readers err, as matching supposes. The defaults are a start; where a reader's own rates
// are known, they go here.
struct ReadingErrors {
    ConfusionTable confusions = ConfusionTable::published();
    // By who vouches for a cell (Cell::by). A person who types a letter looks at it, and doubts it
    // for its look-alikes; an engine can be wholly wrong and not know, and one such letter should
    // not decide against a maker whose others all fit.
    LetterErrors person, engine{0.6, 0.2, 0.05};
    double insert_rate = 0.02;  // as MatchOptions has them
    double skip_rate = 0.03;
};

}  // namespace models
