#pragma once

#include <limits>
#include <string>
#include <string_view>
#include <vector>

#include "vision/ctc_decode.h"

namespace vision {

// How likely classes follow each other on marks, with the weight it has in a decision; nothing
// (log 1) without a model.
class WritingWeight {
public:
    WritingWeight(const LineClasses& classes, const WritingModel* model, double weight);

    char kindOf(int of_class) const { return kinds_[static_cast<std::size_t>(of_class)]; }
    double log(std::string_view before, char kind) const;
    // Of a whole line: the weights of all its kinds and of its end.
    double ofLine(const std::vector<int>& line) const;
    // What changes with one place: its own weight and that of the places that it stands before.
    double around(const std::vector<int>& line, std::size_t place, int of_class) const;
    std::size_t reach() const { return model_ ? model_->reach() : 0; }

private:
    const WritingModel* model_;
    double weight_;
    std::string kinds_;  // by class
};

struct SearchedLine {
    std::vector<int> classes;  // without blanks
    double log_score = 0;      // log P(line | seen) plus the weight of its writing
};

// Prefix beam search; best first, at most `beam` lines.
std::vector<SearchedLine> searchLines(const cv::Mat& log_shares, const WritingWeight& writing,
                                      int beam);

// The logarithm of nothing.
inline constexpr double never = -std::numeric_limits<double>::infinity();

// log(exp(a) + exp(b)), without loss where one is -infinity.
double logSum(double a, double b);

}  // namespace vision
