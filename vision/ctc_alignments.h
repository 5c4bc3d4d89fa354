#pragma once

#include <cmath>
#include <cstddef>
#include <vector>

#include <opencv2/core.hpp>

#include "vision/ctc_search.h"

namespace vision {

// Forward and backward mass of one line of classes (Graves et al., "Connectionist temporal
// classification", ICML 2006): blanks at even states, place i at 2 i + 1. Masses are logarithms.
//   log_shares  CV_32F, a row a step, a column a class; not empty; must outlive the tables
//   line        classes, none 0; must outlive the tables
class AlignmentTables {
public:
    AlignmentTables(const cv::Mat& log_shares, const std::vector<int>& line)
        : seen_(log_shares), line_(line), states_(2 * line.size() + 1)
    {
        fillForward();
        fillBackward();
    }

    // Log mass of all alignments of the line with another class in one place, within its stretch.
    double withClass(std::size_t place, int of_class, const cv::Range& stretch) const;
    // The steps between the places beside it, where the place can stand.
    cv::Range stretchOf(std::size_t place) const;
    // And without that place.
    double without(std::size_t place) const;
    double whole() const { return total_; }
    // Share of the line's mass that is in this place at step t.
    double at(std::size_t place, int t) const
    {
        const std::size_t state = 2 * place + 1;
        return std::exp(forward(t, state) + backward(t, state) - total_);
    }

private:
    int classOf(std::size_t state) const { return state % 2 == 0 ? 0 : line_[state / 2]; }
    double seen(int t, int of_class) const { return seen_.at<float>(t, of_class); }
    double& forward(int t, std::size_t s)
    {
        return forward_[static_cast<std::size_t>(t) * states_ + s];
    }
    double forward(int t, std::size_t s) const
    {
        return forward_[static_cast<std::size_t>(t) * states_ + s];
    }
    double backward(int t, std::size_t s) const
    {
        return backward_[static_cast<std::size_t>(t) * states_ + s];
    }
    // A place may follow the one before it without a blank, unless it holds the same.
    bool follows(std::size_t place, int of_class) const
    {
        return place > 0 && line_[place - 1] != of_class;
    }
    double entering(int t, std::size_t place, int of_class) const;
    double leaving(int t, std::size_t place, int of_class) const;
    void fillForward();
    void fillBackward();

    const cv::Mat& seen_;
    const std::vector<int>& line_;
    std::size_t states_;
    std::vector<double> forward_, backward_;
    double total_ = never;
};

}  // namespace vision
