#include <algorithm>
#include <map>
#include <set>

#include "models/letters.h"
#include "models/register_checks.h"
#include "models/spreadsheet_harm.h"

// Things that stand in a register twice, and sources that stand nowhere.
namespace models {

namespace {

// Remembers where each key stood first.
class Repeats {
public:
    Repeats(const char* file, const char* column, Remarks& remarks)
        : file_(file), column_(column), remarks_(remarks)
    {
    }

    void see(const std::string& key, std::size_t line, const std::string& what,
             const std::string& remedy)
    {
        const auto [first, is_new] = line_of_.emplace(key, line);
        if (!is_new)
            remarks_.add(file_, line, column_,
                         what + " stands in line " + std::to_string(first->second) + " already",
                         remedy);
    }

private:
    const char *file_, *column_;
    Remarks& remarks_;
    std::map<std::string, std::size_t> line_of_;
};

// What a row says in one field.
struct Entry {
    std::string text;
    std::size_t line;
};

// Ids that differ in capitals alone; the same id twice is a fault, told elsewhere.
void checkIds(const std::vector<Entry>& ids, const char* file, const char* column, Remarks& remarks)
{
    std::map<std::string, const Entry*> first_of_key;
    for (const Entry& id : ids) {
        const auto [first, is_new] = first_of_key.emplace(plainKey(id.text), &id);
        if (!is_new && first->second->text != id.text)
            remarks.add(file, id.line, column,
                        "the id " + inQuotes(id.text) +
                            " differs in capitals or blanks alone from " +
                            inQuotes(first->second->text) + " in line " +
                            std::to_string(first->second->line),
                        "give one of them another id");
    }
}

void checkTypesAndFeatures(const MakerRegister& known, Remarks& remarks)
{
    Repeats types("item_types.csv", "name", remarks);
    for (const ItemType& type : known.item_types)
        types.see(plainKey(type.name) + "\n" + plainKey(type.pattern) + "\n" + type.introduced,
                  type.file_line, "an item type of this name and pattern",
                  "tell them apart by name or pattern, or remove one of them");
    Repeats features("features.csv", "name", remarks);
    for (const Feature& feature : known.features)
        features.see(feature.type_id + "\n" + plainKey(feature.name) + "\n" + feature.maker_id +
                         "\n" + feature.from + "\n" + feature.to,
                     feature.file_line, "a feature of this type, name and years",
                     "remove one of them");
}

// Of one name and place is a fault, told elsewhere.
void checkMakerNames(const std::vector<Maker>& makers, Remarks& remarks)
{
    std::map<std::string, const Maker*> first_of_name;
    std::set<std::string> seen;
    for (const Maker& maker : makers) {
        const std::string name = plainKey(maker.name);
        const bool is_new_place = seen.insert(name + "\n" + plainKey(maker.place)).second;
        const auto [first, is_new] = first_of_name.emplace(name, &maker);
        if (!is_new && is_new_place && !name.empty())
            remarks.add("makers.csv", maker.file_line, "name",
                        "the maker " + inQuotes(maker.name) + " stands in line " +
                            std::to_string(first->second->file_line) + " already, of another place",
                        "make sure that they are two makers, or remove one of them");
    }
}

void checkCited(const std::vector<Entry>& source_ids, const char* file, Remarks& remarks)
{
    const Entry* first = nullptr;
    std::size_t count = 0;
    for (const Entry& cited : source_ids) {
        count += cited.text.empty() ? 0 : 1;
        if (!first && !cited.text.empty())
            first = &cited;
    }
    if (first)
        remarks.add(file, first->line, "source_id",
                    "the source " + inQuotes(first->text) +
                        " is cited, but there is no sources.csv that tells what it is (" +
                        std::to_string(count) + " such in this file)",
                    "write a sources.csv (source_id,citation) that lists every source cited");
}

// One field of every row.
const auto entriesOf = [](const auto& rows, auto field) {
    std::vector<Entry> entries;
    for (const auto& row : rows)
        entries.push_back({row.*field, row.file_line});
    return entries;
};

}  // namespace

void checkRepeats(const MakerRegister& known, Remarks& remarks)
{
    checkIds(entriesOf(known.makers, &Maker::maker_id), "makers.csv", "maker_id", remarks);
    checkIds(entriesOf(known.item_types, &ItemType::type_id), "item_types.csv", "type_id", remarks);
    checkIds(entriesOf(known.features, &Feature::feature_id), "features.csv", "feature_id",
             remarks);
    checkIds(entriesOf(known.sources, &Source::source_id), "sources.csv", "source_id", remarks);
    checkMakerNames(known.makers, remarks);
    checkTypesAndFeatures(known, remarks);
    Repeats citations("sources.csv", "citation", remarks);
    for (const Source& source : known.sources)
        if (!source.citation.empty())
            citations.see(plainKey(source.citation), source.file_line, "this citation",
                          "keep one of them and cite its id");
    Repeats spellings("spellings.csv", "", remarks);
    for (const Spelling& spelling : known.spellings) {
        const std::string text = plainKey(spelling.text), same = plainKey(spelling.same_as);
        spellings.see(std::min(text, same) + "\n" + std::max(text, same), spelling.file_line,
                      "this pair", "remove one of them");
        if (text == same && !text.empty())
            remarks.add("spellings.csv", spelling.file_line, "same_as",
                        inQuotes(spelling.text) + " is said to be the same as itself",
                        "write another spelling or remove the line");
    }
}

void checkUnlistedSources(const MakerRegister& known, Remarks& remarks)
{
    if (known.has_source_list)
        return;
    checkCited(entriesOf(known.makers, &Maker::source_id), "makers.csv", remarks);
    checkCited(entriesOf(known.marks, &Mark::source_id), "marks.csv", remarks);
    checkCited(entriesOf(known.item_types, &ItemType::source_id), "item_types.csv", remarks);
    checkCited(entriesOf(known.features, &Feature::source_id), "features.csv", remarks);
    checkCited(entriesOf(known.codes, &Code::source_id), "codes.csv", remarks);
}

}  // namespace models
