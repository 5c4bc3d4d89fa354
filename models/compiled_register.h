#pragma once

#include <cstddef>
#include <cstdint>
#include <map>
#include <set>
#include <string>
#include <unordered_map>
#include <utility>
#include <vector>

#include "models/cell_weights.h"
#include "models/letter_model.h"
#include "models/maker_register.h"
#include "models/reading_errors.h"
#include "models/text_alignment.h"
#include "models/text_trie.h"
#include "models/year_weights.h"

// A register made ready for ranking: texts as trees of letter numbers, years as weights.
namespace models {

struct CompiledMark {
    std::size_t maker = 0;     // index into the register's makers
    std::string text;          // in the typed notation, as the register has it
    std::string from, to;      // when it was used; the maker's years where the register says none
    std::size_t years = 0;     // index into year_shapes
    MatchText letters;         // of its first spelling
    std::size_t spelling = 0;  // number of the first

    // By number of the spellings; 1 where none is told.
    double worthIn(const std::vector<double>* by_spelling) const
    {
        return by_spelling ? (*by_spelling)[spelling] : 1;
    }
};

// A text of the tries: one spelling of a mark.
struct CompiledSpelling {
    std::uint32_t mark = 0;
    std::uint32_t years = 0;  // of its maker: index into year_shapes
    double share = 1;         // of this spelling among those of the mark
};

// A code that stands for a year or a few.
struct CompiledYearCode {
    MatchText text;
    std::vector<double> years;  // 1 for each year of the range it stands for, 0 for the others
};

struct CompiledRegister {
    explicit CompiledRegister(const MakerRegister& known, const ReadingErrors& reading_errors = {});

    ReadingErrors errors;
    GapRates rates;
    YearRange range;
    LetterIds ids;
    std::vector<CompiledMark> marks;  // text marks, devices, and codes that mean a maker
    std::vector<std::vector<std::size_t>> marks_of_maker;
    std::vector<CompiledSpelling> spellings;  // by number of the tries' texts
    std::vector<CompiledYearCode> year_codes;
    LetterModel letter_model;

    // softYears of every different pair of limits: many makers share theirs.
    std::vector<std::vector<double>> year_shapes;
    std::vector<std::vector<double>> year_shares;  // the same, each with a sum of 1
    std::vector<std::size_t> years_of_maker;       // indices into year_shapes

    TextTrie forward, backward;  // the marks' spellings from their first letter, and their last
    TextTrie places;             // where makers worked
    TextTrie other_texts;        // inspectors' codes, quarters, sizes, type names, words that lead

    const std::vector<double>& yearsOfMark(std::size_t mark) const
    {
        return year_shapes[marks[mark].years];
    }

private:
    using MakerNumbers = std::unordered_map<std::string, std::size_t>;

    void addMark(const MakerRegister& known, const MakerNumbers& numbers, const Mark& mark);
    void addOtherTexts(const MakerRegister& known);
    TextTrie trieOf(const std::set<std::string>& texts);
    void addYearCodes(const MakerRegister& known);
    std::size_t yearShape(const std::string& from, const std::string& to);

    std::map<std::pair<std::string, std::string>, std::size_t> shape_numbers_;
    std::vector<MatchText> texts_;  // of the tries
};

}  // namespace models
