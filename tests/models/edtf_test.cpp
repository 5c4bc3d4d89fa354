#include "models/edtf.h"

#include <catch2/catch.hpp>

namespace {

struct Case {
    const char* edtf;
    std::optional<int> first, last;
};

// Old drafts, printed marks, wrong brackets, days that do not exist, ends before beginnings.
constexpr const char* no_edtf[] = {"",
                                   "40",
                                   "194",
                                   "'40",
                                   "194u",
                                   "194x",
                                   "194-",
                                   "194.",
                                   "194?X",
                                   "194[0]",
                                   "1940-3",
                                   "1940-13",
                                   "1940-00",
                                   "1940-20",
                                   "1940-42",
                                   "1940-02-30",
                                   "1941-02-29",
                                   "1900-02-29",
                                   "1940-03-32",
                                   "1940-03-5",
                                   "03/1940",
                                   "3/40",
                                   "1940/06",
                                   "III.1940",
                                   "c.1940",
                                   "1940s",
                                   "1940 ?",
                                   "1940??",
                                   "1940?~",
                                   "(1940)?",
                                   "unknown/1940",
                                   "1940/open",
                                   "19400315",
                                   "1940-W12",
                                   "1940-075",
                                   "[1938,1939",
                                   "1938,1939",
                                   "[1938, 1939]",
                                   "[1938;1939]",
                                   "{1938,1939]",
                                   "[]",
                                   "[1938.1940]",
                                   "1938..1940",
                                   "1938-1940",
                                   "1940-21-05",
                                   " 1940",
                                   "1940 ",
                                   "194O",
                                   "+1940",
                                   "1940--03",
                                   "1940-XX-XX-XX",
                                   "1940/1938/1936",
                                   "1940/1938",
                                   "1940-03-15/1940-02",
                                   "../..",
                                   "194X-02-30",
                                   "[1940..1938]",
                                   "[1938..1940-03]"};

}  // namespace

// Strings and their years follow the Library of Congress specification of the Extended Date/Time
// Format (4 February 2019); the bounds of masked days are every calendar day that fits.
TEST_CASE("EDTF strings give the years they allow", "[models][edtf]")
{
    const Case cases[] = {
        {"1985", 1985, 1985},
        {"1985-04", 1985, 1985},
        {"1985-04-12", 1985, 1985},
        {"194X", 1940, 1949},
        {"19XX", 1900, 1999},
        {"1940-XX", 1940, 1940},
        {"19X0", 1900, 1990},
        {"1X40", 1040, 1940},
        {"X940", 940, 9940},
        {"XXXX", 0, 9999},
        {"194X-06", 1940, 1949},
        {"194X-02-29", 1940, 1948},
        {"19XX-02-29", 1904, 1996},
        {"19X0-02-29", 1920, 1980},
        {"1940-X2-30", 1940, 1940},
        {"1940-35", 1940, 1940},
        {"1938/1940", 1938, 1940},
        {"1939-09/1945-08", 1939, 1945},
        {"../1940", std::nullopt, 1940},
        {"1940/..", 1940, std::nullopt},
        {"/1940", std::nullopt, 1940},
        {"1940/", 1940, std::nullopt},
        {"[1940,1946,1948,1949]", 1940, 1949},
        {"[1938..1940]", 1938, 1940},
        {"[..1940]", std::nullopt, 1940},
        {"[1940..]", 1940, std::nullopt},
        {"{1940,1942}", 1940, 1942},
        {"[1667,1668,1670..1672]", 1667, 1672},
        {"[1940-03,1940-08]", 1940, 1940},
    };
    for (const Case& one : cases) {
        CAPTURE(one.edtf);
        const auto bounds = models::edtfYearBounds(one.edtf);
        REQUIRE(bounds);
        CHECK(bounds->first == one.first);
        CHECK(bounds->last == one.last);
        CHECK_FALSE(bounds->soft);
    }
}

TEST_CASE("A qualifier makes limits soft and leaves the years", "[models][edtf]")
{
    for (const char* text : {"1940?", "1940~", "1940%", "1940-?03", "1940?-03", "?1940-03",
                             "1938~/1940", "1938/1940?", "[1940?,1940]"}) {
        CAPTURE(text);
        const auto bounds = models::edtfYearBounds(text);
        REQUIRE(bounds);
        CHECK(bounds->soft);
        CHECK(bounds->last == 1940);
    }
}

TEST_CASE("What is not EDTF gives no years", "[models][edtf]")
{
    for (const char* text : no_edtf) {
        CAPTURE(text);
        CHECK_FALSE(models::edtfYearBounds(text));
    }
}

TEST_CASE("Why a date has no years is told with the place", "[models][edtf]")
{
    CHECK(models::whyNoYearBounds("1940-13") ==
          "at character 6 should stand " +
              std::get<models::EdtfFault>(models::parseEdtf("1940-13")).expected);
    CHECK(models::whyNoYearBounds("Y170000002") == "its years should be 0 to 9999");
    CHECK(models::whyNoYearBounds("") != "");
    for (const char* dated : {"1940", "194X", "../1940", "[1940,1946]"})
        CHECK(models::whyNoYearBounds(dated) == "");
}

// By the days of edtf_days.h; which years marks and registers can have is the project's own choice.
TEST_CASE("Year bounds are those of the first and last day, of years of four digits",
          "[models][edtf]")
{
    CHECK(models::edtfYearBounds("1940-24") == models::YearBounds{1940, 1941});  // a winter
    CHECK(models::edtfYearBounds("1940-03-15T10:00:00Z") == models::YearBounds{1940, 1940});
    CHECK(models::edtfYearBounds("1940S3") == models::YearBounds{1940, 1949});
    for (const char* text : {"Y170000002", "Y-17E7", "-1985", "1940/Y17000", "[-0001,1940]"}) {
        CAPTURE(text);
        CHECK(std::holds_alternative<models::Edtf>(models::parseEdtf(text)));
        CHECK_FALSE(models::edtfYearBounds(text));
    }
}
