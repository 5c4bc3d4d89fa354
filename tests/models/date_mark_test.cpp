#include "models/date_mark.h"

#include <algorithm>
#include <catch2/catch.hpp>

#include "models/edtf.h"
#include "models/typed_notation.h"

namespace {

constexpr models::DateContext service{1921, 1958};

models::Line lineTyped(const std::string& typed)
{
    const models::ParsedNotation parsed = models::parseTyped(typed);
    REQUIRE_FALSE(parsed.fault);
    REQUIRE(parsed.lines.size() == 1);
    return parsed.lines.front();
}

std::vector<models::DateMeaning> datesIn(const std::string& typed,
                                         const models::DateContext& context = service)
{
    return models::readDates(lineTyped(typed), context);
}

// The meaning with this EDTF; fails the test when there is none.
models::DateMeaning meaning(const std::string& typed, const std::string& edtf,
                            const models::DateContext& context = service)
{
    std::string found;
    for (const models::DateMeaning& one : datesIn(typed, context)) {
        if (one.edtf == edtf)
            return one;
        found += one.edtf + " ";
    }
    FAIL(typed << " should mean " << edtf << ", found " << found);
    return {};
}

bool means(const std::string& typed, const std::string& edtf,
           const models::DateContext& context = service)
{
    const auto all = datesIn(typed, context);
    return std::any_of(all.begin(), all.end(),
                       [&](const models::DateMeaning& one) { return one.edtf == edtf; });
}

using Years = std::vector<int>;

}  // namespace

// Forms and their EDTF after the Library of Congress specification (levels 1 and 2: X, sets,
// quarters) and common practice on marks, no source; Roman months as Linn's stamp primer has them,
// MCH as seen on postmarks.
TEST_CASE("Printed dates are read as EDTF", "[models][date]")
{
    meaning("1940", "1940");
    meaning("'40", "1940");
    meaning("3/40", "1940-03");
    meaning("3/40", "1940-35");
    meaning("III 40", "1940-03");
    meaning("III.1940", "1940-03");
    meaning("MAR 1940", "1940-03");
    meaning("MCH 40", "1940-03");
    meaning("3.1940", "1940-03");
    meaning("12.3.40", "[1940-03-12,1940-12-03]");
    meaning("2/4/40", "[1940-02-04,1940-04-02]");
    meaning("25/4/40", "1940-04-25");
    meaning("24 JAN 1940", "1940-01-24");
}

TEST_CASE("Unread and ambiguous digits stay so in EDTF", "[models][date]")
{
    CHECK(meaning("194[.]", "194X").years ==
          Years{1940, 1941, 1942, 1943, 1944, 1945, 1946, 1947, 1948, 1949});
    CHECK(meaning("194(0|6|8)", "[1940,1946,1948]").years == Years{1940, 1946, 1948});
    CHECK(meaning("19[.]0", "19X0").years == Years{1930, 1940, 1950});
    CHECK(meaning("[.]940", "X940").years == Years{1940});
    meaning("1[..]0", "1XX0");
    meaning("[..] 40", "1940-XX");
    meaning("[.]3/40", "1940-03");
    meaning("[.]2/40", "1940-X2");
    meaning("0[.]/40", "1940-0X");
    meaning("1[.]/40", "1940-1X");
    meaning("194+", "194X");
    meaning("194?0", "1940?");
    meaning("4[.]|", "194X", {1939, 1949});
}

TEST_CASE("Two digits take the centuries that the context allows", "[models][date]")
{
    CHECK(meaning("40", "1940", {1939, 1945}).years == Years{1940});
    CHECK(meaning("40", "[1840,1940]", {1835, 1950}).years == Years{1840, 1940});
    CHECK(meaning("40", "[1840,1940]", {1801, 2000}).years == Years{1840, 1940});
    CHECK_FALSE(means("40", "1940", {1835, 1950}));
    CHECK(datesIn("40", {1941, 1958}).empty());
}

TEST_CASE("Letters read for digits are let pass where the rest is digits", "[models][date]")
{
    CHECK(means("194O", "1940"));
    CHECK(means("I94I", "1941"));
    CHECK(datesIn("BOLO").empty());
    CHECK(datesIn("SOLE").empty());
}

TEST_CASE("No date is seen where none stands", "[models][date]")
{
    for (const char* typed :
         {"[- - -]", "[....]", "++++", "T.H. & CO", "HARSKELL & SONS LTD", "19407", "A", "/", "."})
        for (const models::DateMeaning& one : datesIn(typed)) {
            CAPTURE(typed, one.edtf, one.probability);
            CHECK(one.probability < 0.1);
        }
    CHECK(datesIn("[- - -]").empty());
    CHECK(datesIn("[....]").empty());
    CHECK(models::readDates(models::Line{}).empty());
}

