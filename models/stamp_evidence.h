#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include "models/compiled_register.h"
#include "models/line_evidence.h"
#include "models/reading.h"

namespace models {

// Where in a stamp a mark fits best.
struct MarkPlace {
    std::size_t first_line = 0, end_line = 0;  // one line, or two that the mark runs over
    double odds = 0;                           // against other text
};

// What letters the unread cells of a stamp show if a maker made it: weights in sum over all ways to
// explain the stamp, by line with letters, cell and letter number.
struct StampLetters {
    double weight = 0;  // of all ways, those in which no mark was found among them
    std::vector<std::vector<std::vector<double>>> of_letters;
};

// What a stamp's search leaves out: marks that count for less than these shares of what no mark, an
// unknown maker's or the best mark counts for. They are taken for marks that the stamp cannot hold.
// With all of them 0 nothing is left out, and the search takes several times as long.
struct LeftOut {
    double of_no_mark = 0.002, of_unknown = 0.01, of_best = 1e-4;
};

// What a whole stamp says: any line, or two that follow each other, may hold the mark, any line a
// date, and the rest is other text. A stamp may show no maker's mark at all.
class StampEvidence {
public:
    StampEvidence(const Reading& reading, const CompiledRegister& known,
                  const LeftOut& left_out = {});

    // The marks that it can hold, ascending; all others fit it as no mark does.
    const std::vector<std::uint32_t>& marks() const { return marks_; }

    // P(stamp | item of a maker with this mark, made in this year) / P(stamp | other text), by
    // year.
    std::vector<double> withMark(std::size_t mark) const;
    std::vector<double> withUnknownMark() const;
    // The same of a maker with a mark that it cannot hold.
    const std::vector<double>& withOtherMark() const { return with_other_mark_; }
    // The same where the stamp is known to show no maker's mark.
    const std::vector<double>& withoutMark() const { return without_mark_; }

    // What the dates in all its lines say together, by year.
    std::vector<double> dateOdds() const;

    MarkPlace bestPlace(std::size_t mark) const;

    // With one of these marks, each as likely, and with these probabilities of years.
    StampLetters lettersWithMarks(const std::vector<std::size_t>& marks,
                                  const std::vector<double>& years) const;
    StampLetters lettersWithUnknownMark(const std::vector<double>& years) const;
    // Its lines with letters, in the order of the reading.
    const std::vector<LineEvidence>& lines() const { return lines_; }

    bool isEmpty() const { return lines_.empty(); }

private:
    StampLetters noLetters(const std::vector<double>& years) const;
    void addPair(std::size_t pair, const CellLetters& letters, StampLetters& all) const;
    std::vector<double> worthByDates(const CompiledRegister& known) const;
    void findMarks(const CompiledRegister& known, const LeftOut& left_out);
    void collectMarks();
    double lineShare() const;
    double pairShare() const;

    std::vector<LineEvidence> lines_;
    std::vector<LineEvidence> pairs_;  // line i and i + 1 as one, a space between
    std::vector<double> without_mark_;
    std::vector<double> with_other_mark_;
    // without_mark_ with one line's own factor taken out, and with two lines', times the share of
    // marks that stand there.
    std::vector<std::vector<double>> beside_line_, beside_pair_;
    std::vector<std::uint32_t> marks_;
    std::size_t letter_count_ = 0;  // the register's different letters
};

}  // namespace models
