#include "models/register_check.h"

#include <algorithm>
#include <catch2/catch.hpp>

#include "tests/models/register_folder.h"

using support::RegisterFiles;
using support::RegisterFolder;

namespace {

RegisterFiles soundRegister()
{
    return {
        {"makers.csv",
         "maker_id,name,from,to,successor_of\nm1,Orrin & Co,1921,1938,\nm2,Pelk Ltd,1925,1950,\n"},
        {"marks.csv", "maker_id,text,frame,from,to\nm1,O. & CO,box,1922,\nm2,PELK LTD,,,\n"},
        {"item_types.csv", "type_id,name,introduced,withdrawn\nt1,Strap,1924,1940\n"}};
}

std::vector<models::RegisterFinding> findingsOf(const RegisterFiles& changed)
{
    RegisterFiles files = soundRegister();
    for (const auto& [name, text] : changed)
        files[name] = text;
    const RegisterFolder folder(files);
    return models::checkRegister(folder.path);
}

// The changed register has just this remark, and still loads.
void checkRemark(const RegisterFiles& changed, const std::string& file, std::size_t line,
                 const std::string& column, const std::string& part)
{
    CAPTURE(part);
    const auto findings = findingsOf(changed);
    for (const models::RegisterFinding& finding : findings)
        UNSCOPED_INFO(finding.what.message());
    REQUIRE(findings.size() == 1);
    CHECK_FALSE(findings[0].is_fault);
    CHECK(findings[0].what.file.filename() == file);
    CHECK(findings[0].what.line == line);
    CHECK(findings[0].what.column == column);
    CHECK(findings[0].what.problem.find(part) != std::string::npos);
    CHECK_FALSE(findings[0].what.remedy.empty());
}

void checkMarksRemark(const std::string& rows, std::size_t line, const std::string& part)
{
    checkRemark({{"marks.csv", "maker_id,text,frame,from,to\n" + rows}}, "marks.csv", line, "text",
                part);
}

const std::string makers_head = "maker_id,name,from,to,successor_of\n";

}  // namespace

TEST_CASE("A sound register has no findings, nor has the demo's a fault",
          "[models][register_check]")
{
    CHECK(findingsOf({}).empty());
    for (const models::RegisterFinding& finding :
         models::checkRegister(std::filesystem::path(WEFTMARK_SOURCE_DIR) / "models/register")) {
        CAPTURE(finding.what.message());
        CHECK_FALSE(finding.is_fault);
    }
}

TEST_CASE("All faults that stop loading are findings, with the remarks, by file and line",
          "[models][register_check]")
{
    const auto findings = findingsOf(
        {{"makers.csv", makers_head + "m1,Orrin & Co,1921,1938,\nm2,Pelk Ltd,c. 1925,,\n"},
         {"marks.csv", "maker_id,text,from\nm9,X,\nm1,O. & CO,1910\nm2,A[,\n"}});
    std::vector<std::string> places;
    for (const models::RegisterFinding& finding : findings)
        places.push_back(finding.what.file.filename().string() + " " +
                         std::to_string(finding.what.line) + (finding.is_fault ? " fault" : ""));
    CHECK(places == std::vector<std::string>{"makers.csv 3 fault", "marks.csv 2 fault",
                                             "marks.csv 3", "marks.csv 4 fault"});
    CHECK(models::checkRegister("no/such/folder").at(0).is_fault);
    const RegisterFolder empty({});
    CHECK(models::checkRegister(empty.path).size() == 2);
}

