#include "models/most_to_come.h"

#include <algorithm>
#include <cmath>

namespace models {

namespace {

constexpr double most_skipped = 0.3;  // a full stop's or a space's chance to leave no cell, at most

}  // namespace

double MostToCome::behindStretch(const CellWeights& stretch, std::size_t taken, std::size_t letters,
                                 const std::vector<double>& exact) const
{
    double sum = 0, share = stretch.most ? 1.0 / (*stretch.most - stretch.least + 1) : 1 - going_on;
    const auto most = stretch.most ? static_cast<std::size_t>(*stretch.most) : letters;
    for (auto n = static_cast<std::size_t>(stretch.least); n <= std::min(most, letters); ++n) {
        sum += share * exact[(taken + 1) * width_ + letters - n];
        share *= stretch.most ? 1 : going_on;
    }
    return sum;
}

MostToCome::MostToCome(const std::vector<AlignedCell>& cells,
                       const std::vector<double>& most_of_letters, const AlignmentPlan& plan,
                       const GapRates& rates, Endings endings, std::size_t longest)
    : width_(longest + 1)
{
    std::vector<double> exact((cells.size() + 1) * width_, 0);
    for (std::size_t i = cells.size() + 1; i-- > 0;)
        for (std::size_t n = 0; n < width_; ++n) {
            double sum = n > 0 ? rates.none * most_skipped * exact[i * width_ + n - 1] : 0;
            const bool all = endings == Endings::All;
            if (i == cells.size()) {
                const double over = n == 0 ? (all ? 1 - plan.cut_right : 0)
                                           : plan.cut_right * (1 - going_on) *
                                                 std::pow(going_on, static_cast<double>(n) - 1);
                exact[i * width_ + n] = sum + plan.exit[i] * rates.none * over;
                continue;
            }
            sum += n == 0 && all ? plan.exit[i] * rates.none : 0;
            sum += cells[i].stray * exact[(i + 1) * width_ + n];
            if (cells[i].weights->stretch)
                sum += behindStretch(*cells[i].weights, i, n, exact);
            else if (n > 0)
                sum += most_of_letters[i] * exact[(i + 1) * width_ + n - 1];
            exact[i * width_ + n] = sum;
        }
    from_ = up_to_ = exact;
    for (std::size_t row = 0; row < exact.size(); row += width_)
        for (std::size_t n = 1; n < width_; ++n) {
            up_to_[row + n] = std::max(up_to_[row + n], up_to_[row + n - 1]);
            from_[row + width_ - 1 - n] =
                std::max(from_[row + width_ - 1 - n], from_[row + width_ - n]);
        }
}

}  // namespace models
