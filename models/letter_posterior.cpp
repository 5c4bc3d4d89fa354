#include "models/letter_posterior.h"

namespace models {

LetterPosterior::LetterPosterior(const std::vector<AlignedCell>& cells, const MatchText& text,
                                 const AlignmentPlan& plan, const GapRates& rates)
    : cells_(cells),
      text_(text),
      plan_(plan),
      rates_(rates),
      width_(text.letters.size() + 1),
      forward_((cells.size() + 1) * width_, 0),
      backward_(forward_)
{
    fillForward();
    fillBackward();
    for (std::size_t j = 0; j < width_; ++j) {
        const double begun = j == 0 ? 1 - plan.cut_left : plan.cut_left * cutLengthShare(j);
        total_ += plan.entry[0] * begun * of(backward_, 0, j);
    }
    for (std::size_t i = 1; i <= cells.size(); ++i)
        total_ += plan.entry[i] * of(backward_, i, 0);
}

// What a stretch gives on, over the number of letters that it takes before or behind this one.
double LetterPosterior::stretchSum(std::size_t cell, std::size_t letter, bool forward) const
{
    const CellWeights& stretch = *cells_[cell].weights;
    const std::size_t room = forward ? letter : width_ - 1 - letter;
    double sum = 0;
    for (std::size_t taken = 0; taken <= room; ++taken)
        if (const double share = stretchLengthShare(stretch, taken); share > 0)
            sum += share * (forward ? of(forward_, cell, letter - taken)
                                    : of(backward_, cell + 1, letter + taken));
    return sum;
}

void LetterPosterior::fillForward()
{
    for (std::size_t i = 0; i <= cells_.size(); ++i)
        for (std::size_t j = 0; j < width_; ++j) {
            double sum = j == 0 ? plan_.entry[i] : 0;
            if (i == 0)
                sum = plan_.entry[0] *
                      (j == 0 ? 1 - plan_.cut_left : plan_.cut_left * cutLengthShare(j));
            if (i > 0) {
                sum += cells_[i - 1].stray * of(forward_, i - 1, j);
                if (cells_[i - 1].weights->stretch)
                    sum += stretchSum(i - 1, j, true);
                else if (j > 0)
                    sum += matchWeight(cells_[i - 1], text_, j - 1, rates_) *
                           of(forward_, i - 1, j - 1);
            }
            if (j > 0)
                sum += rates_.none * text_.skip[j - 1] * of(forward_, i, j - 1);
            at(forward_, i, j) = sum;
        }
}

void LetterPosterior::fillBackward()
{
    const std::size_t last = cells_.size(), whole = width_ - 1;
    for (std::size_t i = last + 1; i-- > 0;)
        for (std::size_t j = width_; j-- > 0;) {
            double over = j == whole ? 1 - (i == last ? plan_.cut_right : 0) : 0;
            if (i == last && j < whole)
                over = plan_.cut_right * cutLengthShare(whole - j);
            double sum = plan_.exit[i] * rates_.none * over;
            if (i < last) {
                sum += cells_[i].stray * of(backward_, i + 1, j);
                if (cells_[i].weights->stretch)
                    sum += stretchSum(i, j, false);
                else if (j < whole)
                    sum += matchWeight(cells_[i], text_, j, rates_) * of(backward_, i + 1, j + 1);
            }
            if (j < whole)
                sum += rates_.none * text_.skip[j] * of(backward_, i, j + 1);
            at(backward_, i, j) = sum;
        }
}

double LetterPosterior::share(std::size_t cell, std::size_t letter) const
{
    if (total_ <= 0 || cells_[cell].weights->stretch)
        return 0;
    return of(forward_, cell, letter) * matchWeight(cells_[cell], text_, letter, rates_) *
           of(backward_, cell + 1, letter + 1) / total_;
}

}  // namespace models