TEST_CASE("Marks of two makers that cannot be told apart are remarked", "[models][register_check]")
{
    checkMarksRemark("m1,O. & CO,,,\nm2,O. & CO,,,\n", 3,
                     "is the same as 'O. & CO' of 'm1' in line 2; in the years 1925 to 1938");
    checkMarksRemark("m1,PO5 B,,,\nm2,P0S 8,,,\n", 3, "look alike alone from 'PO5 B'");
    checkMarksRemark("m1,Z1,,,\nm2,2I,,,\n", 3, "look alike");
    checkMarksRemark("m1,A,,1921,1930\nm2,A,,1931,1940\n", 3, "only the years tell them apart");
    checkMarksRemark("m1,A,box,,\nm2,A,oval,,\n", 3, "only the frame tells them apart (oval, box)");
    checkMarksRemark("m1,A,,1930,\nm2,A,,1926,\n", 3, "nothing else");  // told at the later line
    checkRemark({{"marks.csv", "maker_id,text\nm1,ORRIN & COMPANY\nm2,ORRIN AND CO.\n"},
                 {"spellings.csv", "text,same_as\n&,AND\nCO,COMPANY\n"}},
                "marks.csv", 3, "text", "is the same as");
    checkRemark({{"codes.csv", "code,stands_for,value\nPELK LTD,maker,m1\n"}}, "codes.csv", 2,
                "code", "of 'm2' in marks.csv, line 3");
    CHECK(findingsOf({{"marks.csv", "maker_id,text\nm1,A\nm2,B\nm1,A.\n"}}).empty());
}

TEST_CASE("What stands in a register twice is remarked", "[models][register_check]")
{
    checkMarksRemark("m1,A,,1922,1930\nm1,A,,1925,1931\n", 3, "line 2 already, for the same maker");
    CHECK(findingsOf({{"marks.csv", "maker_id,text,from,to\nm1,A,1922,1924\nm1,A,1930,1931\n"}})
              .empty());
    checkRemark({{"makers.csv", makers_head + "m1,Orrin & Co,,,\nM1,Third,,,\nm2,Pelk,,,\n"}},
                "makers.csv", 3, "maker_id", "capitals");
    checkRemark({{"item_types.csv", "type_id,name\nt1,Strap\nt2,STRAP\n"}}, "item_types.csv", 3,
                "name", "line 2 already");
    checkRemark({{"features.csv", "feature_id,type_id,name\nf1,t1,Rivet\nf2,t1,rivet\n"}},
                "features.csv", 3, "name", "line 2 already");
    checkRemark({{"sources.csv", "source_id,citation\ns1,A ledger\ns2,A Ledger\n"}}, "sources.csv",
                3, "citation", "line 2 already");
    checkRemark({{"spellings.csv", "text,same_as\nLTD,LIMITED\nLIMITED,LTD\n"}}, "spellings.csv", 3,
                "", "line 2 already");
    checkRemark({{"spellings.csv", "text,same_as\nLTD,Ltd\n"}}, "spellings.csv", 2, "same_as",
                "itself");
}

TEST_CASE("Years outside those of maker and type are remarked at their field",
          "[models][register_check]")
{
    const auto marks = [](const std::string& years) {
        return RegisterFiles{{"marks.csv", "maker_id,text,from,to\nm1,A," + years + "\n"}};
    };
    checkRemark(marks("1920,"), "marks.csv", 2, "from", "begins 1920, before the maker 'm1' does");
    checkRemark(marks(",1939"), "marks.csv", 2, "to", "ends 1939, after the maker 'm1' does");
    checkRemark(marks("1940,"), "marks.csv", 2, "from", "after the maker 'm1' ends (1938)");
    checkRemark(marks(",1915"), "marks.csv", 2, "to", "before the maker 'm1' begins (1921)");
    CHECK(findingsOf(marks("1920~,")).empty());  // about 1920 may be 1921
    CHECK(findingsOf(marks("192X,")).empty());   // nothing sure
    const std::string features = "feature_id,type_id,name,from,to,maker_id\n";
    checkRemark({{"features.csv", features + "f1,t1,Rivet,1920,,\n"}}, "features.csv", 2, "from",
                "before its item type 't1'");
    checkRemark({{"features.csv", features + "f1,t1,Rivet,1939,1940,m1\n"}}, "features.csv", 2,
                "from", "after the maker 'm1'");
    const std::string codes = "code,stands_for,value,from,to\n";
    checkRemark({{"codes.csv", codes + "K7,maker,m1,1930,1941\n"}}, "codes.csv", 2, "to",
                "after the maker 'm1'");
    checkRemark({{"codes.csv", codes + "YA,year,1941,1942,1943\n"}}, "codes.csv", 2, "value",
                "outside the years");
}

