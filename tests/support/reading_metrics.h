#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

// Figures by which readings are judged. Each answers nullopt where there is nothing to judge.
namespace metrics {

// The letters and digits of UTF-8 text as one compares them: a to z and the letters of Latin-1 in
// upper case; spaces, signs, U+FFFD and U+2026 left out. Bytes that are not UTF-8 are passed over.
std::u32string lettersAndDigits(const std::string& text);

// Levenshtein distance: fewest insertions, deletions and substitutions, each at cost 1.
std::size_t editDistance(std::u32string_view read, std::u32string_view truth);

// For each character read the place of the character of the truth it stands for, in an alignment of
// least edits (of several, the one that pairs rightmost); nullopt for one that is too many.
std::vector<std::optional<std::size_t>> partnersOf(std::u32string_view read,
                                                   std::u32string_view truth);

// Edits and reference length; sums of them give the pooled (micro) character error rate.
struct CharacterErrors {
    std::size_t edits = 0, reference = 0;

    CharacterErrors& operator+=(const CharacterErrors& other);
    // edits / reference; may exceed 1
    std::optional<double> rate() const;
};

CharacterErrors characterErrors(std::u32string_view read, std::u32string_view truth);

// One thing that was said with a certainty (0 to 1), and whether it was right.
struct Judged {
    double certainty = 0;
    bool right = false;
};

// Mean squared difference between certainty and rightness (Brier 1950, binary form).
std::optional<double> brierScore(const std::vector<Judged>& judged);

// Expected calibration error with bins of equal mass: sorted by certainty, the i-th of n falls into
// bin floor(i * bins / n); the mean of |share right - mean certainty| over the bins, weighted by
// their sizes. Of equal certainties each counts as their common share right, so that their order
// does not matter. With fewer samples than bins each is a bin of its own.
// Throws std::invalid_argument if `bins` is less than 1.
std::optional<double> calibrationError(std::vector<Judged> judged, int bins = 15);

// Share of the `wanted` things that are right and accepted when everything of at least one certain
// threshold is accepted; the threshold is the lowest at which at least `precision` of what is
// accepted is right. 0 when there is none such. Equal certainties stand or fall together.
//   wanted    how many there were to find, those that were never said included
std::optional<double> coverageAtPrecision(std::vector<Judged> judged, std::size_t wanted,
                                          double precision);

// What is taken without another look: certainty of at least this much.
inline constexpr double sure = 0.9;

// Of 100 said, how many are wrong though sure.
std::optional<double> wrongButSurePer100(const std::vector<Judged>& judged);

// Share of what is right that is sure.
std::optional<double> rightThatAreSure(const std::vector<Judged>& judged);

// Share of the ranks that are at most `k`. A rank counts from 1; 0 stands for "not listed".
std::optional<double> topShare(const std::vector<int>& ranks, int k);

}  // namespace metrics
