#pragma once

#include <string>
#include <unordered_map>
#include <vector>

#include "models/maker_register.h"
#include "models/reading.h"

// What one would do without a probability model: the likeliest string of each line against every
// mark of the register by normalised edit distance, and a regular expression for the year.
class StringBaseline {
public:
    explicit StringBaseline(const models::MakerRegister& known);

    struct Answer {
        std::vector<std::string> makers;  // nearest first, at most three
        double distance = 1;              // of the nearest: edits by the longer text's length
    };
    // Among marks equally near, those whose maker worked in the year found come first.
    Answer nearest(const models::Reading& reading) const;

private:
    struct Text {
        std::string letters;
        std::vector<std::size_t> makers;
    };
    double worked(std::size_t maker, int year) const;

    const models::MakerRegister& known_;
    std::vector<Text> texts_;  // each text once, shortest first
};
