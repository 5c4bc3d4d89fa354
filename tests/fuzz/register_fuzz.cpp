// Any text as a file of a register whose other files are sound: it is checked without a throw, each
// finding names a place and a remedy; what has no fault is whole, ranks a reading, and grows by a
// line without losing one. The text's first line names the file; without a name it is makers.csv.
#include <algorithm>
#include <cmath>
#include <set>

#include "models/candidates.h"
#include "models/edtf.h"
#include "models/register_append.h"
#include "models/register_check.h"
#include "models/typed_notation.h"
#include "tests/fuzz/fuzz_driver.h"
#include "tests/models/register_folder.h"

namespace {

const support::RegisterFiles& soundFiles()
{
    static const support::RegisterFiles files = {
        {"makers.csv",
         "maker_id,name,place,from,to,successor_of,notes,source_id\n"
         "m1,Orrin & Pelk,Saltmere,1921,1934~,,\"two works, one yard\",s1\n"
         "m2,Pelk Ltd,,[1934..1936],,m1,,\n"},
        {"marks.csv",
         "maker_id,text,kind,frame,from,to,notes,source_id\n"
         "m1,O. & P.,text,oval,1921,,,s1\nm2,PELK [...] LTD,text,none,,,,\nm2,\\3/40,code,,,,,\n"},
        {"item_types.csv",
         "type_id,name,pattern,introduced,withdrawn,parts,sizes,notes,source_id\n"
         "belt,Rescue belt,1921 pattern,1921,195X,body|buckle,28|32|36,,s1\n"},
        {"features.csv",
         "feature_id,type_id,name,from,to,maker_id,notes,source_id\n"
         "f1,belt,Brass buckle,1921,1940?,m1,,\n"},
        {"codes.csv",
         "code,stands_for,value,issuer,from,to,notes,source_id\n"
         "K7,maker,m2,Trust,1941,1945,,s1\nYA,year,1941,Trust,,,,\nQ1,quarter,1,,,,,\n"
         "012,inspector,Viewer,Trust,,,,\n"},
        {"spellings.csv", "text,same_as\nLTD,LIMITED\n&,AND\n"},
        {"sources.csv", "source_id,citation\ns1,\"Ledger, made up\"\n"},
    };
    return files;
}

void promise(bool holds, const char* what)
{
    if (!holds)
        fuzz::failed(what);
}

models::PendingFile fileOf(std::string_view text)
{
    const std::string_view name = text.substr(0, text.find('\n'));
    if (soundFiles().count(std::string(name)) == 0)
        return {"makers.csv", std::string(text)};
    return {std::string(name), std::string(text.substr(std::min(name.size() + 1, text.size())))};
}

void checkFinding(const models::RegisterFinding& finding, const models::PendingFile& pending)
{
    const auto lines = static_cast<std::size_t>(std::count_if(
        pending.text.begin(), pending.text.end(), [](char c) { return c == '\n' || c == '\r'; }));
    const std::string file = finding.what.file.filename().string();
    promise(soundFiles().count(file) == 1, "a finding names a file of the register");
    promise(file != pending.name || finding.what.line <= lines + 1, "and a line that it has");
    promise(!finding.what.problem.empty() && !finding.what.remedy.empty(),
            "and what is wrong and what to do");
}

void checkYears(const std::string& from, const std::string& to)
{
    for (const std::string& years : {from, to})
        promise(years.empty() || models::edtfYearBounds(years), "years are EDTF with bounds");
}

void checkWhole(const models::MakerRegister& known)
{
    std::set<std::string> ids;
    for (const models::Maker& maker : known.makers) {
        promise(!maker.maker_id.empty() && ids.insert(maker.maker_id).second, "ids are unique");
        checkYears(maker.from, maker.to);
    }
    for (const models::Mark& mark : known.marks) {
        promise(known.maker(mark.maker_id) != nullptr, "a mark has a maker");
        const models::ParsedNotation again = models::parseTyped(mark.text);
        promise(again.lines.size() == 1 && again.lines.front() == mark.line, "a mark is one line");
        checkYears(mark.from, mark.to);
    }
    for (const models::ItemType& type : known.item_types)
        checkYears(type.introduced, type.withdrawn);
    for (const models::Code& code : known.codes)
        promise(code.stands_for != models::CodeMeaning::Maker || known.maker(code.value),
                "a code's maker is there");
}

void checkRanking(const models::MakerRegister& known)
{
    models::Reading reading;
    reading.lines = models::parseTyped("O. & P?. / K7 YA").lines;
    const models::CandidateList list = models::rankCandidates({{reading}, ""}, known);
    double sum = list.other_makers + list.unknown_maker;
    for (const models::Candidate& candidate : list.candidates)
        sum += candidate.probability;
    promise(std::abs(sum - 1) < 1e-6, "the candidates' probabilities sum to 1");
}

// A source is added to whatever the file is, or a spelling to the file of spellings.
void checkGrowth(const support::RegisterFolder& folder, const models::PendingFile& pending)
{
    const bool is_sources = pending.name == "sources.csv";
    if (!is_sources && pending.name != "spellings.csv")
        return;
    std::ofstream(folder.path / pending.name, std::ios::binary) << pending.text;
    const models::RegisterTable& table = models::registerTable(pending.name);
    const std::vector<models::CsvRow> before = models::readCsv(pending.text).rows;
    const models::Appended appended = models::appendToRegister(
        folder.path, table,
        {{table.columns.required[0], "a \"new\" one"}, {table.columns.required[1], "K, L;M"}});
    const std::string text = folder.bytes(pending.name);
    const std::vector<models::CsvRow> after = models::readCsv(text).rows;
    const std::size_t added = appended.line > 0 ? 1 : 0;
    promise(added == 1 || text == pending.text, "a refused line leaves the file as it was");
    promise(text.rfind(pending.text, 0) == 0, "what stood there stands there");
    promise(after.size() == before.size() + added, "one line is added");
    for (std::size_t i = 0; i < before.size(); ++i)
        promise(after[i].fields == before[i].fields, "and no other changed");
    std::ofstream(folder.path / pending.name, std::ios::binary) << soundFiles().at(pending.name);
}

}  // namespace

