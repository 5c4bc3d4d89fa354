#include "vision/logistic_model.h"

#include <cmath>
#include <stdexcept>

namespace vision {

double LogisticModel::probability(const std::vector<double>& values) const
{
    if (values.size() != terms.size())
        throw std::invalid_argument("LogisticModel: a value for each term is needed");
    double logit = constant;
    for (std::size_t i = 0; i < values.size(); ++i)
        logit += terms[i].weight * values[i];
    return 1 / (1 + std::exp(-logit));
}

}  // namespace vision
