#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "models/candidates.h"
#include "models/year_weights.h"

// When something was made, from evidence of every kind.
namespace models {

// What can be wrong with a piece of evidence.
enum class EvidenceFault {
    Misread,          // a digit was taken for another
    LaterMark,        // the mark was put on after the making
    EarlierMark,      // the mark bears an earlier year: of a contract, a pattern, old stock
    OtherRole,        // the figures are for something else
    RegisterWrong,    // its years are wrong there
    LaterRepair,      // the part was put on later
    OlderPart,        // the part is older than the item
    WronglySeen,      // the detail was taken for another
    WronglyRecorded,  // the record has a slip
    OtherMaker,
    OtherType
};

// One way to come by what was seen: everything is as it seems, or one thing is wrong.
struct EvidenceCase {
    std::optional<EvidenceFault> fault;  // nullopt: sound
    double prior = 1;                    // before looking; those of one piece sum to 1
    // P(seen | made in this year, this case), by year of the range, up to one factor that all cases
    // of the piece share. Not negative.
    std::vector<double> likelihood;
    std::string words;  // what would be so: "the buckle was put on later"
    // It was an open question from the start, so that it contradicts nothing where it holds: that a
    // lone 47 may be a size is no fault of the 47.
    bool is_open = false;
};

// One piece of evidence.
struct DateEvidence {
    std::string source;               // where it comes from: "stamp 1, 1943"
    std::string meaning;              // what it says, taken as it stands: "made in 1943"
    std::vector<EvidenceCase> cases;  // the sound case first
    std::optional<int> printed_year;  // of a mark: the year as it was read, to name a misread digit
};

// What one piece did to the result.
struct EvidenceWeight {
    double bits = 0;    // divergence (Kullback and Leibler, base 2) of the result from what it
                        //   would be without the piece
    double moved = 0;   // 0 to 1: how much probability went to other years by it
    double sound = 1;   // 0 to 1: that it is as it seems, given everything
    std::string words;  // "1943 rises from 12 % to 88 %"; where an open case is likelier than the
                        //   sound one, that too
};

// A piece that the others contradict, with what is likeliest wrong with it.
struct Culprit {
    std::size_t evidence = 0;    // index
    double probability = 0;      // 0 to 1: that it is wrong and the year is none that it allows
    EvidenceFault fault{};       // the likeliest of them,
    double fault_share = 0;      //   with its part of `probability`
    std::optional<int> printed;  // of a misread mark: the year that was printed
    std::string words;           // a sentence
};

struct DatingOptions {
    double set_share = 0.95;      // of the probability, that the stated set holds
    double alarm_from = 0.5;      // probability from which a contradiction is told
    double least_culprit = 0.05;  // a piece less likely to be wrong is not named
};

struct Dating {
    YearRange range;
    std::vector<double> years;            // by year of the range; sum to 1
    std::vector<int> set;                 // the smallest set that holds `set_share`, ascending
    std::string edtf;                     // of that set; empty where the years tell less than 0.1
                                          //   bit more than that it is some year of the range
    std::vector<EvidenceWeight> weights;  // by piece
    double contradiction = 0;  // 0 to 1: that at least one piece is wrong, in a way that matters
    bool is_contradiction = false;  // at least `alarm_from`
    std::vector<Culprit> culprits;  // likeliest first; only of a contradiction
};

// Bayes' rule over years, each alike before looking. A piece's likelihood is the mean of its cases,
// weighed by their priors; pieces are independent given the year. From the same sums comes how
// likely each case is given everything: a piece is wrong in a way that matters when a fault of it
// holds and the year is none that its sound case allows (1 minus the sound likelihood of the year
// over its highest); of an open case it never matters. Nothing is averaged: evidence that cannot be
// reconciled leaves two groups of years, each as likely as what must be wrong for it. Throws
// std::invalid_argument if a piece has no cases, lengths differ from the range's, priors do not sum
// to 1, an option is out of range, or no year is possible.
Dating dateFrom(const std::vector<DateEvidence>& evidence, const YearRange& range,
                const DatingOptions& options = {});

// The smallest set of years that holds this share, ascending; of equal years the earlier first.
std::vector<int> smallestYearSet(const std::vector<double>& years, const YearRange& range,
                                 double share);

// The piece's likelihood by year: its cases, weighed by their priors.
std::vector<double> likelihoodOf(const DateEvidence& piece);

}  // namespace models