FuzzSeeds fuzzSeeds()
{
    FuzzSeeds seeds;
    for (const auto& [name, text] : soundFiles()) {
        seeds.texts.push_back(name + "\n" + text);
        seeds.texts.push_back(name + "\n\xEF\xBB\xBF" + text);
    }
    seeds.texts.push_back("makers.csv\nsep=;\r\nname;maker_id\r\n\"A;B\";m1\r\nC;m2\r\n");
    seeds.texts.push_back("spellings.csv\nTEXT\tSame_As\rLTD\tLIMITED\r");
    seeds.pieces = {"makers.csv\n",
                    "sources.csv\n",
                    "spellings.csv\n",
                    ",",
                    ";",
                    "\t",
                    "\"",
                    "\"\"",
                    "\n",
                    "\r\n",
                    "\r",
                    "\n\n",
                    "sep=;\n",
                    "\xEF\xBB\xBF",
                    "\xFF\xFE",
                    "m1",
                    "m2",
                    "s1",
                    "1930",
                    "1930/1934",
                    "193X",
                    "..",
                    "1930s",
                    "Mar-40",
                    "1.2E+10",
                    "#REF!",
                    "\\",
                    "[- - -]",
                    "(A|B)",
                    "|",
                    " / ",
                    "{arrow}",
                    "\xC3\x89",
                    "\xC3\x83\xC2\xA9",
                    "0012",
                    "text",
                    "oval",
                    "maker",
                    "year",
                    "quarter",
                    ",,,,,",
                    "source_id",
                    "maker_id"};
    return seeds;
}

bool fuzzOne(std::string_view text)
{
    static const support::RegisterFolder folder(soundFiles());
    const models::PendingFile pending = fileOf(text);
    const std::vector<models::RegisterFinding> findings =
        models::checkRegister(folder.path, pending);
    for (const models::RegisterFinding& finding : findings)
        checkFinding(finding, pending);
    models::RegisterLoader loader(folder.path, pending);
    loader.load();
    const bool is_sound =
        std::none_of(findings.begin(), findings.end(),
                     [](const models::RegisterFinding& finding) { return finding.is_fault; });
    promise(loader.faults.empty() == is_sound, "what is loaded has the faults that are told");
    if (!is_sound)
        return false;
    checkWhole(loader.known);
    checkRanking(loader.known);
    checkGrowth(folder, pending);
    return true;
}
