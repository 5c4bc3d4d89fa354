#pragma once

#include <cstddef>
#include <filesystem>
#include <string>
#include <string_view>
#include <unordered_map>

namespace vision {

// How marks are written: which kinds of characters follow which (digits with digits, a slash before
// a year). Counts of runs of kinds, made by vision/training/writing_model.py from made-up texts,
// smoothed after Witten and Bell, "The zero-frequency problem", IEEE Trans. Information Theory
// 37(4), 1991. It tells look-alikes apart that a network cannot (O and 0), and never what a name
// may be.
class WritingModel {
public:
    // Throws WeightsError if the file cannot be read or is no such table.
    static WritingModel load(const std::filesystem::path& file);

    // Kinds that stand before the place in question; the beginning of a line.
    static std::string lineBegin() { return "^"; }
    // The kind of a character; '?' for what the model does not know.
    static char kindOf(std::string_view character);
    static constexpr char line_end = '$', unknown = '?';

    // Log of P(this kind | the kinds before), spread evenly over the kind's characters; 0 for what
    // the model does not know.
    double logProbability(std::string_view before, char kind) const;

    // Log of how much likelier the kinds before make this one: P(kind | before) / P(kind); 0 for
    // what the model does not know. A network has learnt how often each character stands; this adds
    // what stands before it alone, and favours neither shorter lines nor longer ones.
    double logRatio(std::string_view before, char kind) const;

    // The same for a code: capitals and digits in any order, hardly anything else.
    double logRatioInCodes(char kind) const;

    // How many kinds before a place matter.
    std::size_t reach() const { return order_ - 1; }

private:
    struct Followers {
        double count = 0,
               kinds = 0;  // characters seen after the run, and different ones among them
    };

    double probability(std::string_view before, char kind) const;

    std::size_t order_ = 0;
    std::unordered_map<std::string, double> counts_;
    std::unordered_map<std::string, Followers> followers_;
};

}  // namespace vision
