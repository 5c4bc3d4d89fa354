#pragma once

#include <string>
#include <vector>

#include "models/date_forms.h"
#include "models/date_mark.h"

namespace models {

struct WrittenDate {
    std::string edtf;        // empty when no year fits
    std::vector<int> years;  // ascending, within the bounds
};

// What a date instance says in EDTF: unread digits as X, digits that can be one or another as a
// set, doubtful digits with a question mark behind each date, a century only where it was printed
// or the context's years leave one.
WrittenDate writeDate(const DateInstance& instance, const DateContext& context);

}  // namespace models
