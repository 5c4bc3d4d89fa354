#include "tests/bench/logistic_fit.h"

#include <cmath>
#include <iomanip>
#include <iostream>
#include <stdexcept>

#include <opencv2/core.hpp>

namespace bench {

namespace {

cv::Mat design(const std::vector<Sample>& samples)
{
    const std::size_t width = samples.front().traits.size() + 1;
    cv::Mat rows(static_cast<int>(samples.size()), static_cast<int>(width), CV_64FC1);
    for (std::size_t i = 0; i < samples.size(); ++i) {
        if (samples[i].traits.size() + 1 != width)
            throw std::invalid_argument("fitLogistic: samples of unequal length");
        auto* row = rows.ptr<double>(static_cast<int>(i));
        row[0] = 1;
        for (std::size_t k = 1; k < width; ++k)
            row[k] = samples[i].traits[k - 1];
    }
    return rows;
}

}  // namespace

std::vector<double> fitLogistic(const std::vector<Sample>& samples, double ridge)
{
    if (samples.empty())
        throw std::invalid_argument("fitLogistic: no samples");
    const cv::Mat x = design(samples);
    cv::Mat weights = cv::Mat::zeros(x.cols, 1, CV_64FC1);
    cv::Mat penalty = cv::Mat::eye(x.cols, x.cols, CV_64FC1) * ridge;
    penalty.at<double>(0, 0) = 1e-6;
    for (int round = 0; round < 50; ++round) {
        const cv::Mat logits = x * weights;
        cv::Mat weighted = x.clone(), misses(x.rows, 1, CV_64FC1);
        for (int i = 0; i < x.rows; ++i) {
            const double p = 1 / (1 + std::exp(-logits.at<double>(i)));
            misses.at<double>(i) = (samples[static_cast<std::size_t>(i)].right ? 1 : 0) - p;
            weighted.row(i) *= std::max(p * (1 - p), 1e-6);
        }
        const cv::Mat slope = x.t() * misses - penalty * weights;
        cv::Mat step;
        cv::solve(x.t() * weighted + penalty, slope, step, cv::DECOMP_CHOLESKY);
        weights += step;
        if (cv::norm(step, cv::NORM_INF) < 1e-7)
            break;
    }
    return {weights.begin<double>(), weights.end<double>()};
}

double probability(const std::vector<double>& weights, const std::vector<double>& traits)
{
    double logit = weights.front();
    for (std::size_t k = 0; k < traits.size(); ++k)
        logit += weights[k + 1] * traits[k];
    return 1 / (1 + std::exp(-logit));
}

std::vector<double> crossFitted(const std::vector<Sample>& samples, double ridge)
{
    constexpr int folds = 5;
    std::vector<double> result(samples.size());
    for (int fold = 0; fold < folds; ++fold) {
        std::vector<Sample> others;
        for (const Sample& sample : samples)
            if (sample.group % folds != fold)
                others.push_back(sample);
        const std::vector<double> weights = fitLogistic(others, ridge);
        for (std::size_t i = 0; i < samples.size(); ++i)
            if (samples[i].group % folds == fold)
                result[i] = probability(weights, samples[i].traits);
    }
    return result;
}

void printReliability(const std::vector<Sample>& samples, const std::vector<double>& probabilities)
{
    const std::vector<double> steps{0, 0.05, 0.2, 0.4, 0.6, 0.8, 0.9, 0.95, 1.0001};
    double loss = 0;
    for (std::size_t i = 0; i < samples.size(); ++i) {
        const double given = samples[i].right ? probabilities[i] : 1 - probabilities[i];
        loss -= std::log(std::max(given, 1e-9));
    }
    std::cout << "given -> right (of how many)\n" << std::fixed << std::setprecision(3);
    for (std::size_t k = 0; k + 1 < steps.size(); ++k) {
        double sum = 0;
        int count = 0, right = 0;
        for (std::size_t i = 0; i < samples.size(); ++i)
            if (probabilities[i] >= steps[k] && probabilities[i] < steps[k + 1]) {
                sum += probabilities[i];
                right += samples[i].right ? 1 : 0;
                ++count;
            }
        if (count > 0)
            std::cout << "  " << sum / count << " -> " << static_cast<double>(right) / count
                      << "  (" << count << ")\n";
    }
    std::cout << "mean log loss " << loss / static_cast<double>(samples.size()) << '\n';
}

void printWeights(const std::vector<std::string>& names, const std::vector<double>& weights)
{
    for (std::size_t k = 0; k < weights.size(); ++k)
        std::cout << "  " << std::setw(18) << std::left << (k == 0 ? "constant" : names.at(k - 1))
                  << std::right << std::setw(9) << weights[k] << '\n';
}

}  // namespace bench
