#include "models/register_loader.h"

#include <algorithm>
#include <map>
#include <optional>
#include <tuple>
#include <unordered_map>

#include "models/letters.h"
#include "models/spreadsheet_harm.h"

namespace models {

namespace {

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

RegisterFile RegisterLoader::open(const char* name)
{
    const RegisterTable& table = registerTable(name);
    RegisterFile file = pending_.name == name
                            ? RegisterFile(folder_ / name, pending_.text, table.columns)
                            : RegisterFile(folder_ / name, table.columns);
    if (table.needed && !file.isThere())
        faults.push_back({file.path(), 0, "", "the file is missing",
                          "a register needs makers.csv and marks.csv"});
    faults.insert(faults.end(), file.faults().begin(), file.faults().end());
    return file;
}

// A file without a line that could be read, and why is told already.
bool RegisterLoader::isUnread(const RegisterFile& file)
{
    return file.rows().empty() && (!file.faults().empty() || !file.isThere());
}

void RegisterLoader::readSources()
{
    const RegisterFile file = open("sources.csv");
    known.has_source_list = file.isThere();
    sources_unread_ = isUnread(file);
    for (const CsvRow& row : file.rows())
        known.sources.push_back(
            {freshId(file, row, "source_id"), plainField(file, row, "citation"), row.line});
}

void RegisterLoader::readMakers()
{
    const RegisterFile file = open("makers.csv");
    makers_unread_ = isUnread(file);
    std::unordered_map<std::string, std::size_t> line_of_name;
    known.makers.reserve(file.rows().size());
    for (const CsvRow& row : file.rows()) {
        Maker maker;
        maker.maker_id = freshId(file, row, "maker_id");
        maker.name = neededText(file, row, "name");
        maker.place = plainField(file, row, "place");
        maker.from = years(file, row, "from");
        maker.to = years(file, row, "to");
        yearOrder(file, row, maker.from, maker.to, "to");
        maker.successor_of = file.field(row, "successor_of");
        maker.notes = noteField(file, row, "notes");
        maker.source_id = source(file, row);
        maker.file_line = row.line;
        const auto [first, is_new] =
            line_of_name.emplace(plainKey(maker.name) + "\n" + plainKey(maker.place), row.line);
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

Mark RegisterLoader::readMark(const RegisterFile& file, const CsvRow& row)
{
    Mark mark;
    mark.maker_id = makerId(file, row, "maker_id");
    mark.text = file.field(row, "text");
    mark.line = markLine(file, row, mark.text);
    const auto kind = markKind(file.field(row, "kind"));
    if (!kind)
        faults.push_back(file.fault(row, "kind", inQuotes(file.field(row, "kind")) + " is no kind",
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
    mark.notes = noteField(file, row, "notes");
    mark.source_id = source(file, row);
    mark.file_line = row.line;
    return mark;
}

void RegisterLoader::readMarks()
{
    const RegisterFile file = open("marks.csv");
    std::map<std::tuple<std::string, std::string, MarkKind, MarkFrame, std::string, std::string>,
             std::size_t>
        line_of_mark;
    known.marks.reserve(file.rows().size());
    for (const CsvRow& row : file.rows()) {
        Mark mark = readMark(file, row);
        const auto [first, is_new] = line_of_mark.try_emplace(
            {mark.maker_id, mark.text, mark.kind, mark.frame, mark.from, mark.to}, row.line);
        if (is_new)  // a repeat would be remarked on once more
            known.marks.push_back(std::move(mark));
        else
            faults.push_back(file.fault(
                row, "", "this mark stands in line " + std::to_string(first->second) + " already",
                "remove one of them"));
    }
}

void RegisterLoader::readItemTypes()
{
    const RegisterFile file = open("item_types.csv");
    types_unread_ = file.isThere() && isUnread(file);
    for (const CsvRow& row : file.rows()) {
        ItemType type;
        type.type_id = freshId(file, row, "type_id");
        type.name = neededText(file, row, "name");
        type.pattern = plainField(file, row, "pattern");
        type.introduced = years(file, row, "introduced");
        type.withdrawn = years(file, row, "withdrawn");
        yearOrder(file, row, type.introduced, type.withdrawn, "withdrawn");
        type.parts = listField(file, row, "parts");
        type.sizes = listField(file, row, "sizes");
        type.notes = noteField(file, row, "notes");
        type.source_id = source(file, row);
        type.file_line = row.line;
        known.item_types.push_back(std::move(type));
    }
}

void RegisterLoader::readFeatures()
{
    const RegisterFile file = open("features.csv");
    for (const CsvRow& row : file.rows()) {
        Feature feature;
        feature.feature_id = freshId(file, row, "feature_id");
        feature.type_id = file.field(row, "type_id");
        if (!types_unread_)
            checkReference(file, row, "type_id", {"type_id", "item type", "item_types.csv"});
        feature.name = neededText(file, row, "name");
        feature.from = years(file, row, "from");
        feature.to = years(file, row, "to");
        yearOrder(file, row, feature.from, feature.to, "to");
        if (!file.field(row, "maker_id").empty())
            feature.maker_id = makerId(file, row, "maker_id");
        feature.notes = noteField(file, row, "notes");
        feature.source_id = source(file, row);
        feature.file_line = row.line;
        known.features.push_back(std::move(feature));
    }
}

void RegisterLoader::readCodes()
{
    const RegisterFile file = open("codes.csv");
    for (const CsvRow& row : file.rows()) {
        Code code;
        code.code = neededText(file, row, "code");
        const auto meaning = codeMeaning(file.field(row, "stands_for"));
        if (!meaning)
            faults.push_back(file.fault(row, "stands_for",
                                        inQuotes(file.field(row, "stands_for")) + " is no meaning",
                                        "write maker, year, quarter or inspector"));
        code.stands_for = meaning.value_or(CodeMeaning::Maker);
        code.value = file.field(row, "value");
        if (code.value.empty() || meaning == CodeMeaning::Inspector)
            neededText(file, row, "value");
        else if (meaning == CodeMeaning::Maker)
            makerId(file, row, "value");
        else if (meaning == CodeMeaning::Year)
            years(file, row, "value");
        else if (meaning == CodeMeaning::Quarter &&
                 (code.value < "1" || code.value > "4" || code.value.size() != 1))
            faults.push_back(file.fault(row, "value", inQuotes(code.value) + " is no quarter",
                                        "write 1, 2, 3 or 4"));
        code.issuer = plainField(file, row, "issuer");
        code.from = years(file, row, "from");
        code.to = years(file, row, "to");
        yearOrder(file, row, code.from, code.to, "to");
        code.notes = noteField(file, row, "notes");
        code.source_id = source(file, row);
        code.file_line = row.line;
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
    const RegisterFile file = open("spellings.csv");
    for (const CsvRow& row : file.rows())
        known.spellings.push_back(
            {neededText(file, row, "text"), neededText(file, row, "same_as"), row.line});
}

}  // namespace models
