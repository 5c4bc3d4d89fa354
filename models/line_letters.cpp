// What letters the unread cells of a line show: the part of LineEvidence that tells which cell
// would be worth another look.
#include <numeric>

#include "models/letter_posterior.h"
#include "models/line_evidence.h"
#include "models/line_shares.h"

namespace models {

namespace {

double sumOf(const std::vector<double>& values)
{
    return std::accumulate(values.begin(), values.end(), 0.0);
}

}  // namespace

void LineEvidence::addStretchLetters(const Stretch& stretch, std::size_t mark, double weight,
                                     CellLetters& letters) const
{
    if (weight <= 0)
        return;
    letters.weight += weight;
    const std::vector<AlignedCell> cells = cellsOf(stretch.first_cell, stretch.end_cell);
    const MatchText& text = known_.marks[mark].letters;
    const AlignmentPlan plan = planFor(stretch.first_cell, stretch.end_cell);
    const LetterPosterior posterior(cells, text, plan, known_.rates);
    for (std::size_t i = 0; i < cells.size(); ++i)
        if (isUnread(stretch.first_cell + i))
            for (std::size_t j = 0; j < text.letters.size(); ++j)
                letters.of_letters[stretch.first_cell + i][text.letters[j]] +=
                    weight * posterior.share(i, j);
}

void LineEvidence::addUnknownStretch(const Stretch& stretch, double weight, double least,
                                     CellLetters& letters) const
{
    letters.weight += weight;
    if (weight <= least)
        return;
    const auto shares =
        known_.letter_model.lettersOf(cellsOf(stretch.first_cell, stretch.end_cell),
                                      planFor(stretch.first_cell, stretch.end_cell), known_.rates);
    for (std::size_t i = 0; i < shares.size(); ++i)
        for (std::size_t letter = 0; letter < shares[i].size(); ++letter)
            letters.of_letters[stretch.first_cell + i][letter] += weight * shares[i][letter];
}

double LineEvidence::besideFactor(std::size_t date, const std::vector<double>& factor) const
{
    return 0.5 * mark_line_has_date *
           std::inner_product(factor.begin(), factor.end(), dates_[date].odds.begin(), 0.0);
}

void LineEvidence::addWholeLetters(std::size_t mark, double factor, CellLetters& letters) const
{
    addStretchLetters(whole(), mark, factor * whole().of(mark), letters);
}

void LineEvidence::addWholeUnknownLetters(double factor, double least, CellLetters& letters) const
{
    addUnknownStretch(whole(), factor * whole().unknown_odds, least, letters);
}

void LineEvidence::addLetters(std::size_t mark, const std::vector<double>& factor,
                              CellLetters& letters) const
{
    addWholeLetters(mark, (1 - mark_line_has_date) * sumOf(factor), letters);
    for (std::size_t d = 0; d < dates_.size(); ++d)
        for (const std::size_t side : {left_[d], right_[d]})
            addStretchLetters(stretches_[side], mark,
                              besideFactor(d, factor) * stretches_[side].of(mark), letters);
}

void LineEvidence::addUnknownLetters(const std::vector<double>& factor, double least,
                                     CellLetters& letters) const
{
    addWholeUnknownLetters((1 - mark_line_has_date) * sumOf(factor), least, letters);
    for (std::size_t d = 0; d < dates_.size(); ++d)
        for (const std::size_t side : {left_[d], right_[d]})
            addUnknownStretch(stretches_[side],
                              besideFactor(d, factor) * stretches_[side].unknown_odds, least,
                              letters);
}

double LineEvidence::dateShare(std::size_t cell, const std::vector<double>& years) const
{
    double share = 0;
    for (const DatePlace& date : dates_) {
        if (cell < date.first_cell || cell >= date.end_cell)
            continue;
        const double of_line =
            line_is_date * placeShare(date.first_cell, date.end_cell, cells_.size());
        for (std::size_t y = 0; y < years.size(); ++y)
            share += years[y] * of_line * date.odds[y] / without_mark_[y];
    }
    return std::min(share, 1.0);
}

}  // namespace models
