#pragma once

#include <limits>
#include <string>
#include <string_view>
#include <vector>

#include "vision/ctc_decode.h"

namespace vision {

// How much likelier the writing so far is than its characters by themselves, log, in two ways of
// writing: as marks are written, and as codes that follow no rule.
struct WritingSums {
    double marks = 0, codes = 0;
};

// How likely classes follow each other, with the weight it has in a decision; nothing (log 1)
// without a model. A line is written in one of two ways as a whole: what is no mark soon counts as
// a code, of which the model says next to nothing.
class WritingWeight {
public:
    WritingWeight(const LineClasses& classes, const WritingModel* model, double weight);

    char kindOf(int of_class) const { return kinds_[static_cast<std::size_t>(of_class)]; }
    WritingSums added(WritingSums sums, std::string_view before, char kind) const;
    double log(const WritingSums& sums) const;
    // Of a whole line: all its kinds and its end.
    WritingSums ofLine(const std::vector<int>& line) const;
    // Of the line with each of the classes asked about in one place, given the sums of the line as
    // it is.
    std::vector<WritingSums> withClasses(const std::vector<int>& line, const WritingSums& sums,
                                         std::size_t place, const std::vector<int>& asked) const;
    std::size_t reach() const { return model_ ? model_->reach() : 0; }

private:
    WritingSums around(const std::string& kinds, std::size_t at) const;
    std::string kindsOf(const std::vector<int>& line) const;

    const WritingModel* model_;
    double weight_;
    std::string kinds_;  // by class
};

struct SearchedLine {
    std::vector<int> classes;  // without blanks
    double log_score = 0;      // log P(line | seen) plus the weight of its writing
};

// Prefix beam search; best first, at most `beam` lines.
std::vector<SearchedLine> likeliestLines(const cv::Mat& log_shares, const WritingWeight& writing,
                                         int beam);

// The logarithm of nothing.
inline constexpr double never = -std::numeric_limits<double>::infinity();

// log(exp(a) + exp(b)), without loss where one is -infinity.
double logSum(double a, double b);

}  // namespace vision
