#pragma once

#include <string>
#include <vector>

namespace vision {

// A probability from traits: 1 / (1 + exp(-(constant + sum of weight times value))). The weights
// are fitted by the bench program `calibration`, which prints them by these names.
struct LogisticModel {
    struct Term {
        std::string name;
        double weight = 0;
    };
    double constant = 0;
    std::vector<Term> terms;

    // `values` in the order of the terms. Throws std::invalid_argument if there are more or fewer.
    double probability(const std::vector<double>& values) const;
};

}  // namespace vision
