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

TEST_CASE("Unread and ambiguous digits stay so in EDTF", "[models][date]")
{
    CHECK(meaning("194[.]", "194X").years ==
          Years{1940, 1941, 1942, 1943, 1944, 1945, 1946, 1947, 1948, 1949});
    CHECK(meaning("194(0|6|8)", "[1940,1946,1948]").years == Years{1940, 1946, 1948});
    CHECK(meaning("19[.]0", "19X0").years == Years{1930, 1940, 1950});
    CHECK(meaning("[.]940", "X940").years == Years{1940});
    meaning("3.1940", "1940-03");
    meaning("24 JAN 1940", "1940-01-24");
    meaning("MA[.] 1940", "[1940-03,1940-05]");
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

TEST_CASE("A known order of day and month weighs no less than an open one", "[models][date]")
{
    const models::DateContext day_first{1921, 1958, models::DayOrder::DayFirst};
    CHECK(meaning("12.3.40", "1940-03-12", day_first).probability ==
          Approx(meaning("12.3.40", "[1940-03-12,1940-12-03]").probability));
    CHECK(means("4/25/40", "1940-04-25"));  // month first, settled by the value
    CHECK_FALSE(means("4/25/40", "1925-04"));
}

TEST_CASE("A year's code of the register is that year, and all of them where it has two",
          "[models][date]")
{
    models::DateContext context = service;
    context.codes = {{"YA", models::CodeMeaning::Year, "1941", "", "", "", "", "", 0},
                     {"YB", models::CodeMeaning::Year, "1942", "", "", "", "", "", 0},
                     {"YB", models::CodeMeaning::Year, "1952?", "", "", "", "", "", 0},
                     {"YZ", models::CodeMeaning::Year, "1961", "", "", "", "", "", 0},
                     {"YM", models::CodeMeaning::Maker, "m1", "", "", "", "", "", 0}};
    CHECK_FALSE(means("YA", "1941"));  // without a register it is text
    CHECK(meaning("YA", "1941", context).years == Years{1941});
    CHECK(meaning("T.H. & CO YA", "1941", context).first_cell == 10);
    const double one = meaning("YB", "1942", context).probability;
    CHECK(one == Approx(meaning("YB", "1952?", context).probability));
    CHECK(one < meaning("YA", "1941", context).probability);
    CHECK(means("Y[.]", "1941", context));
    CHECK(means("Y(A|B)", "1942", context));
    CHECK(meaning("Y?A", "1941", context).probability < meaning("YA", "1941", context).probability);
    for (const char* other : {"YZ", "YM", "MAYA", "YACHT"})  // out of the years, no year, no word
        CHECK_FALSE(means(other, "1941", context));
    CHECK(datesIn("YZ", context).empty());
}

TEST_CASE("A quarter's code of the register stands before its year", "[models][date]")
{
    models::DateContext context = service;
    context.codes = {{"Q1", models::CodeMeaning::Quarter, "1", "", "", "", "", "", 0},
                     {"Q3", models::CodeMeaning::Quarter, "3", "", "", "", "", "", 0}};
    CHECK(datesIn("Q3 43", context).front().edtf == "1943-35");
    CHECK(datesIn("Q1/1940", context).front().edtf == "1940-33");
    CHECK(means("Q[.] 1940", "[1940-33,1940-35]", context));
    CHECK_FALSE(means("Q3 43", "1943-35"));
}

TEST_CASE("A date over another is the later one or both, with both probabilities", "[models][date]")
{
    const std::string typed = "T.H. 193{erased}8{erased}4{over}0{over}";
    const models::DateMeaning both = meaning(typed, "{1938,1940}");
    CHECK(both.years == Years{1938, 1940});
    CHECK(both.first_cell == 5);
    CHECK(both.end_cell == 11);
    CHECK(both.probability > meaning(typed, "1940").probability);
    CHECK(meaning(typed, "1940").probability > 0.2);
    // Erased alone, nothing stands in its place.
    CHECK_FALSE(means("193{erased}8{erased}", "{1938,1940}"));
}

TEST_CASE("A full stop is no letter of a month", "[models][date]")
{
    for (const char* typed : {"NO. 1940", "NO 1940", "No. 1940", "SER NO. 1940"}) {
        CAPTURE(typed);
        CHECK_FALSE(means(typed, "1940-11"));
        CHECK(datesIn(typed).front().edtf == "1940");
    }
    CHECK_FALSE(means("NO. 40", "1940-11"));
    CHECK(datesIn("I.I.40").front().edtf == "1940-01-01");
    CHECK(datesIn("NOV. 1940").front().edtf == "1940-11");
}

TEST_CASE("An apostrophe stands before the year behind a month", "[models][date]")
{
    for (const char* typed : {"MAR'40", "MAR '40", "MAR. '40", "MAR.'40", "3/'40", "III '40"}) {
        CAPTURE(typed);
        CHECK(datesIn(typed).front().edtf == "1940-03");
    }
    CHECK(datesIn("12 MAR '40").front().edtf == "1940-03-12");
}

TEST_CASE("A quarter of which nothing stands is none", "[models][date]")
{
    for (const models::DateMeaning& one : datesIn("[...] 40")) {
        CAPTURE(one.edtf);
        CHECK(one.edtf.find("-3") == std::string::npos);
    }
    models::DateContext coded = service;
    coded.codes = {{"QZ", models::CodeMeaning::Quarter, "35", "", "", "", "", "", 0}};
    CHECK(datesIn("QZ 40", coded).front().edtf == "1940");
}

TEST_CASE("A doubtful digit leaves every member in doubt", "[models][date]")
{
    meaning("12.3.4?0", "[1940-03-12?,1940-12-03?]");
    meaning("4?0", "[1840?,1940?]", {1835, 1950});
    CHECK(models::edtfYearBounds("[1940-03-12?,1940-12-03?]")->soft);
}

TEST_CASE("Years that no date can have are refused with the reason", "[models][date]")
{
    const auto reason = [](const models::DateContext& context) {
        try {
            datesIn("40", context);
        } catch (const std::invalid_argument& error) {
            return std::string(error.what());
        }
        return std::string();
    };
    CHECK(reason({1900, 10000}).find("0 to 9999") != std::string::npos);
    CHECK(reason({1941, 1940}).find("not be after") != std::string::npos);
}
