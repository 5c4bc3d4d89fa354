#include <algorithm>
#include <catch2/catch.hpp>
#include <cstdio>
#include <random>
#include <set>

#include "models/edtf_set.h"

namespace {

using Years = std::set<std::int64_t>;

models::Edtf edtfOf(const std::string& text)
{
    CAPTURE(text);
    const auto parsed = models::parseEdtf(text);
    REQUIRE(std::holds_alternative<models::Edtf>(parsed));
    return std::get<models::Edtf>(parsed);
}

models::DaySet daysIn(const std::string& text)
{
    return models::setOf(edtfOf(text));
}

std::string simplest(const std::vector<std::int64_t>& years)
{
    return models::simplestForm(models::setOfYears(years)).value_or("nothing");
}

std::vector<std::int64_t> yearsFrom(std::int64_t first, std::int64_t last, std::int64_t step = 1)
{
    std::vector<std::int64_t> years;
    for (std::int64_t year = first; year <= last; year += step)
        years.push_back(year);
    return years;
}

// Years near each other, so that runs, gaps and whole decades come up.
Years someYears(std::mt19937& random)
{
    std::uniform_int_distribution<int> year(1930, 1960), kind(0, 3);
    Years years;
    for (int i = year(random) % 8; i > 0; --i) {
        const int first = kind(random) == 0 ? year(random) / 10 * 10 : year(random);
        const int length = kind(random) == 0 ? 10 : kind(random);
        for (int j = 0; j < length; ++j)
            years.insert(first + j);
    }
    return years;
}

models::DaySet daysOfYears(const Years& years)
{
    return models::setOfYears({years.begin(), years.end()});
}

// By the text alone: does a day fit digits and X? The oracle of the masks.
bool fitsText(const std::string& mask, const models::CalendarDay& day)
{
    char text[32];
    std::snprintf(text, sizeof text, "%04d-%02d-%02d", static_cast<int>(day.year), day.month,
                  day.day);
    for (std::size_t i = 0; i < mask.size(); ++i)
        if (mask[i] != 'X' && mask[i] != text[i])
            return false;
    return true;
}

}  // namespace

// Meaning of masks, sets and intervals: Library of Congress specification of EDTF (4 February
// 2019).
TEST_CASE("A date could be the days that fit it", "[models][edtf]")
{
    const models::CalendarDay day{1941, 3, 5};
    for (const char* text :
         {"1941-03-05",  "1941-03",      "1941",          "194X",        "19X1",
          "1941-XX-05",  "1941-0X",      "1941-03-0X",    "1941?",       "1941-21",
          "1941-33",     "1940/1942",    "../1941-03-05", "1941-03-05/", "/1942",
          "[1938,1941]", "{1938..1942}", "[1940-12..]",   "1940S2",      "1941-03-05T10:00:00Z"}) {
        CAPTURE(text);
        CHECK(models::couldBe(edtfOf(text), day));
    }
    for (const char* text :
         {"1941-03-06", "1940", "195X", "19X0", "1941-XX-15", "1941-1X", "1941-24", "1941-36",
          "1942/", "/1940", "[1938,1942]", "{1942..1945}", "[..1941-03-04]", "1940S4", "-1941"}) {
        CAPTURE(text);
        CHECK_FALSE(models::couldBe(edtfOf(text), day));
    }
    CHECK(models::couldBe(edtfOf("1940-28"), {1941, 2, 28}));     // a winter ends in the next year
    CHECK_FALSE(models::couldBe(edtfOf("1941"), {1941, 2, 29}));  // no such day
    CHECK(models::couldBeIn(edtfOf("1940-28"), 1941));
    CHECK(models::couldBeIn(edtfOf("19XX-02-29"), 1944));
    CHECK_FALSE(models::couldBeIn(edtfOf("19XX-02-29"), 1942));  // no leap year
}

TEST_CASE("Masks mean the days whose digits they show", "[models][edtf]")
{
    for (const char* mask :
         {"194X", "19X4", "1944-X2", "194X-02-29", "1944-XX-31", "19XX-1X-X3", "1944-02-XX"}) {
        CAPTURE(mask);
        const models::Edtf edtf = edtfOf(mask);
        const models::DaySet days = models::setOf(edtf);
        int differing = 0;
        for (std::int64_t year = 1935; year <= 1955; ++year)
            for (int month = 1; month <= 12; ++month)
                for (int day = 1; day <= models::daysOfMonth(year, month); ++day) {
                    const bool fits = fitsText(mask, {year, month, day});
                    differing += models::couldBe(edtf, {year, month, day}) != fits;
                    differing += days.contains({year, month, day}) != fits;
                }
        CHECK(differing == 0);
    }
}

// The first three are the forms that the project asks for; X for a mask, / and [ ] are the signs of
// the Library of Congress specification.
TEST_CASE("A set of years has one simplest form", "[models][edtf]")
{
    CHECK(simplest({1940, 1941, 1942}) == "1940/1942");
    CHECK(simplest({1940, 1946}) == "[1940,1946]");
    CHECK(simplest(yearsFrom(1940, 1949)) == "194X");
    CHECK(simplest({1940}) == "1940");
    CHECK(simplest({1941, 1940}) == "1940/1941");
    CHECK(simplest({1931, 1938, 1939, 1940}) == "[1931,1938..1940]");
    CHECK(simplest({1931, 1939, 1940}) == "[1931,1939,1940]");
    CHECK(simplest(yearsFrom(1900, 1999)) == "19XX");
    CHECK(simplest(yearsFrom(0, 9999)) == "XXXX");
    CHECK(simplest(yearsFrom(1900, 1990, 10)) == "19X0");
    CHECK(simplest(yearsFrom(1940, 1950)) == "1940/1950");
    CHECK(simplest(yearsFrom(1945, 1954)) == "1945/1954");  // ten years, but no decade
    CHECK(simplest({-1, 0}) == "-0001/0000");
    CHECK(simplest({12000}) == "Y12000");
    CHECK_FALSE(models::simplestForm(models::DaySet{}));  // EDTF cannot write nothing
}

