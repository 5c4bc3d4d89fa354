#include "models/alignment.h"

#include <algorithm>

#include "models/letters.h"

namespace models {

namespace {

// costs[i][j]: the least cost of aligning the first i elements with the first j.
using Costs = std::vector<std::vector<double>>;

Costs fillCosts(std::size_t rows, std::size_t columns,
                const std::function<double(std::size_t, std::size_t)>& join_cost, double gap_cost)
{
    Costs costs(rows + 1, std::vector<double>(columns + 1));
    for (std::size_t i = 0; i <= rows; ++i)
        for (std::size_t j = 0; j <= columns; ++j) {
            if (i == 0 || j == 0) {
                costs[i][j] = gap_cost * static_cast<double>(i + j);
                continue;
            }
            const double joined = costs[i - 1][j - 1] + join_cost(i - 1, j - 1);
            costs[i][j] =
                std::min({joined, costs[i - 1][j] + gap_cost, costs[i][j - 1] + gap_cost});
        }
    return costs;
}

}  // namespace

std::size_t editDistance(const std::string& a, const std::string& b)
{
    const std::vector<std::string> first = charactersOf(a), second = charactersOf(b);
    const auto differs = [&](std::size_t i, std::size_t j) {
        return first[i] == second[j] ? 0.0 : 1.0;
    };
    const Costs costs = fillCosts(first.size(), second.size(), differs, 1);
    return static_cast<std::size_t>(costs.back().back() + 0.5);
}

std::vector<AlignedPair> alignSequences(
    std::size_t first_count, std::size_t second_count,
    const std::function<double(std::size_t, std::size_t)>& join_cost, double gap_cost)
{
    const Costs costs = fillCosts(first_count, second_count, join_cost, gap_cost);
    std::vector<AlignedPair> pairs;
    std::size_t i = first_count, j = second_count;
    while (i > 0 || j > 0) {
        const double here = costs[i][j];
        if (i > 0 && j > 0 && here == costs[i - 1][j - 1] + join_cost(i - 1, j - 1))
            pairs.push_back({--i, --j});
        else if (i > 0 && here == costs[i - 1][j] + gap_cost)
            pairs.push_back({--i, std::nullopt});
        else if (j > 0)
            pairs.push_back({std::nullopt, --j});
        else
            pairs.push_back({--i, std::nullopt});
    }
    std::reverse(pairs.begin(), pairs.end());
    return pairs;
}

}  // namespace models
