#pragma once

#include "models/confusion.h"

namespace models {

// How often readers err, as matching supposes. The defaults are a start; where a reader's own rates
// are known, they go here.
struct ReadingErrors {
    ConfusionTable confusions = ConfusionTable::published();
    // Of a clear letter: how much of it goes by the confusion table; the rest is sure, 0 to 1.
    double clear_slip = 0.3;
    // Of the letters that are read, those that may be whatever letter, told just as surely, 0 to 1.
    // One letter that is wholly wrong should not decide against a maker whose others all fit.
    double any_letter = 0.005;
    double insert_rate = 0.02;  // as MatchOptions has them
    double skip_rate = 0.02;
};

}  // namespace models
