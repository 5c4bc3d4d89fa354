#pragma once

#include <array>
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include "models/candidates.h"

// How good a series of answers was, each a list of makers with an "unknown maker" among them.
class AnswerScores {
public:
    // `maker_id` is the truth; empty: a maker that the register does not hold.
    void add(const models::CandidateList& list, const std::string& maker_id);

    void add(const AnswerScores& others);

    double top1() const { return right_first_ / count_; }  // of all answers; "unknown" is one
    double top3() const { return right_of_three_ / count_; }
    // Mean squared distance of the probabilities given from the truth, over all answers that there
    // are: 0 to 2 (Brier 1950).
    double brier() const { return brier_ / count_; }
    // The first answer's probability and how often it was right, in ten bins of equal width.
    struct Bin {
        double count = 0, given = 0, right = 0;  // sums over the answers in it
        double variance = 0;                     // of `right`, were the probabilities true
    };
    std::array<Bin, 10> reliability() const;
    // The mean gap of the two, weighed by count.
    double calibrationError() const;
    // What that gap is expected to be of so many answers, were each probability given the true one.
    double calibrationErrorByChance() const;

private:
    double count_ = 0, right_first_ = 0, right_of_three_ = 0, brier_ = 0;
    std::vector<std::pair<double, bool>> first_;  // the probability given, and was it right
};

// That a stranger's score is above a known one's, ties half: area under the curve of a test by
// score. 0.5 where one kind is missing.
class Separation {
public:
    void add(double score, bool stranger) { scores_.emplace_back(score, stranger); }
    void add(const Separation& others)
    {
        scores_.insert(scores_.end(), others.scores_.begin(), others.scores_.end());
    }
    double area() const;
    std::size_t count() const { return scores_.size(); }
    bool hasBoth() const;  // of those that are to be told apart

private:
    std::vector<std::pair<double, bool>> scores_;
};

double percentile(std::vector<double> values, double share);
