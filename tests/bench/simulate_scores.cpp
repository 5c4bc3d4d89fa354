#include "tests/bench/simulate_scores.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

void AnswerScores::add(const models::CandidateList& list, const std::string& maker_id)
{
    struct Given {
        double probability;
        bool right;
    };
    std::vector<Given> given = {{list.unknown_maker, maker_id.empty()}};
    double of_truth = maker_id.empty() ? list.unknown_maker : 0;
    double squares = list.unknown_maker * list.unknown_maker;
    for (const models::Candidate& candidate : list.candidates) {
        given.push_back({candidate.probability, candidate.maker_id == maker_id});
        squares += candidate.probability * candidate.probability;
        if (candidate.maker_id == maker_id)
            of_truth = candidate.probability;
    }
    std::stable_sort(given.begin(), given.end(),
                     [](const Given& a, const Given& b) { return a.probability > b.probability; });
    count_ += 1;
    right_first_ += given.front().right ? 1 : 0;
    for (std::size_t i = 0; i < given.size() && i < 3; ++i)
        right_of_three_ += given[i].right ? 1 : 0;
    brier_ += squares - 2 * of_truth + 1;
    first_.emplace_back(given.front().probability, given.front().right);
}

void AnswerScores::add(const AnswerScores& others)
{
    count_ += others.count_;
    right_first_ += others.right_first_;
    right_of_three_ += others.right_of_three_;
    brier_ += others.brier_;
    first_.insert(first_.end(), others.first_.begin(), others.first_.end());
}

std::array<AnswerScores::Bin, 10> AnswerScores::reliability() const
{
    std::array<Bin, 10> bins{};
    for (const auto& [probability, was_right] : first_) {
        Bin& bin = bins[std::min(bins.size() - 1, static_cast<std::size_t>(probability * 10))];
        bin.count += 1;
        bin.given += probability;
        bin.right += was_right ? 1 : 0;
        bin.variance += probability * (1 - probability);
    }
    return bins;
}

double AnswerScores::calibrationError() const
{
    double error = 0;
    for (const Bin& bin : reliability())
        error += std::abs(bin.given - bin.right);
    return error / count_;
}

// The mean distance of a normal variable from its mean, bin by bin.
double AnswerScores::calibrationErrorByChance() const
{
    double error = 0;
    for (const Bin& bin : reliability())
        error += std::sqrt(2 * bin.variance / std::numbers::pi);
    return error / count_;
}

double Separation::area() const
{
    std::vector<std::pair<double, bool>> sorted = scores_;
    std::sort(sorted.begin(), sorted.end());
    double pairs = 0, known_below = 0, strangers = 0;
    for (std::size_t i = 0; i < sorted.size();) {
        double known = 0, unknown = 0;
        const double score = sorted[i].first;
        for (; i < sorted.size() && sorted[i].first == score; ++i)
            (sorted[i].second ? unknown : known) += 1;
        pairs += unknown * (known_below + 0.5 * known);
        known_below += known;
        strangers += unknown;
    }
    return known_below * strangers > 0 ? pairs / (known_below * strangers) : 0.5;
}

bool Separation::hasBoth() const
{
    const auto is_stranger = [](const auto& score) { return score.second; };
    return std::any_of(scores_.begin(), scores_.end(), is_stranger) &&
           !std::all_of(scores_.begin(), scores_.end(), is_stranger);
}

double percentile(std::vector<double> values, double share)
{
    if (values.empty())
        return 0;
    std::sort(values.begin(), values.end());
    return values[std::min(values.size() - 1,
                           static_cast<std::size_t>(share * static_cast<double>(values.size())))];
}
