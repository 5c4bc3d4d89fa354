#include <algorithm>
#include <catch2/catch.hpp>
#include <string>
#include <variant>
#include <vector>

#include "models/date_mark.h"
#include "models/edtf_days.h"
#include "models/typed_notation.h"

// Dates as marks print them, row by row. The rows are this project's table of 2026: the EDTF after
// the specification of the Library of Congress (4 February 2019; X, sets, quarters 33 to 36), Roman
// months after Linn's stamp primer, MCH and JLY as seen on postmarks (scottvstamps.blogspot.com),
// all else common practice, no source. One text can have several meanings: a row holds when its
// EDTF is among them.
namespace {

using models::DayOrder;

constexpr int no_type_from = 1801, no_type_to = 2000;

struct DateRow {
    const char* typed;
    int from, to;  // years of the item type
    DayOrder order;
    const char* edtf;
};

const DateRow date_rows[] = {
    {"1940", no_type_from, no_type_to, DayOrder::Unknown, "1940"},
    {"40", 1939, 1945, DayOrder::Unknown, "1940"},
    {"40", 1835, 1950, DayOrder::Unknown, "[1840,1940]"},
    {"40", no_type_from, no_type_to, DayOrder::Unknown, "[1840,1940]"},
    {"'40", 1921, 1958, DayOrder::Unknown, "1940"},
    {"3/40", 1921, 1958, DayOrder::MonthFirst, "1940-03"},
    {"3/40", 1921, 1958, DayOrder::Unknown, "1940-35"},
    {"III 40", 1921, 1958, DayOrder::Unknown, "1940-03"},
    {"III.1940", no_type_from, no_type_to, DayOrder::Unknown, "1940-03"},
    {"MAR 1940", no_type_from, no_type_to, DayOrder::Unknown, "1940-03"},
    {"MCH 40", 1921, 1958, DayOrder::Unknown, "1940-03"},
    {"JLY 40", 1921, 1958, DayOrder::Unknown, "1940-07"},
    {"12.3.40", 1921, 1958, DayOrder::DayFirst, "1940-03-12"},
    {"12.3.40", 1921, 1958, DayOrder::MonthFirst, "1940-12-03"},
    {"12.3.40", 1921, 1958, DayOrder::Unknown, "[1940-03-12,1940-12-03]"},
    {"2/4/40", 1921, 1958, DayOrder::Unknown, "[1940-02-04,1940-04-02]"},
    {"25/4/40", 1921, 1958, DayOrder::Unknown, "1940-04-25"},
    {"25/4/40", 1921, 1958, DayOrder::MonthFirst, "1940-04-25"},  // the value settles it
    {"4/25/40", 1921, 1958, DayOrder::DayFirst, "1940-04-25"},
    {"194[.]", no_type_from, no_type_to, DayOrder::Unknown, "194X"},
    {"194(0|6|8)", no_type_from, no_type_to, DayOrder::Unknown, "[1940,1946,1948]"},
    {"19[.]0", no_type_from, no_type_to, DayOrder::Unknown, "19X0"},
    {"[.]940", no_type_from, no_type_to, DayOrder::Unknown, "X940"},
    {"1[..]0", no_type_from, no_type_to, DayOrder::Unknown, "1XX0"},
    {"[..] 40", 1921, 1958, DayOrder::Unknown, "1940-XX"},
    {"[.]3/40", 1921, 1958, DayOrder::MonthFirst, "1940-03"},
    {"[.]2/40", 1921, 1958, DayOrder::MonthFirst, "1940-X2"},
    {"0[.]/40", 1921, 1958, DayOrder::MonthFirst, "1940-0X"},
    {"1[.]/40", 1921, 1958, DayOrder::MonthFirst, "1940-1X"},
    {"193{erased}8{erased}4{over}0{over}", 1921, 1958, DayOrder::Unknown, "{1938,1940}"},
    {"1{erased}9{erased}3{erased}8{erased}1{over}9{over}4{over}0{over}", no_type_from, no_type_to,
     DayOrder::Unknown, "{1938,1940}"},
    // That 1931 bounds it and is not the year made is told by its role: roles_test.cpp.
    {"PATTERN 1931 1942", no_type_from, no_type_to, DayOrder::Unknown, "1942"},
};

models::Line lineAsTyped(const std::string& typed)
{
    const models::ParsedNotation parsed = models::parseTyped(typed);
    REQUIRE_FALSE(parsed.fault);
    REQUIRE(parsed.lines.size() == 1);
    return parsed.lines.front();
}

std::vector<std::string> meaningsTold(const std::vector<models::DateMeaning>& meanings)
{
    std::vector<std::string> all;
    for (const models::DateMeaning& meaning : meanings)
        all.push_back(meaning.edtf);
    return all;
}

bool isAmongMeanings(const std::vector<models::DateMeaning>& meanings, const std::string& edtf)
{
    return std::any_of(meanings.begin(), meanings.end(),
                       [&](const models::DateMeaning& one) { return one.edtf == edtf; });
}

bool allowsMonth(const std::vector<models::DateMeaning>& meanings, int month)
{
    return std::any_of(meanings.begin(), meanings.end(), [&](const models::DateMeaning& one) {
        return models::couldBe(std::get<models::Edtf>(models::parseEdtf(one.edtf)),
                               {1940, month, 15});
    });
}

std::string dotsAsLost(const std::string& mask)
{
    std::string typed;
    for (const char letter : mask)
        typed += letter == '.' ? std::string("[.]") : std::string(1, letter);
    return typed;
}

std::string monthOf1940(int month)
{
    return (month < 10 ? "1940-0" : "1940-") + std::to_string(month);
}

std::vector<models::DateMeaning> meaningsBefore1940(const std::string& month)
{
    return models::readDates(lineAsTyped(month + " 1940"), {1921, 1958});
}

}  // namespace

