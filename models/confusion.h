#pragma once

#include <string>
#include <unordered_map>

namespace models {

inline constexpr double characters_on_marks = 80;  // different ones

// How likely one letter is taken for another when ink is worn. Pairs come from published lists of
// look-alikes (sources in confusion.cpp); their weights are a start, to be relearnt from an
// archive's corrections.
class ConfusionTable {
public:
    // The table Weftmark starts with.
    static const ConfusionTable& published();

    // P(seen | truth) for one character each, 0 to 1; over all `seen` it sums to at most 1.
    // Case is a mild difference, not a letter's. A text of no character gives 0.
    double probability(const std::string& truth, const std::string& seen) const;

private:
    std::unordered_map<std::string, std::unordered_map<std::string, double>> look_alikes_;
};

}  // namespace models
