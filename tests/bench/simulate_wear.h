#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "models/reading.h"
#include "models/reading_errors.h"
#include "tests/bench/simulate_trade.h"
#include "tests/support/dice.h"

// What wear and readers do to the letters of a stamp. Shares of letters, 0 to 1.
struct Wear {
    double lost = 0, traces = 0, doubtful = 0;  // as cells say it
    double gone = 0.01;                         // no cell stands for the letter
    double stray = 0.01;                        // a cell stands for no letter
    double slip = 0.03;                         // of clear letters: taken for a look-alike
    double doubtful_right = 0.6;  // of doubtful ones: the first letter named is the right one
    double any_letter = 0;        // of all that are read: whatever letter, told just as surely
    double cut = 0.1;             // of mark lines: the hem has taken an end
};

// Of letters that slip, those that look nothing like the one that stood there.
inline constexpr double slip_is_any_letter = 0.15;

// Whatever letter may be seen on a stamp, by lot.
std::string anyLetterSeen(Dice& dice);

struct WearLevel {
    const char* name;
    Wear wear;
};

// From nearly whole to hardly anything.
const std::array<WearLevel, 5>& wearLevels();

// Losses doubled, one letter in twenty whatever letter, told just as surely.
Wear mismatched(Wear wear);

// One letter taken for another.
struct LookAlikePair {
    std::string a, b;
};

// The pairs with which the ranking starts, and others: each letter with two chosen by lot.
std::vector<LookAlikePair> startingPairs();
std::vector<LookAlikePair> otherPairs();

// What a matcher knows who knows the wear: these error rates.
models::ReadingErrors errorsOf(const Wear& wear, const std::vector<LookAlikePair>& look_alikes);
// What one knows who knows how often letters are taken for others, but not for which.
models::ReadingErrors errorsWithoutTable(const Wear& wear);

// A stamp with its truth.
struct SimulatedMark {
    models::Reading reading;
    std::string maker_id;  // empty: a maker that the register does not hold
    int year = 0;
    std::vector<std::string> lines;  // what was stamped, by line of the reading
    // The letter behind each cell, by line and cell; empty for a stray one.
    std::vector<std::vector<std::string>> letters;
    double legible = 0;  // share of the mark's letters that can be read
    bool names = false;  // the mark holds a word of five letters or more
};

// A stamp of a maker (one in five a stranger), in one of its years, with its mark in one spelling,
// perhaps a date and perhaps another line, in any order, worn.
SimulatedMark simulateMark(const SimulatedTrade& trade, const Wear& wear,
                           const std::vector<LookAlikePair>& look_alikes, Dice& dice);
