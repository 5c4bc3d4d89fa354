#pragma once

#include <string>
#include <vector>

#include "models/maker_register.h"

namespace models {

// A word as spellings compare it: in capitals, without the full stop behind it.
std::string wordKey(const std::string& word);

struct SpelledText {
    std::string text;  // plain; U+FFFD where the register itself could not read a letter
    double share = 1;  // of this spelling among those of the mark; they sum to 1
};

// A mark's text as the register gives it, which comes first, and with any of its words exchanged
// for their equals by the list (LTD for LIMITED, & for AND); the eight likeliest, likeliest first.
std::vector<SpelledText> spellingsOf(const std::string& text,
                                     const std::vector<Spelling>& spellings);

}  // namespace models
