#pragma once

#include <cstddef>
#include <vector>

#include "models/compiled_register.h"
#include "models/reading.h"

// What one line of a stamp says of marks and years, as odds against text that is neither.
namespace models {

// A stretch of a line that can be a date, and for each year the odds that it is that year's, with
// what stands beside it as other text.
struct DatePlace {
    std::size_t first_cell = 0, end_cell = 0;
    std::vector<double> odds;  // by year of the range
};

class LineEvidence {
public:
    enum class Dates { Looked, Ignored };
    LineEvidence(const Line& line, const CompiledRegister& known, Dates dates = Dates::Looked);
    LineEvidence(LineEvidence&&) = default;
    LineEvidence(const LineEvidence&) = delete;  // its cells point into itself
    LineEvidence& operator=(const LineEvidence&) = delete;

    // P(line | no mark in it, made in this year) / P(line | other text), by year.
    const std::vector<double>& withoutMark() const { return without_mark_; }

    // What its dates alone say, whatever the rest of the line is, by year.
    std::vector<double> dateOdds() const;

    // P(line | this mark in it, made in this year) / P(line | other text), by year.
    std::vector<double> withMark(std::size_t mark) const;

    // The same for the mark of a maker that the register does not know.
    std::vector<double> withUnknownMark() const;

    // P(line | this mark in it) / P(line | other text), whatever the year: of the line as a whole,
    // and at best where a date takes a part of it.
    double wholeMarkOdds(std::size_t mark) const { return whole_.mark_odds[mark]; }
    double wholeUnknownOdds() const { return whole_.unknown_odds; }
    double bestMarkOdds(std::size_t mark) const;

private:
    // The line, or what is left of it beside a date: cells first_cell <= i < end_cell.
    struct Stretch {
        std::size_t first_cell = 0, end_cell = 0;
        std::vector<double> mark_odds;  // by mark
        double unknown_odds = 0;
        double text_odds = 1;  // of text that marks hold beside the maker's: SIZE, CONTRACT ...
    };

    void findPlaces(const Line& line);
    void addFigures(const Line& line);
    void addYearCodes(const Line& line);
    DatePlace& placeOf(std::size_t first_cell, std::size_t end_cell);
    Stretch weighStretch(const Line& line, std::size_t first_cell, std::size_t end_cell) const;
    AlignmentPlan planFor(const Line& line, std::size_t first_cell, std::size_t end_cell) const;
    double otherTextsOdds(const std::vector<AlignedCell>& cells, const AlignmentPlan& plan) const;
    std::vector<double> besideDates(double whole, const std::vector<double>& left,
                                    const std::vector<double>& right) const;

    const CompiledRegister& known_;
    std::vector<CellWeights> weights_;
    std::vector<AlignedCell> cells_;
    std::vector<DatePlace> dates_;
    Stretch whole_;
    std::vector<Stretch> left_, right_;  // of each date
    std::vector<double> without_mark_;
};

}  // namespace models
