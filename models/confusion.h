#pragma once

#include <memory>
#include <string>
#include <unordered_map>
#include <vector>

namespace models {

inline constexpr double characters_on_marks = 80;  // different ones
// Letters of other scripts and signs are read so many times less often where another letter stood.
inline constexpr double seldom_on_marks = 0.002;
// Is it one of those that marks commonly hold: of ASCII, or the property arrow?
bool isOnMarks(const std::string& character);

// Two characters that are taken for each other, either way, in this share of the cases where one of
// them stood.
struct LookAlike {
    std::string a, b;
    double share = 0;  // 0 to 1
};

// How likely one letter is taken for another when ink is worn. Pairs come from published lists of
// look-alikes (sources in confusion.cpp), those of one letter for one: a cell holds one character,
// and two that are taken for one (rn for m) are a letter that left no cell. Their weights are a
// start, to be relearnt from an archive's corrections (confusion_learning.h). Copies share their
// table.
class ConfusionTable {
public:
    // The table Weftmark starts with.
    static const ConfusionTable& published();

    // Of these pairs, whose shares for one letter should stay well below 1 together; else
    // std::invalid_argument.
    explicit ConfusionTable(const std::vector<LookAlike>& pairs);

    // P(seen | truth) for one character each, 0 to 1; over all `seen` it sums to at most 1.
    // Case is a mild difference, not a letter's. A text of no character gives 0.
    double probability(const std::string& truth, const std::string& seen) const;
    // The same for each of many letters that may have stood there.
    std::vector<double> probabilities(const std::vector<std::string>& truths,
                                      const std::string& seen) const;

    // The letters that are taken for others beyond chance, in the order of their bytes.
    std::vector<std::string> letters() const;

    // For one letter that stood there, what it is taken for beyond chance, likeliest first.
    std::vector<std::pair<std::string, double>> takenFor(const std::string& truth) const;

    // This table with the share of one way changed: what stood there, and what was seen for it.
    void set(const std::string& truth, const std::string& seen, double share);

private:
    using Shares = std::unordered_map<std::string, double>;  // by letter
    struct Row {
        Shares of_seen;
        double sum = 0;
    };
    struct Table {
        std::unordered_map<std::string, Row> rows;          // by what stood there
        std::unordered_map<std::string, Shares> of_truths;  // the same shares by what was seen
    };

    std::shared_ptr<const Table> table_;
};

}  // namespace models
