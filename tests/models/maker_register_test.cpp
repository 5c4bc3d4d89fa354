#include "models/maker_register.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <map>
#include <random>

#include "models/edtf.h"

namespace {

// A folder of its own for each test, removed at the end.
class TemporaryFolder {
public:
    TemporaryFolder()
    {
        std::random_device random;
        path = std::filesystem::temp_directory_path() /
               ("weftmark_register_" + std::to_string(random()));
        std::filesystem::create_directories(path);
    }
    ~TemporaryFolder() { std::filesystem::remove_all(path); }
    TemporaryFolder(const TemporaryFolder&) = delete;
    TemporaryFolder& operator=(const TemporaryFolder&) = delete;

    std::filesystem::path path;
};

using Files = std::map<std::string, std::string>;

Files smallRegister()
{
    return {{"makers.csv", "maker_id,name,from,to\nm1,Orrin & Co,1921,1938~\nm2,Pelk Ltd,,\n"},
            {"marks.csv",
             "maker_id,text,kind,frame,from,to\nm1,O. & CO,text,box,1922,\nm2,P4,code,,,\n"}};
}

models::MakerRegister load(const Files& files)
{
    const TemporaryFolder folder;
    for (const auto& [name, text] : files)
        std::ofstream(folder.path / name, std::ios::binary) << text;
    return models::loadRegister(folder.path);
}

std::vector<models::RegisterFault> faultsOf(const Files& files)
{
    try {
        load(files);
    } catch (const models::RegisterError& error) {
        CHECK(std::string(error.what()).find(error.faults().front().message()) !=
              std::string::npos);
        return error.faults();
    }
    return {};
}

// The register with one file changed has just this fault.
void checkFault(const std::string& file, const std::string& text, std::size_t line,
                const std::string& column, const std::string& part)
{
    CAPTURE(file, text, part);
    Files files = smallRegister();
    files[file] = text;
    const std::vector<models::RegisterFault> faults = faultsOf(files);
    REQUIRE(faults.size() == 1);
    CAPTURE(faults[0].message());
    CHECK(faults[0].file.filename() == file);
    CHECK(faults[0].line == line);
    CHECK(faults[0].column == column);
    CHECK(faults[0].message().find(part) != std::string::npos);
    CHECK_FALSE(faults[0].remedy.empty());
}

}  // namespace

TEST_CASE("The demo register loads whole and is what it says", "[models][register]")
{
    const models::MakerRegister known =
        models::loadRegister(std::filesystem::path(WEFTMARK_SOURCE_DIR) / "models/register");

    CHECK(known.makers.size() == 30);
    CHECK(known.marks.size() >= 70);
    CHECK(known.item_types.size() == 8);
    CHECK(known.features.size() >= 12);
    CHECK_FALSE(known.codes.empty());
    CHECK_FALSE(known.spellings.empty());
    for (const models::Source& source : known.sources)
        CHECK(source.citation.find("invented") != std::string::npos);
    for (const models::Maker& maker : known.makers) {
        CAPTURE(maker.maker_id);
        const bool has_mark =
            std::any_of(known.marks.begin(), known.marks.end(),
                        [&](const models::Mark& mark) { return mark.maker_id == maker.maker_id; });
        CHECK(has_mark);
        if (!maker.successor_of.empty())
            CHECK(known.maker(maker.successor_of));
    }
}

TEST_CASE("Makers, marks and types keep what the files say", "[models][register]")
{
    Files files = smallRegister();
    files["item_types.csv"] = "type_id;name;parts\nt1;Strap;body|tab\n";  // another separator
    const models::MakerRegister known = load(files);

    REQUIRE(known.maker("m1"));
    CHECK(known.maker("m1")->to == "1938~");
    CHECK_FALSE(known.maker("m3"));
    REQUIRE(known.marks.size() == 2);
    CHECK(known.marks[0].frame == models::MarkFrame::Box);
    CHECK(models::plainText(known.marks[0].line) == "O. & CO");
    CHECK(known.marks[1].kind == models::MarkKind::Code);
    REQUIRE(known.itemType("t1"));
    CHECK(known.itemType("t1")->parts == std::vector<std::string>{"body", "tab"});
    CHECK_FALSE(known.itemType("t2"));
}

