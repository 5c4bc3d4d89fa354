#pragma once

#include <string>
#include <vector>

#include "models/dating.h"

// What a dating says, in words.
namespace models {

// "7 %"; "under 1 %", "over 99 %" at the ends.
std::string percentInWords(double share);

// How a piece moved the result, against `without` (by year of the dating's range).
std::string moveInWords(const Dating& dating, const std::vector<double>& without,
                        const EvidenceWeight& weight);

// "the 8 may be a 3 (1943 read as 1948)"
std::string misreadInWords(int read, int printed);

// "; likeliest the figures are no date of its making (75 %)"
std::string openInWords(const EvidenceCase& open, double share);

// A sentence that names the piece, what is likeliest wrong with it and how likely that is: "stamp
// 1, 1948: 92 % that it misleads; likeliest a digit was misread (79 %), soonest the 8 may be a 0
// (1940 read as 1948)".
std::string culpritInWords(const DateEvidence& piece, const EvidenceCase& likeliest,
                           const Culprit& culprit);

// The word under which JSON gives a fault: "misread", "register wrong".
const char* nameOf(EvidenceFault fault);

// The result in a sentence: "1943, with 88 %", "one of 1940 to 1946; 1943 is likeliest, with 41 %".
std::string datingInWords(const Dating& dating);

}  // namespace models
