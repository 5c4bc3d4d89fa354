#include <algorithm>
#include <unordered_map>

#include "models/register_checks.h"
#include "models/spreadsheet_harm.h"

// Years that contradict each other, and makers that succeed each other.
namespace models {

namespace {

constexpr int slack_of_soft_years = 2;       // what "about" may mean
constexpr int longest_gap_to_successor = 5;  // common practice, no source

// Something that is told of, and when it was.
struct Dated {
    std::string name;
    WrittenYears years;
};

struct Place {
    const char* file;
    std::size_t line;
    const char *from_column, *to_column;
};

// Remarks what of `inner` surely lies outside `outer`.
void checkWithin(const Dated& inner, const Dated& outer, const Place& place, Remarks& remarks)
{
    const WrittenYears &in = inner.years, &out = outer.years;
    const int slack = in.is_soft || out.is_soft ? slack_of_soft_years : 0;
    const std::string remedy = "check the years of both";
    const auto tell = [&](const char* column, const std::string& problem) {
        remarks.add(place.file, place.line, column, inner.name + problem, remedy);
    };
    if (out.from_first && in.to_last && *in.to_last < *out.from_first - slack)
        tell(place.to_column,
             " ends " + in.to + ", before " + outer.name + " begins (" + out.from + ")");
    else if (out.from_first && in.from_last && *in.from_last < *out.from_first - slack)
        tell(place.from_column,
             " begins " + in.from + ", before " + outer.name + " does (" + out.from + ")");
    if (out.to_last && in.from_first && *in.from_first > *out.to_last + slack)
        tell(place.from_column,
             " begins " + in.from + ", after " + outer.name + " ends (" + out.to + ")");
    else if (out.to_last && in.to_first && *in.to_first > *out.to_last + slack)
        tell(place.to_column,
             " ends " + in.to + ", after " + outer.name + " does (" + out.to + ")");
}

using MakerIndex = std::unordered_map<std::string, std::size_t>;

MakerIndex indexOf(const std::vector<Maker>& makers)
{
    MakerIndex index;
    for (std::size_t i = 0; i < makers.size(); ++i)
        index.emplace(makers[i].maker_id, i);
    return index;
}

std::vector<Dated> datedMakers(const std::vector<Maker>& makers)
{
    std::vector<Dated> dated;
    for (const Maker& maker : makers)
        dated.push_back({"the maker " + inQuotes(maker.maker_id), {maker.from, maker.to}});
    return dated;
}

void checkFeatureYears(const MakerRegister& known, const MakerIndex& index,
                       const std::vector<Dated>& makers, Remarks& remarks)
{
    std::unordered_map<std::string, Dated> types;
    for (const ItemType& type : known.item_types)
        types.emplace(type.type_id, Dated{"its item type " + inQuotes(type.type_id),
                                          {type.introduced, type.withdrawn}});
    for (const Feature& feature : known.features) {
        const Dated dated{"the feature " + inQuotes(feature.feature_id),
                          {feature.from, feature.to}};
        const Place place{"features.csv", feature.file_line, "from", "to"};
        if (const auto type = types.find(feature.type_id); type != types.end())
            checkWithin(dated, type->second, place, remarks);
        if (const auto maker = index.find(feature.maker_id); maker != index.end())
            checkWithin(dated, makers[maker->second], place, remarks);
    }
}

void checkCodeYears(const MakerRegister& known, const MakerIndex& index,
                    const std::vector<Dated>& makers, Remarks& remarks)
{
    for (const Code& code : known.codes) {
        const Dated dated{"the code " + inQuotes(code.code), {code.from, code.to}};
        const Place place{"codes.csv", code.file_line, "from", "to"};
        const auto maker = index.find(code.value);
        if (code.stands_for == CodeMeaning::Maker && maker != index.end())
            checkWithin(dated, makers[maker->second], place, remarks);
        if (code.stands_for != CodeMeaning::Year)
            continue;
        const WrittenYears meant(code.value, code.value);
        if (!meant.overlaps(dated.years))
            remarks.add(
                "codes.csv", code.file_line, "value",
                dated.name + " means " + code.value + ", outside the years in which it was used",
                "check the value and the years");
    }
}

// The makers from which this one takes over, each once, until the first or one met before.
std::string chainFrom(const std::vector<Maker>& makers, const MakerIndex& index, std::size_t at)
{
    constexpr int most_told = 6;
    std::string chain = inQuotes(makers[at].maker_id);
    std::size_t next = index.at(makers[at].successor_of);
    for (int told = 1; next != at && told < most_told; ++told) {
        chain += " after " + inQuotes(makers[next].maker_id);
        next = index.at(makers[next].successor_of);
    }
    return chain + (next == at ? " after " + inQuotes(makers[at].maker_id) : " and so on");
}

void checkCircles(const std::vector<Maker>& makers, const MakerIndex& index, Remarks& remarks)
{
    constexpr std::size_t unseen = 0;
    std::vector<std::size_t> seen_in(makers.size(), unseen);  // the walk that came by
    for (std::size_t start = 0; start < makers.size(); ++start) {
        std::size_t at = start;
        const std::size_t walk = start + 1;
        while (seen_in[at] == unseen) {
            seen_in[at] = walk;
            const auto before = index.find(makers[at].successor_of);
            if (before == index.end() || before->second == at)  // oneself is a fault already
                break;
            at = before->second;
            if (seen_in[at] == walk) {
                remarks.add(
                    "makers.csv", makers[at].file_line, "successor_of",
                    "makers succeed each other in a circle: " + chainFrom(makers, index, at),
                    "empty the field of the one that was first");
            }
        }
    }
}

}  // namespace

void checkYears(const MakerRegister& known, Remarks& remarks)
{
    const MakerIndex index = indexOf(known.makers);
    const std::vector<Dated> makers = datedMakers(known.makers);
    for (const Mark& mark : known.marks)
        if (const auto maker = index.find(mark.maker_id); maker != index.end())
            checkWithin({"the mark " + inQuotes(mark.text), {mark.from, mark.to}},
                        makers[maker->second], {"marks.csv", mark.file_line, "from", "to"},
                        remarks);
    checkFeatureYears(known, index, makers, remarks);
    checkCodeYears(known, index, makers, remarks);
}

void checkSuccession(const MakerRegister& known, Remarks& remarks)
{
    const MakerIndex index = indexOf(known.makers);
    checkCircles(known.makers, index, remarks);
    for (const Maker& maker : known.makers) {
        const auto found = index.find(maker.successor_of);
        if (found == index.end() || maker.successor_of == maker.maker_id)
            continue;
        const Maker& before = known.makers[found->second];
        const WrittenYears later(maker.from, maker.to), earlier(before.from, before.to);
        const int slack = later.is_soft || earlier.is_soft ? slack_of_soft_years : 0;
        if (later.from_last && earlier.from_first && *later.from_last < *earlier.from_first - slack)
            remarks.add("makers.csv", maker.file_line, "from",
                        "the successor begins " + maker.from + ", before " +
                            inQuotes(before.maker_id) + " itself (" + before.from + ")",
                        "check which of them came first");
        if (later.from_first && earlier.to_last &&
            *later.from_first > *earlier.to_last + longest_gap_to_successor)
            remarks.add("makers.csv", maker.file_line, "from",
                        "the successor begins " + maker.from + ", long after " +
                            inQuotes(before.maker_id) + " ended (" + before.to + ")",
                        "check the years, or whether another maker stood between");
        if (later.to_last && earlier.from_first && *later.to_last < *earlier.from_first - slack)
            remarks.add("makers.csv", maker.file_line, "to",
                        "the successor ends " + maker.to + ", before " + inQuotes(before.maker_id) +
                            " began (" + before.from + ")",
                        "check which of them came first");
    }
}

}  // namespace models
