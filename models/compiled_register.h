#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "models/cell_weights.h"
#include "models/letter_model.h"
#include "models/maker_register.h"
#include "models/text_alignment.h"
#include "models/year_weights.h"

// A register made ready for ranking: texts as letter numbers, years as weights.
namespace models {

struct CompiledSpelling {
    MatchText text;
    double share = 1;
};

struct CompiledMark {
    std::size_t maker = 0;  // index into the register's makers
    std::string text;       // in the typed notation, as the register has it
    std::string from, to;   // when it was used; the maker's years where the register says none
    std::vector<CompiledSpelling> spellings;
    std::vector<double> years;  // softYears of from and to
};

// A code that stands for a year or a few.
struct CompiledYearCode {
    MatchText text;
    std::vector<double> years;  // 1 for each year of the range it stands for, 0 for the others
};

struct CompiledRegister {
    explicit CompiledRegister(const MakerRegister& known);

    YearRange range;
    LetterIds ids;
    std::vector<CompiledMark> marks;  // text marks, devices, and codes that mean a maker
    std::vector<std::vector<std::size_t>> marks_of_maker;
    std::vector<MatchText> other_texts;  // inspectors' codes, quarters, sizes, type names
    std::vector<CompiledYearCode> year_codes;
    LetterModel letter_model;

    // How long marks are: texts of letters that fit every cell alike, with the share of each
    // length.
    std::vector<CompiledSpelling> lengths;

private:
    void addMark(const MakerRegister& known, const std::string& maker_id, const Mark& mark);
    void addOtherTexts(const MakerRegister& known);
    void addYearCodes(const MakerRegister& known);
    void countLengths();
};

}  // namespace models
