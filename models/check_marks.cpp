#include <algorithm>
#include <functional>
#include <map>
#include <unordered_map>

#include "models/letters.h"
#include "models/mark_spellings.h"
#include "models/register_checks.h"
#include "models/spreadsheet_harm.h"

// Marks and codes that a reader of a stamp could take for one another.
namespace models {

namespace {

constexpr std::size_t most_kept = 8;  // of the marks in use longest, to compare later ones with
constexpr std::size_t most_of_a_maker = 2;

// A text by which a maker signed: a mark, or a code that stands for the maker.
struct Signature {
    std::string maker_id, text;
    std::string key;         // equal for texts that the list of spellings makes equal
    std::string looks_like;  // equal for texts that differ by characters that look alike alone
    WrittenYears years;
    MarkKind kind;
    MarkFrame frame;
    const char *file, *column;
    std::size_t line;
};

// Which words the list of spellings makes one.
class WordClasses {
public:
    explicit WordClasses(const std::vector<Spelling>& spellings)
    {
        for (const Spelling& spelling : spellings)
            joined_[first(wordKey(spelling.text))] = first(wordKey(spelling.same_as));
    }

    // A text in capitals, each word in the form that stands for all its spellings.
    std::string keyOf(const std::string& text)
    {
        std::string key, word;
        for (const char c : text + " ") {
            if (c != ' ') {
                word += c;
            } else if (!word.empty()) {
                key.append(key.empty() ? "" : " ").append(first(wordKey(word)));
                word.clear();
            }
        }
        return key;
    }

private:
    std::string first(std::string word)
    {
        for (auto next = joined_.find(word); next != joined_.end() && next->second != word;
             next = joined_.find(word))
            word = next->second;
        return word;
    }

