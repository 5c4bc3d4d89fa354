#pragma once

#include <string>
#include <vector>

namespace bench {

// One thing judged: its traits without the constant, and whether it was right.
struct Sample {
    std::vector<double> traits;
    bool right = false;
    int group = 0;  // samples of one photo share a group: they are held out together
};

// Ridge logistic regression by Newton's method: the constant first, then one weight a trait.
//   ridge    penalty on the squared weights, not on the constant
// Throws std::invalid_argument when the samples are empty or of unequal length.
std::vector<double> fitLogistic(const std::vector<Sample>& samples, double ridge);

double probability(const std::vector<double>& weights, const std::vector<double>& traits);

// Each sample's probability under weights fitted on the other four fifths of the groups.
std::vector<double> crossFitted(const std::vector<Sample>& samples, double ridge);

// Prints for steps of probability how many samples were given it and how many of them were right.
void printReliability(const std::vector<Sample>& samples, const std::vector<double>& probabilities);

void printWeights(const std::vector<std::string>& names, const std::vector<double>& weights);

}  // namespace bench
