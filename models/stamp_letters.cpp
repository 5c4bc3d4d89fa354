// What letters the unread cells of a stamp show: the part of StampEvidence that tells which cell
// would be worth another look.
#include <algorithm>
#include <functional>
#include <numeric>

#include "models/stamp_evidence.h"
#include "models/year_product.h"

namespace models {

namespace {

// Of all explanations of a stamp; one that is worth less tells no letters.
constexpr double least_explanation = 1e-3;

void addTo(std::vector<double>& sum, const std::vector<double>& more)
{
    sum.resize(std::max(sum.size(), more.size()), 0);
    for (std::size_t i = 0; i < more.size(); ++i)
        sum[i] += more[i];
}

// What an explanation of one line or two adds, told by `add`.
CellLetters lettersOf(const LineEvidence& line, std::size_t letters,
                      const std::function<void(CellLetters&)>& add)
{
    CellLetters of_line;
    of_line.of_letters.resize(line.cellCount());
    for (std::size_t cell = 0; cell < line.cellCount(); ++cell)
        if (line.isUnread(cell))
            of_line.of_letters[cell].assign(letters, 0);
    add(of_line);
    return of_line;
}

}  // namespace

StampLetters StampEvidence::noLetters(const std::vector<double>& years) const
{
    StampLetters letters;
    letters.weight = std::inner_product(years.begin(), years.end(), with_other_mark_.begin(), 0.0);
    for (const LineEvidence& line : lines_)
        letters.of_letters.emplace_back(line.cellCount());
    return letters;
}

// A pair's cells are those of both its lines, with one for the break between them.
void StampEvidence::addPair(std::size_t pair, const CellLetters& letters, StampLetters& all) const
{
    const std::size_t first = lines_[pair].cellCount();
    all.weight += letters.weight;
    for (std::size_t cell = 0; cell < letters.of_letters.size(); ++cell) {
        if (cell < first)
            addTo(all.of_letters[pair][cell], letters.of_letters[cell]);
        if (cell > first)
            addTo(all.of_letters[pair + 1][cell - first - 1], letters.of_letters[cell]);
    }
}

StampLetters StampEvidence::lettersWithMarks(const std::vector<std::size_t>& marks,
                                             const std::vector<double>& years) const
{
    StampLetters all = noLetters(years);
    const double share = 1 / static_cast<double>(std::max<std::size_t>(1, marks.size()));
    for (const std::size_t mark : marks) {
        if (!std::binary_search(marks_.begin(), marks_.end(), mark))
            continue;
        for (std::size_t l = 0; l < lines_.size(); ++l) {
            std::vector<double> factor = product(beside_line_[l], years);
            for (double& year : factor)
                year *= share;
            const CellLetters letters = lettersOf(
                lines_[l], letter_count_,
                [&](CellLetters& of_line) { lines_[l].addLetters(mark, factor, of_line); });
            all.weight += letters.weight;
            for (std::size_t cell = 0; cell < letters.of_letters.size(); ++cell)
                addTo(all.of_letters[l][cell], letters.of_letters[cell]);
        }
        for (std::size_t l = 0; l < pairs_.size(); ++l) {
            const double factor = share * std::inner_product(years.begin(), years.end(),
                                                             beside_pair_[l].begin(), 0.0);
            addPair(l,
                    lettersOf(pairs_[l], letter_count_,
                              [&](CellLetters& of_pair) {
                                  pairs_[l].addWholeLetters(mark, factor, of_pair);
                              }),
                    all);
        }
    }
    return all;
}

StampLetters StampEvidence::lettersWithUnknownMark(const std::vector<double>& years) const
{
    StampLetters all = noLetters(years);
    const double least = least_explanation * productSum(years, withUnknownMark());
    for (std::size_t l = 0; l < lines_.size(); ++l) {
        const CellLetters letters = lettersOf(lines_[l], letter_count_, [&](CellLetters& of_line) {
            lines_[l].addUnknownLetters(product(beside_line_[l], years), least, of_line);
        });
        all.weight += letters.weight;
        for (std::size_t cell = 0; cell < letters.of_letters.size(); ++cell)
            addTo(all.of_letters[l][cell], letters.of_letters[cell]);
    }
    for (std::size_t l = 0; l < pairs_.size(); ++l) {
        const double factor =
            std::inner_product(years.begin(), years.end(), beside_pair_[l].begin(), 0.0);
        addPair(l,
                lettersOf(pairs_[l], letter_count_,
                          [&](CellLetters& of_pair) {
                              pairs_[l].addWholeUnknownLetters(factor, least, of_pair);
                          }),
                all);
    }
    return all;
}

}  // namespace models
