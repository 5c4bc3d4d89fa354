#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "models/text_alignment.h"

namespace models {

// Which of a text's alignments count: all, or those in which the plan's right cut has taken its
// end.
enum class Endings { All, CutOnly };

// The pair hidden Markov model of a line as a row of places, whatever its cells are: a place for
// each number of cells taken, and between them those within a stretch or a cut. From one letter to
// the next a weight stays in its place or goes to the next one; within a letter it goes onward
// without one. So all lines are summed by the same three steps (letter_matches.h has the weights of
// letters), and what one letter leads to is all that the next needs to know.
class AlignmentPlaces {
public:
    // What a letter does in a place that it stays in, and on the way to the next place.
    enum class Stay : std::uint8_t {
        Never,
        Skipped,  // it leaves no cell
        Taken     // one more that a stretch of any length, or a cut, has taken
    };
    enum class Step : std::uint8_t { Never, Match, Free };

    struct Place {
        Stay stay = Stay::Never;
        Step step = Step::Never;  // on to the next place
        std::uint32_t cell = 0;   // that a step matches
    };
    // Without a letter, beyond the next place.
    struct Jump {
        std::uint32_t from = 0, to = 0;
        double weight = 0;
    };

    //   deepest  letters of the longest text
    AlignmentPlaces(const std::vector<AlignedCell>& cells, const AlignmentPlan& plan,
                    const GapRates& rates, Endings endings, std::size_t deepest);

    std::size_t size() const { return places_.size(); }
    const Place& operator[](std::size_t place) const { return places_[place]; }

    // By place: weights before any letter; of going on to the next place without a letter; of being
    // at the end of the text.
    const std::vector<double>& begin() const { return begin_; }
    const std::vector<double>& onward() const { return onward_; }
    const std::vector<double>& end() const { return end_; }
    const std::vector<Jump>& jumps() const { return jumps_; }  // ascending by `from`

    // Spreads a row of weights onward, within a letter.
    void goOnward(double* row) const { goOnward(row, 0, size() - 1); }
    // The same from the place `first` on, given that nothing stands before, up to `last`.
    void goOnward(double* row, std::size_t first, std::size_t last) const;
    // The other way: of being in a place, given the weights of what follows there and behind it.
    void gatherOnward(double* row) const;

private:
    std::size_t add(Stay stay, Step step, std::size_t cell = 0);
    void addStretch(const AlignedCell& cell, std::size_t deepest);
    void addCounted(const AlignedCell& cell, std::size_t deepest);
    void addUncounted(const AlignedCell& cell, std::size_t deepest);

    std::vector<Place> places_;
    std::vector<double> begin_, onward_, end_;
    std::vector<Jump> jumps_;
};

}  // namespace models
