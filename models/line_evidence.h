#pragma once

#include <algorithm>
#include <cstddef>
#include <optional>
#include <vector>

#include "models/compiled_register.h"
#include "models/mark_search.h"
#include "models/reading.h"

// What one line of a stamp says of marks and years, as odds against text that is neither.
namespace models {

// A stretch of a line that can be a date, and for each year the odds that it is that year's, with
// what stands beside it as other text.
struct DatePlace {
    std::size_t first_cell = 0, end_cell = 0;
    std::vector<double> odds;  // by year of the range
};

// What letters the cells of a line show, under one way to explain the line: weights in sum over all
// ways, by cell and letter number.
struct CellLetters {
    double weight = 0;                            // of all ways
    std::vector<std::vector<double>> of_letters;  // [cell][letter]; what is missing: other text
};

class LineEvidence {
public:
    LineEvidence(const Line& line, const CompiledRegister& known);
    // Of two lines that follow each other, for a mark that begins in the first and ends in the
    // second; dates are not looked for.
    LineEvidence(const Line& first, const Line& second, const CompiledRegister& known);
    LineEvidence(LineEvidence&&) = default;
    LineEvidence(const LineEvidence&) = delete;  // its cells point into itself
    LineEvidence& operator=(const LineEvidence&) = delete;

    // What can hold a mark: the whole line, and what each date leaves beside it.
    std::size_t stretchCount() const { return stretches_.size(); }
    // How much a mark's odds in a stretch can count for in the line.
    double stretchLevel(std::size_t stretch) const { return stretches_[stretch].level; }
    double unknownOdds(std::size_t stretch) const { return stretches_[stretch].unknown_odds; }
    // Looks for the register's marks in a stretch; before, it holds none. Returns the highest odds
    // x worth of those that it found.
    double findMarks(std::size_t stretch, const MarkLimits& limits);

    // P(line | no mark in it, made in this year) / P(line | other text), by year.
    const std::vector<double>& withoutMark() const { return without_mark_; }

    // What its dates alone say, whatever the rest of the line is, by year.
    std::vector<double> dateOdds() const;
    // The year that they name plainly, if there is one; and one in figures that lies beyond all
    // years of the register, where nothing within them fits nearly as well.
    std::optional<int> plainYear() const;
    std::optional<int> yearBeyond() const { return year_beyond_; }

    // The marks that it can hold, ascending.
    std::vector<std::uint32_t> marks() const;

    // Adds to `sum`, by year, P(line | this mark in it, made in this year) / P(line | other text)
    // times a factor.
    void addMark(std::size_t mark, const std::vector<double>& factor,
                 std::vector<double>& sum) const;

    // The same for the mark of a maker that the register does not know.
    std::vector<double> withUnknownMark() const;

    // P(line | this mark in it) / P(line | other text), whatever the year: of the line as a whole,
    // and at best where a date takes a part of it.
    double wholeMarkOdds(std::size_t mark) const { return whole().of(mark); }
    double wholeUnknownOdds() const { return whole().unknown_odds; }
    double bestMarkOdds(std::size_t mark) const;

    // What the line's odds may all be divided by, so that those of many long lines stay in range.
    double scale() const { return std::max(1.0, whole().unknown_odds); }

    std::size_t cellCount() const { return cells_.size(); }
    // One character that nobody could read?
    bool isUnread(std::size_t cell) const
    {
        return weights_[cell].unread && !weights_[cell].stretch;
    }
    // How often the stretches that can hold a mark hold this one, and what letters the unread cells
    // show then: adds P(line | the mark in it) / P(line | other text) times a factor (summed over
    // the years) to `letters.weight`, and to each unread cell's letters in proportion.
    void addLetters(std::size_t mark, const std::vector<double>& factor,
                    CellLetters& letters) const;
    // The same for the mark of a maker that the register does not know; of an explanation that is
    // worth at most `least` the weight alone.
    void addUnknownLetters(const std::vector<double>& factor, double least,
                           CellLetters& letters) const;
    // The same of the line as a whole, whatever the year.
    void addWholeLetters(std::size_t mark, double factor, CellLetters& letters) const;
    void addWholeUnknownLetters(double factor, double least, CellLetters& letters) const;

    // P(the cell is part of a date | no mark in the line), with these probabilities of years.
    double dateShare(std::size_t cell, const std::vector<double>& years) const;

private:
    // The line, or what is left of it beside a date: cells first_cell <= i < end_cell.
    struct Stretch {
        std::size_t first_cell = 0, end_cell = 0;
        double level = 0;
        double unknown_odds = 0;
        double text_odds = 1;  // of text that marks hold beside the maker's: SIZE, CONTRACT ...
        std::vector<MarkOdds> mark_odds;  // by mark; 0 for those that are not there

        double of(std::size_t mark) const;
    };

    void findPlaces(const Line& line);
    void addFigures(const Line& line);
    void addYearCodes(const Line& line);
    DatePlace& placeOf(std::size_t first_cell, std::size_t end_cell);
    const Stretch& whole() const { return stretches_.front(); }
    std::size_t stretchOf(std::size_t first_cell, std::size_t end_cell, double level);
    double unknownOdds(std::size_t first_cell, std::size_t end_cell) const;
    std::vector<AlignedCell> cellsOf(std::size_t first_cell, std::size_t end_cell) const;
    void weighWithoutMark();
    AlignmentPlan planFor(std::size_t first_cell, std::size_t end_cell) const;
    double otherTextsOdds(std::size_t first_cell, std::size_t end_cell) const;
    double besideDate(std::size_t date, std::size_t mark) const;
    double besideFactor(std::size_t date, const std::vector<double>& factor) const;
    void addStretchLetters(const Stretch& stretch, std::size_t mark, double weight,
                           CellLetters& letters) const;
    void addUnknownStretch(const Stretch& stretch, double weight, double least,
                           CellLetters& letters) const;

    const CompiledRegister& known_;
    LineEnd left_end_, right_end_;
    std::vector<CellWeights> weights_;
    std::vector<AlignedCell> cells_;
    std::vector<DatePlace> dates_;
    std::optional<int> year_beyond_;
    std::optional<std::size_t> break_;       // of two lines: the cell between them
    std::vector<Stretch> stretches_;         // each once; the first is the whole line
    std::vector<std::size_t> left_, right_;  // of each date: index into stretches_
    std::vector<double> without_mark_;
};

}  // namespace models
