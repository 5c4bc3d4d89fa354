#include "models/choice_weights.h"

namespace models {

std::vector<Alternative> weighedChoice(const std::vector<std::string>& letters)
{
    constexpr double single = 0.6, several = 0.9, ratio = 0.6;
    std::vector<Alternative> alternatives;
    double weight = 1, sum = 0;
    for (const std::string& letter : letters) {
        alternatives.push_back({letter, weight});
        sum += weight;
        weight *= ratio;
    }
    const double named = letters.size() == 1 ? single : several;
    for (Alternative& alternative : alternatives)
        alternative.certainty *= named / sum;
    return alternatives;
}

}  // namespace models