// The same source: [1940..1942] is one of these years, 1940/1942 the time of all three.
TEST_CASE("One date among a run is no interval", "[models][edtf]")
{
    const auto one_of = [](const std::vector<std::int64_t>& years) {
        return models::simplestForm(models::setOfYears(years), models::RunMeans::OneDate);
    };
    CHECK(one_of({1940}) == "1940");
    CHECK(one_of({1940, 1938, 1939, 1938}) == "[1938..1940]");
    CHECK(one_of({1938, 1939}) == "[1938,1939]");
    CHECK(one_of({1931, 1938, 1939, 1940}) == "[1931,1938..1940]");
    CHECK(one_of(yearsFrom(1940, 1949)) == "194X");
    CHECK(one_of(yearsFrom(1940, 1950)) == "[1940..1950]");
    CHECK(one_of(yearsFrom(1945, 1954)) == "[1945..1954]");
    CHECK_FALSE(one_of({}));
    const auto in_spring = models::simplestForm(daysIn("1940-21"), models::RunMeans::OneDate);
    CHECK(in_spring == "[1940-03..1940-05]");
    CHECK(models::simplestForm(daysIn("../1940"), models::RunMeans::OneDate) == "[..1940]");
}

TEST_CASE("A set of days is written by the coarsest parts that are just it", "[models][edtf]")
{
    for (const auto& [written, simple] : std::vector<std::pair<std::string, std::string>>{
             {"1940-01/1940-12", "1940"},
             {"1940-03-01/1940-03-31", "1940-03"},
             {"1940-0X", "1940-01/1940-09"},
             {"1940-34", "1940-04/1940-06"},
             {"[1667,1760-12]", "[1667,1760-12]"},
             {"[1940-03,1940-04,1941]", "[1940-03,1940-04,1941]"},
             {"1940-03-X5", "[1940-03-05,1940-03-15,1940-03-25]"},
             {"1940-03-01/..", "1940-03/.."},
             {"../..", "../.."},
             {"[..1938,1940..]", "[..1938,1940..]"},
             {"Y-17E7", "Y-170000000"}})
        CHECK(models::simplestForm(daysIn(written)) == simple);
    // A winter that ends in the year 10000, which has no months in EDTF.
    CHECK_FALSE(models::simplestForm(daysIn("9999-24")));
}

TEST_CASE("Sets of days join and meet as sets of years do", "[models][edtf]")
{
    std::mt19937 random(7);
    for (int round = 0; round < 3000; ++round) {
        const Years a = someYears(random), b = someYears(random);
        Years both, either;
        std::set_intersection(a.begin(), a.end(), b.begin(), b.end(),
                              std::inserter(both, both.end()));
        std::set_union(a.begin(), a.end(), b.begin(), b.end(), std::inserter(either, either.end()));
        CAPTURE(round);
        const models::DaySet days_a = daysOfYears(a), days_b = daysOfYears(b);
        REQUIRE(models::intersectionOf(days_a, days_b) == daysOfYears(both));
        REQUIRE(models::unionOf(days_a, days_b) == daysOfYears(either));
        REQUIRE(models::intersectionOf(days_b, days_a) == daysOfYears(both));
        const auto text = models::simplestForm(days_a);
        REQUIRE(text.has_value() == !a.empty());
        if (!text)
            continue;
        CAPTURE(*text);
        const models::Edtf edtf = edtfOf(*text);
        for (std::int64_t year = 1925; year <= 1975; ++year)
            REQUIRE(models::couldBeIn(edtf, year) == (a.count(year) > 0));
        REQUIRE(models::setOf(edtf) == days_a);
    }
}

TEST_CASE("Sets of days meet as texts do, day by day", "[models][edtf]")
{
    const std::vector<std::string> texts = {"1940",
                                            "194X",
                                            "1940-02",
                                            "194X-02-29",
                                            "1940-0X",
                                            "../1940-02",
                                            "1940-03-15/",
                                            "1939-24",
                                            "[1939,1940-03..]",
                                            "1940-XX-31",
                                            "{1938..1940}",
                                            "1940S3",
                                            "1941-36",
                                            "1939-11-30/1940-01-01",
                                            "19X0-1X"};
    for (const std::string& first : texts)
        for (const std::string& second : texts) {
            CAPTURE(first, second);
            const models::Edtf a = edtfOf(first), b = edtfOf(second);
            const models::DaySet both = models::intersectionOf(daysIn(first), daysIn(second));
            const models::DaySet either = models::unionOf(daysIn(first), daysIn(second));
            int differing = 0;
            for (std::int64_t year = 1938; year <= 1942; ++year)
                for (int month = 1; month <= 12; ++month)
                    for (int day = 1; day <= models::daysOfMonth(year, month); ++day) {
                        const models::CalendarDay one{year, month, day};
                        const bool in_a = models::couldBe(a, one), in_b = models::couldBe(b, one);
                        differing += both.contains(one) != (in_a && in_b);
                        differing += either.contains(one) != (in_a || in_b);
                    }
            CHECK(differing == 0);
            const auto text = models::simplestForm(either);
            REQUIRE(text);
            CHECK(daysIn(*text) == either);
        }
}