TEST_CASE("Successors that cannot be are remarked", "[models][register_check]")
{
    const auto makers = [](const std::string& rows) {
        return RegisterFiles{{"makers.csv", makers_head + rows}};
    };
    checkRemark(makers("m1,Orrin,1921,1938,\nm2,Pelk,1919,1950,m1\n"), "makers.csv", 3, "from",
                "before 'm1' itself (1921)");
    checkRemark(makers("m1,Orrin,1921,1938,\nm2,Pelk,1948,1950,m1\n"), "makers.csv", 3, "from",
                "long after 'm1' ended (1938)");
    CHECK(findingsOf(makers("m1,Orrin,1921,1938,\nm2,Pelk,1939,1950,m1\n")).empty());
    checkRemark(makers("m1,Orrin,,,m3\nm2,Pelk,,,m1\nm3,Third,,,m2\nm4,Fourth,,,m1\n"),
                "makers.csv", 2, "successor_of",
                "in a circle: 'm1' after 'm3' after 'm2' after 'm1'");
}

TEST_CASE("A code that means two things in one year is remarked", "[models][register_check]")
{
    const std::string head = "code,stands_for,value,issuer,from,to\n";
    const auto codes = [&](const std::string& rows) {
        return RegisterFiles{{"codes.csv", head + rows}};
    };
    checkRemark(codes("K7,maker,m1,,1926,1930\nK7,maker,m2,,1930,1938\n"), "codes.csv", 3, "code",
                "means maker 'm2' and, in line 2, maker 'm1'; both hold in the year 1930");
    checkRemark(codes("K7,year,1941,T,,\nk7,quarter,2,U,,\n"), "codes.csv", 3, "code",
                "by another issuer");
    checkRemark(codes("K7,year,1941,,,\nK7,year,1941,,,\n"), "codes.csv", 3, "code",
                "same meaning");
    CHECK(findingsOf(codes("K7,maker,m1,,1926,1930\nK7,maker,m2,,1931,1938\n")).empty());
}

TEST_CASE("Sources that are cited without a list are remarked once a file",
          "[models][register_check]")
{
    checkRemark({{"marks.csv", "maker_id,text,source_id\nm1,A,\nm2,B,s1\nm2,C,s2\n"}}, "marks.csv",
                3, "source_id", "2 such in this file");
}

TEST_CASE("A spreadsheet's harm is recognised in every column where it can happen",
          "[models][register_check]")
{
    const std::vector<std::pair<std::string, std::string>> rows = {
        {"makers.csv", "maker_id,name\nm1,A\nm2,B\n@,C\n"},
        {"makers.csv", "maker_id,name\nm1,A\nm2,@\n"},
        {"makers.csv", "maker_id,name,place\nm1,A,@\nm2,B,\n"},
        {"makers.csv", "maker_id,name,from\nm1,A,@\nm2,B,\n"},
        {"makers.csv", "maker_id,name,to\nm1,A,@\nm2,B,\n"},
        {"makers.csv", "maker_id,name,successor_of\nm1,A,@\nm2,B,\n"},
        {"marks.csv", "maker_id,text\n@,A\n"},
        {"marks.csv", "maker_id,text\nm1,@\n"},
        {"marks.csv", "maker_id,text,from\nm1,A,@\n"},
        {"marks.csv", "maker_id,text,to\nm1,A,@\n"},
        {"item_types.csv", "type_id,name\n@,Strap\n"},
        {"item_types.csv", "type_id,name\nt1,@\n"},
        {"item_types.csv", "type_id,name,pattern\nt1,Strap,@\n"},
        {"item_types.csv", "type_id,name,introduced\nt1,Strap,@\n"},
        {"item_types.csv", "type_id,name,withdrawn\nt1,Strap,@\n"},
        {"item_types.csv", "type_id,name,parts\nt1,Strap,tab|@\n"},
        {"item_types.csv", "type_id,name,sizes\nt1,Strap,1|@\n"},
        {"features.csv", "feature_id,type_id,name\n@,t1,Rivet\n"},
        {"features.csv", "feature_id,type_id,name\nf1,@,Rivet\n"},
        {"features.csv", "feature_id,type_id,name\nf1,t1,@\n"},
        {"features.csv", "feature_id,type_id,name,from\nf1,t1,Rivet,@\n"},
        {"features.csv", "feature_id,type_id,name,to\nf1,t1,Rivet,@\n"},
        {"features.csv", "feature_id,type_id,name,maker_id\nf1,t1,Rivet,@\n"},
        {"codes.csv", "code,stands_for,value\n@,maker,m1\n"},
        {"codes.csv", "code,stands_for,value\nK7,maker,@\n"},
        {"codes.csv", "code,stands_for,value\nK7,year,@\n"},
        {"codes.csv", "code,stands_for,value\nK7,quarter,@\n"},
        {"codes.csv", "code,stands_for,value\nK7,inspector,@\n"},
        {"codes.csv", "code,stands_for,value,issuer\nK7,maker,m1,@\n"},
        {"codes.csv", "code,stands_for,value,from\nK7,maker,m1,@\n"},
        {"codes.csv", "code,stands_for,value,to\nK7,maker,m1,@\n"},
        {"spellings.csv", "text,same_as\n@,LTD\n"},
        {"spellings.csv", "text,same_as\nLTD,@\n"},
        {"sources.csv", "source_id,citation\n@,A ledger\n"},
        {"sources.csv", "source_id,citation\ns1,@\n"},
    };
    for (const auto& [file, text] : rows)
        for (const char* harm : {"Mar-40", "03-Apr", "01.03.1940", "1.94E+11", "#NAME?", "#####"}) {
            std::string harmed = text;
            harmed.replace(harmed.find('@'), 1, harm);
            CAPTURE(file, harmed);
            const auto findings = findingsOf({{file, harmed}});
            const auto faults =
                std::count_if(findings.begin(), findings.end(), [](const auto& finding) {
                    return finding.is_fault && finding.what.problem.find('\'') != std::string::npos;
                });
            CHECK(faults == 1);
        }
}

