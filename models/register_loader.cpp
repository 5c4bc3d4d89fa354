#include "models/register_loader.h"

#include <algorithm>
#include <map>
#include <optional>

#include "models/edtf.h"
#include "models/letters.h"
#include "models/spreadsheet_harm.h"

namespace models {

namespace {

// Names that differ in capitals and blanks alone are one name to a person.
std::string nameKey(const std::string& name)
{
    std::string key;
    for (const std::string& character : charactersOf(name))
        if (character != " ")
            key += capitalOf(normalForm(character));
    return key;
}

std::vector<std::string> splitList(const std::string& text)
{
    std::vector<std::string> parts;
    std::string part;
    for (const char c : text + "|") {
        if (c != '|') {
            part += c;
        } else if (!part.empty()) {
            parts.push_back(part);
            part.clear();
        }
    }
    return parts;
}

std::optional<MarkKind> markKind(const std::string& word)
{
    static const std::map<std::string, MarkKind> kinds = {{"", MarkKind::Text},
                                                          {"text", MarkKind::Text},
                                                          {"code", MarkKind::Code},
                                                          {"device", MarkKind::Device}};
    const auto found = kinds.find(word);
    return found == kinds.end() ? std::nullopt : std::optional(found->second);
}

std::optional<MarkFrame> markFrame(const std::string& word)
{
    static const std::map<std::string, MarkFrame> frames = {
        {"", MarkFrame::None},     {"none", MarkFrame::None},   {"box", MarkFrame::Box},
        {"oval", MarkFrame::Oval}, {"round", MarkFrame::Round}, {"diamond", MarkFrame::Diamond}};
    const auto found = frames.find(word);
    return found == frames.end() ? std::nullopt : std::optional(found->second);
}

std::optional<CodeMeaning> codeMeaning(const std::string& word)
{
    static const std::map<std::string, CodeMeaning> meanings = {
        {"maker", CodeMeaning::Maker},
        {"year", CodeMeaning::Year},
        {"quarter", CodeMeaning::Quarter},
        {"inspector", CodeMeaning::Inspector}};
    const auto found = meanings.find(word);
    return found == meanings.end() ? std::nullopt : std::optional(found->second);
}

bool isDigits(const std::string& text)
{
    return !text.empty() && text.find_first_not_of("0123456789") == std::string::npos;
}

}  // namespace

void RegisterLoader::load()
{
    readSources();
    readMakers();
    readMarks();
    readItemTypes();
    readFeatures();
    readCodes();
    readSpellings();
}

RegisterFile RegisterLoader::open(const char* name, const ColumnPlan& plan, bool must_be_there)
{
    RegisterFile file(folder_ / name, plan);
    if (must_be_there && !file.isThere())
        faults.push_back({file.path(), 0, "", "the file is missing",
                          "a register needs makers.csv and marks.csv"});
    faults.insert(faults.end(), file.faults().begin(), file.faults().end());
    return file;
}

void RegisterLoader::readSources()
{
    const RegisterFile file = open("sources.csv", {{"source_id", "citation"}, {}}, false);
    has_sources_ = file.isThere();
    for (const CsvRow& row : file.rows())
        known.sources.push_back({freshId(file, row, "source_id"), file.field(row, "citation")});
}

void RegisterLoader::readMakers()
{
    const RegisterFile file =
        open("makers.csv",
             {{"maker_id", "name"}, {"place", "from", "to", "successor_of", "notes", "source_id"}},
             true);
    std::map<std::string, std::size_t> line_of_name;
    for (const CsvRow& row : file.rows()) {
        Maker maker;
        maker.maker_id = freshId(file, row, "maker_id");
        maker.name = neededText(file, row, "name");
        maker.place = file.field(row, "place");
        maker.from = years(file, row, "from");
        maker.to = years(file, row, "to");
        yearOrder(file, row, maker.from, maker.to, "to");
        maker.successor_of = file.field(row, "successor_of");
        maker.notes = file.field(row, "notes");
        maker.source_id = source(file, row);
        const auto [first, is_new] = line_of_name.emplace(nameKey(maker.name), row.line);
        if (!is_new && !maker.name.empty())
            faults.push_back(file.fault(row, "name",
                                        "the maker " + inQuotes(maker.name) + " stands in line " +
                                            std::to_string(first->second) + " already",
                                        "tell them apart, by the place for instance"));
        known.makers.push_back(std::move(maker));
    }
    checkSuccessors(file);
}

void RegisterLoader::checkSuccessors(const RegisterFile& file)
{
    for (const CsvRow& row : file.rows()) {
        const std::string before = file.field(row, "successor_of");
        if (!before.empty() && before == file.field(row, "maker_id"))
            faults.push_back(file.fault(row, "successor_of", "a maker cannot succeed itself",
                                        "leave the field empty"));
        else if (!before.empty())
            makerId(file, row, "successor_of");
    }
}

void RegisterLoader::readMarks()
{
    const RegisterFile file =
        open("marks.csv",
             {{"maker_id", "text"}, {"kind", "frame", "from", "to", "notes", "source_id"}}, true);
    std::map<std::string, std::size_t> line_of_mark;
    for (const CsvRow& row : file.rows()) {
        Mark mark;
        mark.maker_id = makerId(file, row, "maker_id");
        mark.text = file.field(row, "text");
        mark.line = markLine(file, row, mark.text);
        const auto kind = markKind(file.field(row, "kind"));
        if (!kind)
            faults.push_back(file.fault(row, "kind",
                                        inQuotes(file.field(row, "kind")) + " is no kind",
                                        "write text, code or device"));
        const auto frame = markFrame(file.field(row, "frame"));
        if (!frame)
            faults.push_back(file.fault(row, "frame",
                                        inQuotes(file.field(row, "frame")) + " is no frame",
                                        "write none, box, oval, round or diamond"));
        mark.kind = kind.value_or(MarkKind::Text);
        mark.frame = frame.value_or(MarkFrame::None);
        mark.from = years(file, row, "from");
        mark.to = years(file, row, "to");
        yearOrder(file, row, mark.from, mark.to, "to");
        mark.notes = file.field(row, "notes");
        mark.source_id = source(file, row);
        const std::string key =
            mark.maker_id + "\n" + mark.text + "\n" + mark.from + "\n" + mark.to;
        const auto [first, is_new] = line_of_mark.emplace(key, row.line);
        if (!is_new)
            faults.push_back(file.fault(
                row, "", "this mark stands in line " + std::to_string(first->second) + " already",
                "remove one of them"));
        known.marks.push_back(std::move(mark));
    }
}

void RegisterLoader::readItemTypes()
{
    const RegisterFile file =
        open("item_types.csv",
             {{"type_id", "name"},
              {"pattern", "introduced", "withdrawn", "parts", "sizes", "notes", "source_id"}},
             false);
    for (const CsvRow& row : file.rows()) {
        ItemType type;
        type.type_id = freshId(file, row, "type_id");
        type.name = neededText(file, row, "name");
        type.pattern = file.field(row, "pattern");
        type.introduced = years(file, row, "introduced");
        type.withdrawn = years(file, row, "withdrawn");
        yearOrder(file, row, type.introduced, type.withdrawn, "withdrawn");
        type.parts = splitList(file.field(row, "parts"));
        type.sizes = splitList(file.field(row, "sizes"));
        type.notes = file.field(row, "notes");
        type.source_id = source(file, row);
        known.item_types.push_back(std::move(type));
    }
}

void RegisterLoader::readFeatures()
{
    const RegisterFile file =
        open("features.csv",
             {{"feature_id", "type_id", "name"}, {"from", "to", "maker_id", "notes", "source_id"}},
             false);
    for (const CsvRow& row : file.rows()) {
        Feature feature;
        feature.feature_id = freshId(file, row, "feature_id");
        feature.type_id = file.field(row, "type_id");
        if (ids_["type_id"].count(feature.type_id) == 0)
            faults.push_back(file.fault(
                row, "type_id",
                "the item type " + inQuotes(feature.type_id) + " is not in item_types.csv",
                "add it there or correct it here"));
        feature.name = neededText(file, row, "name");
        feature.from = years(file, row, "from");
        feature.to = years(file, row, "to");
        yearOrder(file, row, feature.from, feature.to, "to");
        if (!file.field(row, "maker_id").empty())
            feature.maker_id = makerId(file, row, "maker_id");
        feature.notes = file.field(row, "notes");
        feature.source_id = source(file, row);
        known.features.push_back(std::move(feature));
    }
}

void RegisterLoader::readCodes()
{
    const RegisterFile file = open(
        "codes.csv",
        {{"code", "stands_for", "value"}, {"issuer", "from", "to", "notes", "source_id"}}, false);
    for (const CsvRow& row : file.rows()) {
        Code code;
        code.code = neededText(file, row, "code");
        if (const auto harm = markHarm(code.code))
            faults.push_back(file.fault(row, "code", harm->problem, harm->remedy));
        const auto meaning = codeMeaning(file.field(row, "stands_for"));
        if (!meaning)
            faults.push_back(file.fault(row, "stands_for",
                                        inQuotes(file.field(row, "stands_for")) + " is no meaning",
                                        "write maker, year, quarter or inspector"));
        code.stands_for = meaning.value_or(CodeMeaning::Maker);
        code.value = neededText(file, row, "value");
        if (meaning == CodeMeaning::Maker)
            makerId(file, row, "value");
        if (meaning == CodeMeaning::Year)
            years(file, row, "value");
        if (meaning == CodeMeaning::Quarter &&
            (code.value < "1" || code.value > "4" || code.value.size() != 1))
            faults.push_back(file.fault(row, "value", inQuotes(code.value) + " is no quarter",
                                        "write 1, 2, 3 or 4"));
        code.issuer = file.field(row, "issuer");
        code.from = years(file, row, "from");
        code.to = years(file, row, "to");
        yearOrder(file, row, code.from, code.to, "to");
        code.notes = file.field(row, "notes");
        code.source_id = source(file, row);
        known.codes.push_back(std::move(code));
    }
    checkLeadingZeros(file);
}

// Where an issuer's numbers have one width with zeros in front, a shorter one has lost its zeros.
void RegisterLoader::checkLeadingZeros(const RegisterFile& file)
{
    std::map<std::string, std::size_t> width_of_issuer;
    for (const CsvRow& row : file.rows()) {
        const std::string code = file.field(row, "code");
        if (isDigits(code) && code.size() > 1 && code[0] == '0')
            width_of_issuer.emplace(file.field(row, "issuer"), code.size());
    }
    for (const CsvRow& row : file.rows()) {
        const std::string code = file.field(row, "code");
        const auto width = width_of_issuer.find(file.field(row, "issuer"));
        if (width != width_of_issuer.end() && isDigits(code) && code.size() < width->second)
            faults.push_back(file.fault(
                row, "code", inQuotes(code) + " may have lost zeros in front to a spreadsheet",
                "write all " + std::to_string(width->second) +
                    " digits and set the column to text"));
    }
}

void RegisterLoader::readSpellings()
{
    const RegisterFile file = open("spellings.csv", {{"text", "same_as"}, {}}, false);
    for (const CsvRow& row : file.rows())
        known.spellings.push_back(
            {neededText(file, row, "text"), neededText(file, row, "same_as")});
}

}  // namespace models
