#pragma once

#include <array>
#include <cstddef>
#include <string>
#include <vector>

#include "models/letter_chain.h"
#include "models/text_alignment.h"

namespace models {

// A mark as the letter model learns from it.
struct SampleText {
    std::string text;
    double weight = 1;  // less than 1 where several stand for one maker
};

// How makers' marks are spelt, whoever the maker: each letter, and the end, given those before it,
// counted in the register's marks, over how letters follow each other at all, by whether they begin
// a word, over how often they occur in names. It explains the marks of makers that the register
// does not know: the more marks a register holds, the more it knows of names and endings that are
// common.
class LetterModel {
public:
    // The samples' letters and the common ones become known to `ids`.
    LetterModel(const std::vector<SampleText>& samples, LetterIds& ids, double skip_rate);

    // Log of the sum over all texts, weighed by how likely they are as a mark, and all alignments:
    // what logAlignmentSum is of one text, with the cells' weights by the ids of this model, or
    // more. Of the ways to spell what was not read clearly, the likeliest hundred or so are
    // followed. -infinity where the cells cannot hold a text.
    double logSum(const std::vector<AlignedCell>& cells, const AlignmentPlan& plan,
                  const GapRates& rates) const;

    // Of each unread cell, P(letter | the cells before it, which begin a mark), by letter number;
    // nothing of other cells.
    std::vector<std::vector<double>> lettersOf(const std::vector<AlignedCell>& cells,
                                               const AlignmentPlan& plan,
                                               const GapRates& rates) const;

private:
    using Shares = std::vector<double>;  // by letter, the last is the end of a mark

    void countPairs(const std::vector<std::vector<std::size_t>>& texts,
                    const std::vector<double>& weights);
    Shares next(const LetterContext& context, const LetterContexts& contexts) const;
    Shares withAnyInitial(Shares shares) const;
    std::size_t end() const { return general_.size() - 1; }

    std::vector<double> skip_;              // by letter, how easily it leaves no cell
    std::vector<bool> begins_word_behind_;  // does the letter behind this one begin a word?
    std::vector<bool> is_letter_;           // a capital, by number
    Shares general_, any_;                  // of a letter in names at large, and in these marks
    Shares first_;                          // of a mark's first letter
    std::array<std::vector<Shares>, 2> behind_;  // [the letter before began a word][it][letter]
    std::size_t strange_ = 0;  // number of the letter that stands for all that are not known
    double otherwise_ = 0;     // that a mark is spelt in no way seen so far
    LetterChain chain_;
};

}  // namespace models
