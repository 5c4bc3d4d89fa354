#include <algorithm>
#include <map>

#include "models/letters.h"
#include "models/register_checks.h"
#include "models/spreadsheet_harm.h"

// Codes that mean two things.
namespace models {

namespace {

struct DatedCode {
    const Code* code;
    WrittenYears years;
};

bool meansTheSame(const Code& one, const Code& other)
{
    return one.stands_for == other.stands_for && plainKey(one.value) == plainKey(other.value);
}

std::string meaningOf(const Code& code)
{
    static const char* const words[] = {"maker ", "year ", "quarter ", "inspector "};
    return words[static_cast<std::size_t>(code.stands_for)] + inQuotes(code.value);
}

void remark(const DatedCode& one, const DatedCode& other, Remarks& remarks)
{
    const bool in_order = other.code->file_line <= one.code->file_line;
    const Code &later = in_order ? *one.code : *other.code,
               &earlier = in_order ? *other.code : *one.code;
    const std::string line = "line " + std::to_string(earlier.file_line);
    if (meansTheSame(later, earlier)) {
        remarks.add("codes.csv", later.file_line, "code",
                    "the code " + inQuotes(later.code) + " stands in " + line +
                        " already, with the same meaning",
                    "keep one of them");
        return;
    }
    const bool other_issuer = plainKey(later.issuer) != plainKey(earlier.issuer);
    remarks.add("codes.csv", later.file_line, "code",
                "the code " + inQuotes(later.code) + " means " + meaningOf(later) + " and, in " +
                    line + (other_issuer ? " by another issuer, " : ", ") + meaningOf(earlier) +
                    "; both hold in " + commonYears(one.years, other.years),
                "check both, or narrow their years");
}

// Two of different meaning that last longest are enough to find a pair that overlaps.
void keep(std::vector<const DatedCode*>& kept, const DatedCode& added)
{
    for (const DatedCode*& before : kept)
        if (meansTheSame(*before->code, *added.code)) {
            if (before->years.end() < added.years.end())
                before = &added;
            return;
        }
    kept.push_back(&added);
    std::stable_sort(kept.begin(), kept.end(), [](const DatedCode* one, const DatedCode* other) {
        return one->years.end() > other->years.end();
    });
    if (kept.size() > 3)
        kept.pop_back();
}

}  // namespace

void checkCodeMeanings(const MakerRegister& known, Remarks& remarks)
{
    std::map<std::string, std::vector<DatedCode>> groups;
    for (const Code& code : known.codes)
        if (!code.code.empty())
            groups[plainKey(code.code)].push_back({&code, {code.from, code.to}});
    for (auto& [key, group] : groups) {
        std::stable_sort(group.begin(), group.end(),
                         [](const DatedCode& one, const DatedCode& other) {
                             return one.years.start() < other.years.start();
                         });
        std::vector<const DatedCode*> kept;
        for (const DatedCode& code : group) {
            for (const DatedCode* before : kept)
                if (before->years.overlaps(code.years)) {
                    remark(code, *before, remarks);
                    break;
                }
            keep(kept, code);
        }
    }
}

}  // namespace models
