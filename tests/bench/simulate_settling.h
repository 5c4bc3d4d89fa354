#pragma once

#include "models/candidates.h"
#include "tests/bench/simulate_wear.h"

// What reading one more letter does for the maker: the one that the ranking names, against one
// taken by lot among the unread.
class SettlingGain {
public:
    // Ranks the mark, and again with either letter read; a mark with fewer than two unread letters
    // is left out.
    void add(const models::CandidateRanker& ranker, const SimulatedMark& mark,
             models::CandidateOptions options, Dice& dice);
    void add(const SettlingGain& others);

    std::size_t count() const { return count_; }
    // Mean probability given to the truth, and what it rises by.
    double before() const { return before_ / static_cast<double>(count_); }
    double bySettling() const { return settling_ / static_cast<double>(count_); }
    double byLot() const { return lot_ / static_cast<double>(count_); }

private:
    std::size_t count_ = 0;
    double before_ = 0, settling_ = 0, lot_ = 0;
};
