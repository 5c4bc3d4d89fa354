#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "models/maker_register.h"
#include "models/reading.h"
#include "models/reading_errors.h"

namespace models {

struct YearShare {
    int year = 0;
    double probability = 0;  // of this year, given this maker and the evidence
};

// A maker, with years, that the readings can mean.
struct Candidate {
    std::string maker_id, maker;       // id and name in the register
    std::string mark;                  // the mark's text that fits best, in the typed notation
    double probability = 0;            // 0 to 1
    std::vector<YearShare> years;      // likeliest first, at most ten; empty when undated
    std::optional<std::string> edtf;   // the smallest set of years holding 95 %; nullopt if undated
    std::vector<std::string> reasons;  // in words with their weights, weightiest first
};

// What it would mean to read this letter in a cell that nobody could read so far.
struct LetterMeaning {
    std::string letter;
    double probability = 0;        // that the cell holds it, 0 to 1
    std::string maker_id;          // likeliest then; empty: none of the register's
    std::string maker;             // its name
    double maker_probability = 0;  // then
};

// The unread cell that would tell most of the maker.
struct SettlingCell {
    std::size_t stamp = 0, line = 0, cell = 0;  // in the readings as given
    std::string typed;                          // its line, in the typed notation
    double bits = 0;                            // information expected of it
    std::vector<LetterMeaning> letters;         // likeliest first, a few
};

// Candidates' probabilities + other_makers + unknown_maker = 1 within 1e-6.
struct CandidateList {
    std::vector<Candidate> candidates;  // one entry a maker, best first
    double other_makers = 0;            // makers of the register that are not listed
    double unknown_maker = 1;           // none of the register's makers
    // Of those that stand for one character; nullopt where none would tell anything, or where
    // CandidateOptions do not ask for it.
    std::optional<SettlingCell> settling;
};

// What is known of one item: its stamps' readings, and what it is.
struct ItemEvidence {
    std::vector<Reading> stamps;  // one reading a stamp; empty gives the prior
    std::string type_id;          // empty when not said
};

struct CandidateOptions {
    std::size_t most = 10;       // entries listed
    double unknown_prior = 0.1;  // probability, before looking, that no registered maker made it
    // How many items of each maker the archive holds, by maker_id; smoothed by adding one to each.
    std::map<std::string, double> archive_counts;
    bool find_settling_cell = false;
};

struct CompiledRegister;

// Ranks what items' readings can mean, against one register: P(maker, year | lines) is proportional
// to P(lines | marks, dates) x P(year | maker's and type's years) x P(maker), beside a share for an
// unknown maker under a letter model. Every factor that moved the result is told as a reason.
// Marks that fit far worse than an unknown maker's or the best are not summed: that moves no share
// by more than 0.01 (tests/models/left_out_test.cpp).
// Making the register ready takes long against one ranking (about a second for 10,000 makers), so
// keep a ranker where there are several items. It never changes, and any number of threads may ask.
class CandidateRanker {
public:
    // No mark may be empty. With a register without makers the whole share is the unknown's.
    explicit CandidateRanker(MakerRegister known, const ReadingErrors& errors = {});
    ~CandidateRanker();
    CandidateRanker(CandidateRanker&&) noexcept;

    // Throws std::invalid_argument if the type is not in the register or an option is out of range.
    CandidateList rank(const ItemEvidence& evidence, const CandidateOptions& options = {}) const;

    const MakerRegister& known() const { return known_; }

private:
    MakerRegister known_;
    std::unique_ptr<const CompiledRegister> compiled_;
};

// The same for one item.
CandidateList rankCandidates(const ItemEvidence& evidence, const MakerRegister& known,
                             const CandidateOptions& options = {});

}  // namespace models