TEST_CASE("A fault in makers.csv is told with line, column and remedy", "[models][register]")
{
    const std::string head = "maker_id,name,from,to,successor_of\n";
    const std::string good = "m1,Orrin & Co,,,\nm2,Pelk Ltd,,,\n";
    checkFault("makers.csv", head + good + "m1,Third,,,\n", 4, "maker_id", "twice");
    checkFault("makers.csv", head + good + "m4,PELK  LTD,,,\n", 4, "name", "line 3 already");
    checkFault("makers.csv", head + good + "m4,,,,\n", 4, "name", "empty");
    checkFault("makers.csv", head + good + "m4,Fourth,19300,,\n", 4, "from", "not EDTF");
    checkFault("makers.csv", head + good + "m4,Fourth,1930-1,,\n", 4, "from",
               "at character 7 should stand a month");
    checkFault("makers.csv", head + good + "m4,Fourth,c. 1930,,\n", 4, "from", "1930~");
    checkFault("makers.csv", head + good + "m4,Fourth,1930s,,\n", 4, "from", "193X");
    checkFault("makers.csv", head + good + "m4,Fourth,1930-1935,,\n", 4, "from", "1930/1935");
    checkFault("makers.csv", head + good + "m4,Fourth,01/01/1930,,\n", 4, "from", "spreadsheet");
    checkFault("makers.csv", head + good + "m4,Fourth,1930.0,,\n", 4, "from", "write 1930");
    for (const char* harmed : {"mar-40", "mrt-40", "March-40", "Sept-40", "03/01/40",
                               "3/1/1940 0:00", "1940-03-01T00:00:00", "1940-03-01 00:00:00"}) {
        CAPTURE(harmed);
        checkFault("makers.csv", head + good + "m4,Fourth," + harmed + ",,\n", 4, "from",
                   "spreadsheet may have made a date of a year");
    }
    checkFault("makers.csv", head + good + "m4,Fourth,\"1,940\",,\n", 4, "from",
               "sign between the thousands; write 1940");
    checkFault("makers.csv", head + good + "m4,Fourth,1.94E+03,,\n", 4, "from", "shortened");
    checkFault("makers.csv", head + good + "m4,Fourth,#REF!,,\n", 4, "from", "error sign");
    checkFault("makers.csv", head + good + "m4,Fourth,1940-02-30,,\n", 4, "from",
               "at character 9 should stand a day");
    checkFault("makers.csv", head + good + "m4,Fourth,1930,1929,\n", 4, "to", "before");
    checkFault("makers.csv", head + good + "m4,Fourth,,,m9\n", 4, "successor_of", "not in makers");
    checkFault("makers.csv", head + good + "m4,Fourth,,,m4\n", 4, "successor_of", "itself");
    checkFault("makers.csv", "maker_id,name,form\nm1,Orrin & Co,1921\nm2,Pelk Ltd,\n", 1, "form",
               "'from'");
}

TEST_CASE("A fault in marks.csv is told with line, column and remedy", "[models][register]")
{
    const std::string head = "maker_id,text,kind,frame\n";
    checkFault("marks.csv", head + "m1,O. & CO,,\nm7,X,,\n", 3, "maker_id", "not in makers.csv");
    checkFault("marks.csv", head + "m1,O[..,,\n", 2, "text", "at character 2 should");
    checkFault("marks.csv", head + "m1,A / B,,\n", 2, "text", "one line");
    checkFault("marks.csv", head + "m1,,,\n", 2, "text", "one line");
    checkFault("marks.csv", head + "m1,A,word,\n", 2, "kind", "text, code or device");
    checkFault("marks.csv", head + "m1,A,,star\n", 2, "frame", "oval");
    checkFault("marks.csv", head + "m1,A,,\nm1,A,,\n", 3, "", "line 2 already");
    checkFault("marks.csv", head + "m1,03-Apr,,\n", 2, "text", "spreadsheet");
    checkFault("marks.csv", head + "m1,Mar-40,,\n", 2, "text", "3/40");
    checkFault("marks.csv", head + "m1,1.94E+11,,\n", 2, "text", "shortened");
    checkFault("marks.csv", head + "m1,#NAME?,,\n", 2, "text", "error sign");
    checkFault("marks.csv", "maker_id,kind\nm1,text\n", 1, "text", "missing");
    checkFault("marks.csv", head + "m1,caf\xE9,,\n", 2, "", "Windows-1252");
}

