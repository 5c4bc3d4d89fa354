#pragma once

#include <string>

#include "models/reading.h"

namespace models {

// One line in Leiden signs (Krummrey and Panciera's conventions, in Unicode), for people:
//   [...]  [c.5]  [5-7]  [- - -]       lost: counted, about, from to, unknown (or cut off there)
//   +++  + c.5 +  + 4-6 +  + + +       traces, counted in the same ways
//   a letter and U+0323                doubtful
//   [AB]  [AB?]                        restored; restored, in doubt
//   between U+27E6 and U+27E7          erased
//   between U+00AB and U+00BB          struck over another text
//   a letter and U+0332                seen earlier, gone now
//   (property arrow)                      a symbol by name
// Letters are in the form of normalForm(); a dot below or a low line stands right behind the first
// code point of its letter and is never composed with it, so that equal readings print equal bytes.
// No unread stretch ever vanishes. Several readings can print alike: use the typed notation or TEI
// to store one.
std::string toLeiden(const Line& line);

}  // namespace models
