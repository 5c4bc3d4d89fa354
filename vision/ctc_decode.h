#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include <opencv2/core.hpp>

#include "vision/writing_model.h"

namespace vision {

// The classes of a line network: 0 is the blank of connectionist temporal classification, then come
// the characters, then traces (something stands, it cannot be told) and lost (nothing is left where
// a letter stood).
struct LineClasses {
    std::vector<std::string> characters;  // class k is characters[k - 1], UTF-8

    int traces() const { return static_cast<int>(characters.size()) + 1; }
    int lost() const { return traces() + 1; }
    int count() const { return traces() + 2; }
    int classOf(const std::string& character) const;  // 0: there is none
    int space() const { return classOf(" "); }
    bool isCharacter(int of_class) const { return of_class > 0 && of_class < traces(); }
    // The class of a small letter's capital, A to Z; any other class as it is.
    int capitalOf(int of_class) const;
};

struct ClassShare {
    int of_class = 0;
    double share = 0;  // 0 to 1
};

// One place of the line.
struct DecodedPlace {
    std::vector<ClassShare> shares;  // best first; they sum to at most 1, the rest: nothing is here
    double first_step = 0, end_step = 0;  // first_step <= t < end_step of the network's steps
};

struct DecodedLine {
    std::vector<DecodedPlace> places;
    double share = 0;  // of the whole line, its letters' case aside, among all that the search
                       //   kept, 0 to 1
    double seen = 0;   // share of the line among all there are, by what is seen alone, 0 to 1
};

struct DecodeOptions {
    int beam = 24;                // lines kept while searching
    double writing_weight = 0.1;  // of how marks are written against what is seen; 0: not asked
};

// The likeliest line by prefix beam search (Graves and Jaitly, "Towards end-to-end speech
// recognition with recurrent neural networks", ICML 2014), and for each of its places what else may
// stand there, summed over all alignments by the forward and backward tables of Graves et al.,
// "Connectionist temporal classification", ICML 2006.
//   log_shares  CV_32F, a row a step along the line, a column a class, log probabilities
//   writing     may be nullptr
//   returns     no places where nothing stands
// Throws std::invalid_argument if the table's type or width does not fit, or an option is out of
// range.
DecodedLine decodeLine(const cv::Mat& log_shares, const LineClasses& classes,
                       const WritingModel* writing, const DecodeOptions& options = {});

}  // namespace vision