TEST_CASE("Every printed date of the table has its meaning among those returned", "[models][date]")
{
    for (const DateRow& row : date_rows) {
        const auto meanings =
            models::readDates(lineAsTyped(row.typed), {row.from, row.to, row.order});
        CAPTURE(row.typed, row.from, row.to, row.edtf, meaningsTold(meanings));
        CHECK(isAmongMeanings(meanings, row.edtf));
    }
}

TEST_CASE("What the table says a printed date never means, it never means", "[models][date]")
{
    // A century is told by the item type alone, a known order shuts the other one out.
    CHECK_FALSE(isAmongMeanings(models::readDates(lineAsTyped("40"), {1835, 1950}), "1940"));
    CHECK_FALSE(isAmongMeanings(
        models::readDates(lineAsTyped("12.3.40"), {1921, 1958, DayOrder::DayFirst}), "1940-12-03"));
    CHECK(models::readDates(lineAsTyped("[- - -]"), {}).empty());  // never XXXX
}

TEST_CASE("Roman months are read, whole and without their first stroke", "[models][date]")
{
    struct Month {
        int month;
        const char *roman, *also_printed, *without_first;
        int reads_as;  // 0: nothing is left
    };
    const Month months[] = {
        {1, "I", "", "", 0},       {2, "II", "", "I", 1},     {3, "III", "", "II", 2},
        {4, "IV", "IIII", "V", 5}, {5, "V", "", "", 0},       {6, "VI", "", "I", 1},
        {7, "VII", "", "II", 2},   {8, "VIII", "", "III", 3}, {9, "IX", "VIIII", "X", 10},
        {10, "X", "", "", 0},      {11, "XI", "", "I", 1},    {12, "XII", "", "II", 2}};
    for (const Month& row : months) {
        CAPTURE(row.month);
        CHECK(meaningsBefore1940(row.roman).front().edtf == monthOf1940(row.month));
        if (*row.also_printed != '\0')
            CHECK(meaningsBefore1940(row.also_printed).front().edtf == monthOf1940(row.month));
        if (row.reads_as == 0)
            continue;
        // Unnoticed, the loss makes another month of it; noticed, the month is among the possible.
        CHECK(meaningsBefore1940(row.without_first).front().edtf == monthOf1940(row.reads_as));
        CHECK(allowsMonth(meaningsBefore1940(std::string("[.]") + row.without_first), row.month));
    }
}

TEST_CASE("A Roman month that lost letters is the set of months that it can be", "[models][date]")
{
    const std::vector<std::pair<std::string, std::string>> masks = {
        {".I", "[1940-02,1940-06,1940-11]"},
        {".V", "1940-04"},
        {".X", "1940-09"},
        {"I.", "[1940-02,1940-04,1940-09]"},
        {"V.", "1940-06"},
        {"X.", "1940-11"},
        {"..I", "[1940-03,1940-07,1940-12]"},
        {".I.", "[1940-03,1940-07,1940-12]"},
        {".II", "[1940-03,1940-07,1940-12]"},
        {"I..", "1940-03"},
        {"I.I", "1940-03"},
        {"II.", "1940-03"},
        {"V..", "1940-07"},
        {"V.I", "1940-07"},
        {"VI.", "1940-07"},
        {"X..", "1940-12"},
        {"X.I", "1940-12"},
        {"XI.", "1940-12"},
        {"...I", "1940-08"},
        {"..I.", "1940-08"},
        {"..II", "1940-08"},
        {".I..", "1940-08"},
        {".I.I", "1940-08"},
        {".II.", "1940-08"},
        {".III", "1940-08"},
        {"V...", "1940-08"},
        {"V..I", "1940-08"},
        {"V.I.", "1940-08"},
        {"V.II", "1940-08"},
        {"VI..", "1940-08"},
        {"VI.I", "1940-08"},
        {"VII.", "1940-08"},
    };
    for (const auto& [mask, edtf] : masks) {
        const auto meanings = meaningsBefore1940(dotsAsLost(mask));
        CAPTURE(mask, edtf, meaningsTold(meanings));
        CHECK(isAmongMeanings(meanings, edtf));
    }
}

// The table's four rows without a letter left are not answered by their sets of months: nothing
// tells then that the month was Roman, nor that it was a month. One lost letter can be a month in
// figures, two any month (1940-XX), more are other text. No month of the row is shut out.
TEST_CASE("A month of which no letter is left is not guessed", "[models][date]")
{
    const std::vector<std::pair<std::string, std::vector<int>>> masks = {
        {".", {1, 5, 10}}, {"..", {2, 4, 6, 9, 11}}, {"...", {3, 7, 12}}, {"....", {8}}};
    for (const auto& [mask, months] : masks) {
        const auto meanings = meaningsBefore1940(dotsAsLost(mask));
        for (const int month : months) {
            CAPTURE(mask, month, meaningsTold(meanings));
            CHECK(allowsMonth(meanings, month));
        }
        CHECK(meanings.front().years == std::vector<int>{1940});
    }
    CHECK(isAmongMeanings(meaningsBefore1940("[..]"), "1940-XX"));
}
