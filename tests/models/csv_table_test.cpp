#include "models/csv_table.h"

#include <catch2/catch.hpp>

namespace {

using Fields = std::vector<std::string>;

models::CsvFault onlyFault(const std::string& text)
{
    const models::CsvTable table = models::readCsv(text);
    CAPTURE(text);
    REQUIRE(table.faults.size() == 1);
    CHECK_FALSE(table.faults[0].problem.empty());
    CHECK_FALSE(table.faults[0].remedy.empty());
    return table.faults[0];
}

}  // namespace

TEST_CASE("Fields are parted by the sign that the header shows", "[models][csv]")
{
    for (const char* text : {"a,b,c\n1,2,3\n", "a;b;c\r\n1;2;3\r\n", "a\tb\tc\r1\t2\t3\r",
                             "\xEF\xBB\xBF"
                             "a,b,c\n\n1, 2 ,3",
                             "sep=;\na;b;c\n1;2;3\n"}) {
        CAPTURE(text);
        const models::CsvTable table = models::readCsv(text);
        CHECK(table.faults.empty());
        CHECK(table.header == Fields{"a", "b", "c"});
        REQUIRE(table.rows.size() == 1);
        CHECK(table.rows[0].fields == Fields{"1", "2", "3"});
    }
}

TEST_CASE("Quotes hold separators, quotes and line breaks", "[models][csv]")
{
    const models::CsvTable table =
        models::readCsv("a,b\n\"x, y\",\"say \"\"so\"\"\"\n\"two\nlines\",z\nlast,1\n");
    CHECK(table.faults.empty());
    REQUIRE(table.rows.size() == 3);
    CHECK(table.rows[0].fields == Fields{"x, y", "say \"so\""});
    CHECK(table.rows[1].fields == Fields{"two\nlines", "z"});
    CHECK(table.rows[1].line == 3);
    CHECK(table.rows[2].line == 5);  // as an editor counts
}

TEST_CASE("Empty lines and lines of separators alone are left out", "[models][csv]")
{
    const models::CsvTable table = models::readCsv("a,b\n\n,\n1,2\n\n");
    CHECK(table.faults.empty());
    REQUIRE(table.rows.size() == 1);
    CHECK(table.rows[0].line == 4);
}

TEST_CASE("A line that does not fit the header is a fault with its number", "[models][csv]")
{
    CHECK(onlyFault("a,b\n1,2\n1,2,3\n").line == 3);
    CHECK(onlyFault("a,b\n1\n").line == 2);
    CHECK(onlyFault("a,b\n1,say \"so\"\n").line == 2);
    CHECK(onlyFault("a,b\n1,2\n\"open,2\n3,4\n").line == 3);
    CHECK(onlyFault("a,b\n\"x\"y,2\n").line == 2);
    CHECK(onlyFault("a,a\n1,2\n").column == "a");
    CHECK(onlyFault("").line == 0);
}

TEST_CASE("A wrong encoding is named with its line", "[models][csv]")
{
    CHECK(onlyFault("a,b\n1,caf\xE9\n").line == 2);  // Windows-1252
    CHECK(onlyFault("a,b\n1,caf\xE9\n").problem.find("Windows-1252") != std::string::npos);
    CHECK(onlyFault(std::string("\xFF\xFE"
                                "a\0,\0b\0",
                                8))
              .problem.find("UTF-16") != std::string::npos);
    CHECK(onlyFault("a,b\n1,2\n1,caf\xC3\x83\xC2\xA9\n").line == 3);  // saved twice
    CHECK(onlyFault("a,b\n1,caf\xEF\xBF\xBD\n").problem.find("lost") != std::string::npos);
    CHECK(onlyFault(std::string("a,b\n1,2\0\n", 9)).problem.find("zero byte") != std::string::npos);
    CHECK(models::readCsv("a,b\n1,caf\xC3\xA9\n").faults.empty());
}