    std::unordered_map<std::string, std::string> joined_;
};

// Full stops, hyphens and blanks are lost first when ink is faint.
std::string lookOf(const std::string& key)
{
    static const std::string like_others = "01582", letters = "OISBZ";
    std::string look;
    for (const char c : key) {
        const std::size_t at = like_others.find(c);
        if (at != std::string::npos)
            look += letters[at];
        else if (std::string(" .,-'").find(c) == std::string::npos)
            look += c;
    }
    return look;
}

std::vector<Signature> signaturesOf(const MakerRegister& known)
{
    WordClasses classes(known.spellings);
    std::unordered_map<std::string, const Maker*> makers;
    for (const Maker& maker : known.makers)
        makers.emplace(maker.maker_id, &maker);
    std::vector<Signature> all;
    const auto add = [&](const std::string& maker_id, const std::string& text,
                         const std::string& from, const std::string& to, MarkKind kind,
                         MarkFrame frame, const char* file, const char* column, std::size_t line) {
        const auto maker = makers.find(maker_id);
        const std::string key = classes.keyOf(text), look = lookOf(key);
        if (maker == makers.end() || look.empty())
            return;
        all.push_back({maker_id, text, key, look,
                       WrittenYears(from.empty() ? maker->second->from : from,
                                    to.empty() ? maker->second->to : to),
                       kind, frame, file, column, line});
    };
    for (const Mark& mark : known.marks)
        add(mark.maker_id, plainText(mark.line), mark.from, mark.to, mark.kind, mark.frame,
            "marks.csv", "text", mark.file_line);
    for (const Code& code : known.codes)
        if (code.stands_for == CodeMeaning::Maker)
            add(code.value, code.code, code.from, code.to, MarkKind::Code, MarkFrame::None,
                "codes.csv", "code", code.file_line);
    return all;
}

const char* frameName(MarkFrame frame)
{
    static const char* const names[] = {"no frame", "box", "oval", "round", "diamond"};
    return names[static_cast<std::size_t>(frame)];
}

const char* kindName(MarkKind kind)
{
    static const char* const names[] = {"text", "code", "device"};
    return names[static_cast<std::size_t>(kind)];
}

// Where the other one stands, as seen from this one.
std::string placeOf(const Signature& other, const Signature& seen_from)
{
    const std::string line = "line " + std::to_string(other.line);
    return other.file == seen_from.file ? line : std::string(other.file) + ", " + line;
}

std::string whatTellsApart(const Signature& one, const Signature& other)
{
    if (!one.years.overlaps(other.years))
        return "only the years tell them apart";
    const std::string common = commonYears(one.years, other.years);
    if (one.kind != other.kind)
        return "in " + common + " only what they are tells them apart (" + kindName(one.kind) +
               ", " + kindName(other.kind) + ")";
    if (one.frame != other.frame)
        return "in " + common + " only the frame tells them apart (" + frameName(one.frame) + ", " +
               frameName(other.frame) + ")";
    return "in " + common + " nothing else tells them apart";
}

void remark(const Signature& one, const Signature& other, Remarks& remarks)
{
    const bool in_order = std::pair(std::string(other.file) != "marks.csv", other.line) <=
                          std::pair(std::string(one.file) != "marks.csv", one.line);
    const Signature &later = in_order ? one : other, &earlier = in_order ? other : one;
    const std::string place = placeOf(earlier, later);
    if (one.maker_id == other.maker_id) {
        remarks.add(later.file, later.line, later.column,
                    "the mark " + inQuotes(later.text) + " stands in " + place +
                        " already, for the same maker and years",
                    "keep one of them, or tell them apart by their years, kind or frame");
        return;
    }
    const std::string likeness = one.key == other.key
                                     ? " is the same as "
                                     : " differs by characters that look alike alone from ";
    remarks.add(later.file, later.line, later.column,
                inQuotes(later.text) + " of " + inQuotes(later.maker_id) + likeness +
                    inQuotes(earlier.text) + " of " + inQuotes(earlier.maker_id) + " in " + place +
                    "; " + whatTellsApart(later, earlier),
                "check both, narrow their years, or note how they differ");
}

// Keeps the signatures that last longest, a few of each maker.
void keep(std::vector<const Signature*>& kept, const Signature& added)
{
    kept.push_back(&added);
    std::stable_sort(kept.begin(), kept.end(), [](const Signature* one, const Signature* other) {
        return one->years.end() > other->years.end();
    });
    std::map<std::string, std::size_t> of_maker;
    std::erase_if(
        kept, [&](const Signature* one) { return ++of_maker[one->maker_id] > most_of_a_maker; });
    if (kept.size() > most_kept)
        kept.pop_back();
}

using Alike = std::function<bool(const Signature&, const Signature&)>;

// Compares the members of a group, each with those that began before it.
//   alike  whether a pair of different makers is of the kind that is told of
void compareGroup(std::vector<const Signature*>& group, const Alike& alike, Remarks& remarks)
{
    std::stable_sort(group.begin(), group.end(), [](const Signature* one, const Signature* other) {
        return one->years.start() < other->years.start();
    });
    std::vector<const Signature*> kept;
    for (const Signature* signature : group) {
        const Signature* worst = nullptr;
        for (const Signature* before : kept) {
            if (!alike(*signature, *before))
                continue;
            if (!worst || (!worst->years.overlaps(signature->years) &&
                           before->years.overlaps(signature->years)))
                worst = before;
        }
        if (worst)
            remark(*signature, *worst, remarks);
        keep(kept, *signature);
    }
}

using Groups = std::unordered_map<std::string, std::vector<const Signature*>>;

Groups groupsBy(const std::vector<Signature>& all, std::string Signature::*key)
{
    Groups groups;
    for (const Signature& signature : all)
        groups[signature.*key].push_back(&signature);
    std::erase_if(groups, [](const auto& group) { return group.second.size() < 2; });
    return groups;
}

}  // namespace

void checkMarksApart(const MakerRegister& known, Remarks& remarks)
{
    const std::vector<Signature> all = signaturesOf(known);
    const auto is_code = [](const Signature& one) { return std::string(one.file) == "codes.csv"; };
    const auto same = [&](const Signature& one, const Signature& other) {
        if (is_code(one) && is_code(other))
            return false;  // told of as a code that means two things
        if (one.maker_id != other.maker_id)
            return true;
        return one.text == other.text && one.kind == other.kind && one.frame == other.frame &&
               one.file == other.file && one.years.overlaps(other.years);
    };
    const auto look_alike = [](const Signature& one, const Signature& other) {
        return one.maker_id != other.maker_id && one.key != other.key;
    };
    for (auto& [key, group] : groupsBy(all, &Signature::key))
        compareGroup(group, same, remarks);
    for (auto& [look, group] : groupsBy(all, &Signature::looks_like))
        compareGroup(group, look_alike, remarks);
}

}  // namespace models
