#pragma once

#include <vector>

#include <opencv2/core.hpp>

#include "models/reading.h"
#include "vision/ink.h"
#include "vision/logistic_model.h"
#include "vision/raw_symbol.h"

namespace vision {

// One line as it was read from two renderings of it.
struct LineReadings {
    std::vector<RawSymbol> chosen, other;  // the one with the higher mean score is chosen
    cv::Rect2d box;                        // rectified pixels
    InkEvidence ink;
};

// What a line's certainty is judged by. A score's surprise is -log(1 - score).
struct LineTraits {
    double mean_surprise = 0;   // of the chosen rendering's mean score
    double least_surprise = 0;  // of its lowest score
    double log_letters = 0;
    double same = 0;          // 1 if both renderings gave one text, else 0
    double agreement = 0;     // 1 minus their edit distance over the longer length
    double oddness = 0;       // how far it looks like no text: letters, digits and signs mixed
    double log_step = 0;      // of the ink's step from its ground
    double pitch_misfit = 0;  // |log| of room a letter over the usual three quarters of its height
};

// What one cell's certainty is judged by.
struct CellTraits {
    double surprise = 0;  // of its own score
    double agreed = 0;    // 1 if the other rendering has the same character here, else 0
    double line_surprise = 0;
    double oddness = 0;  // the line's
    double log_step = 0;
};

// Whether there is ink enough to ask an engine at all: engines read letters into bare cloth.
bool inkStands(const InkEvidence& ink);

// Sorts the two readings into chosen and other.
LineReadings lineReadings(std::vector<RawSymbol> first, std::vector<RawSymbol> second,
                          const cv::Rect2d& box, const InkEvidence& ink);

// `readings.chosen` must not be empty.
LineTraits lineTraits(const LineReadings& readings);
std::vector<CellTraits> cellTraits(const LineReadings& readings);

// The models of a line's and a cell's certainty, and traits as the values of their terms.
const LogisticModel& lineModel();
const LogisticModel& cellModel();
std::vector<double> termsOf(const LineTraits& traits);
std::vector<double> termsOf(const CellTraits& traits);

// The line of cells with calibrated certainties: a space cell between words, cells that are sure
// Clear, others Doubtful, Traces where ink stands but nothing credible was read. What only the
// other rendering saw is among a cell's alternatives.
//   by       which reader vouches for the cells
models::Line lineFrom(const LineReadings& readings, const std::string& by);

}  // namespace vision
