#pragma once

#include <optional>
#include <string>
#include <vector>

#include "models/maker_register.h"

// What checkRegister is made of: each function adds remarks of one kind.
namespace models {

class Remarks {
public:
    explicit Remarks(std::filesystem::path folder) : folder_(std::move(folder)) {}

    void add(const char* file, std::size_t line, const char* column, std::string problem,
             std::string remedy);

    std::vector<RegisterFault> list;

private:
    std::filesystem::path folder_;
};

// When something was, as far as its two fields say.
struct WrittenYears {
    WrittenYears(const std::string& from, const std::string& to);

    int start() const { return from_first.value_or(-1); }  // as early as can be
    int end() const { return to_last.value_or(10000); }    // as late as can be
    bool overlaps(const WrittenYears& other) const;

    std::string from, to;
    std::optional<int> from_first, from_last, to_first, to_last;
    bool is_soft = false;
};

// "the years 1930 to 1934", "all years": when both were.
std::string commonYears(const WrittenYears& one, const WrittenYears& other);

void checkRepeats(const MakerRegister& known, Remarks& remarks);
void checkUnlistedSources(const MakerRegister& known, Remarks& remarks);
void checkYears(const MakerRegister& known, Remarks& remarks);
void checkSuccession(const MakerRegister& known, Remarks& remarks);
void checkMarksApart(const MakerRegister& known, Remarks& remarks);
void checkCodeMeanings(const MakerRegister& known, Remarks& remarks);

}  // namespace models
