#pragma once

#include <string>
#include <vector>

#include "tests/support/dice.h"

// The text of an invented mark, one to three lines of capitals and digits (UTF-8): makers by name
// or initials, with dots, & and the usual endings; years, months and years, sizes, contract and
// inspection numbers. With `arrow` some carry the property arrow, U+2191. Names are put together
// from syllables; they are not those of the demo register.
std::vector<std::string> markText(Dice& dice, bool arrow);