TEST_CASE("Notes may be a date, but no error sign; ids that lost zeros are told everywhere",
          "[models][register_check]")
{
    CHECK(findingsOf({{"marks.csv", "maker_id,text,notes\nm1,A,03-Apr-1940\n"}}).empty());
    CHECK(findingsOf({{"marks.csv", "maker_id,text,notes\nm1,A,#REF!\n"}}).at(0).is_fault);
    const auto told = [](const RegisterFiles& files) {
        const auto findings = findingsOf(files);
        REQUIRE(findings.size() == 1);
        CHECK(findings[0].what.remedy.find("is there: a spreadsheet may have dropped") !=
              std::string::npos);
    };
    told({{"item_types.csv", "type_id,name\n007,Strap\n"},
          {"features.csv", "feature_id,type_id,name\nf1,7,Rivet\n"}});
    told({{"sources.csv", "source_id,citation\n012,A ledger\n"},
          {"marks.csv", "maker_id,text,source_id\nm1,A,12\n"}});
}

TEST_CASE("A wrong encoding is told in every file", "[models][register_check]")
{
    for (const char* file : {"makers.csv", "marks.csv", "item_types.csv", "features.csv",
                             "codes.csv", "spellings.csv", "sources.csv"}) {
        CAPTURE(file);
        RegisterFiles changed = {{file, "a,b\n1,caf\xE9\n"}};
        const auto findings = findingsOf(changed);
        REQUIRE_FALSE(findings.empty());
        CHECK(std::any_of(findings.begin(), findings.end(), [&](const auto& finding) {
            return finding.is_fault && finding.what.file.filename() == file &&
                   finding.what.line == 2 &&
                   finding.what.problem.find("not UTF-8") != std::string::npos;
        }));
    }
}

TEST_CASE("A file that cannot be read is one finding, not one for each id it would list",
          "[models][register_check]")
{
    const auto unread = findingsOf({{"makers.csv", "number,name\nm1,A\n"}});
    REQUIRE(unread.size() == 1);
    CHECK(unread[0].what.column == "maker_id");

    const RegisterFolder folder(soundRegister());
    std::filesystem::remove(folder.path / "makers.csv");
    CHECK(models::checkRegister(folder.path).size() == 1);
    std::filesystem::create_directory(folder.path / "makers.csv");
    const auto findings = models::checkRegister(folder.path);
    REQUIRE(findings.size() == 1);
    CHECK(findings[0].what.message() ==
          "makers.csv: the file cannot be read; check that it may be opened");
}