TEST_CASE("A date is found within a line and says where it stands", "[models][date]")
{
    const models::DateMeaning one = meaning("T.H. & CO 1941", "1941");
    CHECK(one.first_cell == 10);
    CHECK(one.end_cell == 14);
    CHECK(one.printed == "1941");
    CHECK(one.probability > 0.9);
}

TEST_CASE("A fuller date is likelier than a part of it", "[models][date]")
{
    CHECK(datesIn("3/40").front().edtf == "1940-03");
    CHECK(datesIn("MAR 1940").front().edtf == "1940-03");
    CHECK(datesIn("25/4/40").front().edtf == "1940-04-25");
    CHECK(meaning("1940", "1940").probability > meaning("40", "1940").probability);
    CHECK(meaning("'40", "1940").probability > meaning("40", "1940").probability);
    CHECK(meaning("3/40", "1940-03").probability > meaning("3/40", "1940-35").probability);
}

TEST_CASE("A month within a longer word is none", "[models][date]")
{
    CHECK(datesIn("CONTRACT 1938").front().edtf == "1938");
    CHECK(datesIn("CAMAR 1938").front().edtf == "1938");
    CHECK(datesIn("25APR40").front().edtf == "1940-04-25");
}

TEST_CASE("A digit less never makes a date surer", "[models][date]")
{
    const double clear = meaning("1941", "1941").probability;
    CHECK(meaning("194?1", "1941?").probability <= clear);
    CHECK(meaning("194[.]", "194X").probability <= clear);
    CHECK(meaning("19[.]1", "19X1").probability <= clear);
}

TEST_CASE("A stretch of unknown length may hide the rest of a year", "[models][date]")
{
    CHECK(means("194[- - -]", "194X"));
    CHECK(means("194[1..2]", "194X"));
    CHECK(datesIn("19[- - -]").size() < 12);
}

TEST_CASE("The meanings of one stretch share one certainty", "[models][date]")
{
    for (const char* typed :
         {"3/40", "12.3.40", "194(0|6|8)", "T.H. & CO 3/40", "1[..]0", "III 40"}) {
        CAPTURE(typed);
        const auto all = datesIn(typed);
        for (const models::DateMeaning& one : all) {
            double sum = 0;
            for (const models::DateMeaning& other : all)
                if (other.first_cell == one.first_cell && other.end_cell == one.end_cell)
                    sum += other.probability;
            CHECK(sum <= 1 + 1e-9);
            CHECK(models::edtfYearBounds(one.edtf));
            CHECK_FALSE(one.years.empty());
            CHECK(std::is_sorted(one.years.begin(), one.years.end()));
        }
    }
}

TEST_CASE("A context whose years are not in order is refused", "[models][date]")
{
    CHECK_THROWS_AS(models::readDates(models::Line{}, {1950, 1940}), std::invalid_argument);
}

// Months in Roman figures (I to XII) with letters lost, a dot for each: which months they can be,
// worked out from the figures themselves. Where no letter is left nothing tells of a month.
TEST_CASE("A Roman month that lost letters is every month that it can be", "[models][date]")
{
    const std::vector<std::pair<std::string, Years>> rows = {
        {".I", {2, 6, 11}},  {".V", {4}},   {".X", {9}},         {"I.", {2, 4, 9}},
        {"V.", {6}},         {"X.", {11}},  {"..I", {3, 7, 12}}, {".I.", {3, 7, 12}},
        {".II", {3, 7, 12}}, {"I..", {3}},  {"I.I", {3}},        {"II.", {3}},
        {"V..", {7}},        {"V.I", {7}},  {"VI.", {7}},        {"X..", {12}},
        {"X.I", {12}},       {"XI.", {12}}, {"...I", {8}},       {"..I.", {8}},
        {"..II", {8}},       {".I..", {8}}, {".I.I", {8}},       {".II.", {8}},
        {".III", {8}},       {"V...", {8}}, {"V..I", {8}},       {"V.I.", {8}},
        {"V.II", {8}},       {"VI..", {8}}, {"VI.I", {8}},       {"VII.", {8}},
    };
    for (const auto& [mask, months] : rows) {
        std::string typed;
        for (const char c : mask)
            typed += c == '.' ? std::string("[.]") : std::string(1, c);
        CAPTURE(typed);
        const auto found = datesIn(typed + " 1940");
        for (const int month : months) {
            CAPTURE(month);
            const std::string edtf = (month < 10 ? "1940-0" : "1940-") + std::to_string(month);
            CHECK(std::any_of(found.begin(), found.end(), [&](const models::DateMeaning& one) {
                return models::edtfYearBounds(one.edtf) && one.edtf.find(edtf) != one.edtf.npos;
            }));
        }
    }
}