TEST_CASE("A mark that reads like a date can be kept with a backslash", "[models][register]")
{
    Files files = smallRegister();
    files["marks.csv"] = "maker_id,text\nm1,3/40\nm1,\\03-Apr\nm2,3-APR\n";
    CHECK(models::plainText(load(files).marks[1].line) == "03-Apr");
}

TEST_CASE("Faults in the other files are told too", "[models][register]")
{
    checkFault("item_types.csv", "type_id,name,introduced\nt1,Strap,1924-13\n", 2, "introduced",
               "not EDTF");
    checkFault("features.csv", "feature_id,type_id,name\nf1,t9,Rivet\n", 2, "type_id",
               "item_types.csv");
    checkFault("codes.csv", "code,stands_for,value\nK7,maker,m9\n", 2, "value", "makers.csv");
    checkFault("codes.csv", "code,stands_for,value\nK7,colour,m1\n", 2, "stands_for", "inspector");
    checkFault("codes.csv", "code,stands_for,value\nQ5,quarter,5\n", 2, "value", "1, 2, 3 or 4");
    checkFault("codes.csv", "code,stands_for,value\n012,maker,m1\n7,maker,m2\n", 3, "code",
               "zeros");
    checkFault("spellings.csv", "text,same_as\nLTD,\n", 2, "same_as", "empty");
    checkFault("sources.csv", "source_id,citation\ns1,A\ns1,B\n", 3, "source_id", "twice");
}

TEST_CASE("A source that is cited must be listed when there is a list", "[models][register]")
{
    Files files = smallRegister();
    files["makers.csv"] = "maker_id,name,source_id\nm1,Orrin & Co,s1\nm2,Pelk Ltd,\n";
    CHECK_NOTHROW(load(files));
    files["sources.csv"] = "source_id,citation\ns2,A ledger\n";
    const auto faults = faultsOf(files);
    REQUIRE(faults.size() == 1);
    CHECK(faults[0].column == "source_id");
}

TEST_CASE("Ids that lost their zeros in a spreadsheet are recognised", "[models][register]")
{
    Files files = smallRegister();
    files["makers.csv"] = "maker_id,name\n007,Orrin & Co\n";
    files["marks.csv"] = "maker_id,text\n7,O. & CO\n";
    const auto faults = faultsOf(files);
    REQUIRE(faults.size() == 1);
    CHECK(faults[0].message().find("'007' is there") != std::string::npos);
}

TEST_CASE("A folder that is no register says what is missing", "[models][register]")
{
    CHECK_THROWS_AS(models::loadRegister("no/such/folder"), models::RegisterError);
    const auto faults = faultsOf({});
    REQUIRE(faults.size() == 2);
    CHECK(faults[0].message().find("makers.csv") == 0);
    CHECK(faults[1].message().find("marks.csv") == 0);
}

TEST_CASE("All faults are collected, and the first few told", "[models][register]")
{
    Files files = smallRegister();
    for (int i = 0; i < 8; ++i)
        files["marks.csv"] += "m9,X" + std::to_string(i) + ",,,,\n";
    const auto faults = faultsOf(files);
    REQUIRE(faults.size() == 8);
    CHECK(std::string(models::RegisterError(faults).what()).find("and 3 more") !=
          std::string::npos);
}
