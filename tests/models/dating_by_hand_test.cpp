// Datings worked out by hand: the arithmetic stands beside each. Everything is exact but for the
// rounding of the figures that were written down.
#include <catch2/catch.hpp>

#include "models/dating.h"
#include "tests/support/by_hand.h"

using namespace models;

namespace {

const YearRange five = {1940, 1944};

DateEvidence piece(const std::string& source, std::vector<EvidenceCase> cases)
{
    DateEvidence evidence;
    evidence.source = source;
    evidence.cases = std::move(cases);
    return evidence;
}

DateEvidence sure(const std::string& source, std::vector<double> likelihood)
{
    return piece(source, {{std::nullopt, 1, std::move(likelihood), {}}});
}

void checkYears(const Dating& dating, const std::vector<double>& expected)
{
    REQUIRE(dating.years.size() == expected.size());
    for (std::size_t y = 0; y < expected.size(); ++y) {
        CAPTURE(y);
        CHECK(dating.years[y] == byHand(expected[y]));
    }
}

// A mark of 1944 that misleads in one of twenty, then of any year: 0.05 / 5 = 0.01 a year.
DateEvidence markOf1944()
{
    return piece("mark", {{std::nullopt, 0.95, {0, 0, 0, 0, 1}, {}},
                          {EvidenceFault::OtherRole, 0.05, {0.2, 0.2, 0.2, 0.2, 0.2}, "no date"}});
}

// A detail of 1940 to 1942, its years wrong in one of twenty-five.
DateEvidence detailUntil1942()
{
    return piece("detail", {{std::nullopt, 0.96, {1, 1, 1, 0, 0}, {}},
                            {EvidenceFault::RegisterWrong, 0.04, {1, 1, 1, 1, 1}, "register"}});
}

}  // namespace

TEST_CASE("By hand: without evidence every year is alike", "[models][dating]")
{
    const Dating dating = dateFrom({}, five);
    checkYears(dating, {0.2, 0.2, 0.2, 0.2, 0.2});  // 1 / 5
    CHECK(dating.set.size() == 5);                  // 4 x 0.2 = 0.8 is below 0.95
    CHECK(dating.edtf.empty());
    CHECK(dating.contradiction == byHand(0));
}

TEST_CASE("By hand: what tells less than a tenth of a bit is not written as a date",
          "[models][dating]")
{
    // 0.25 0.25 0.2 0.15 0.15: log2 5 - (2 x 0.25 x 2 + 0.2 x 2.321928 + 2 x 0.15 x 2.736966)
    // = 2.321928 - 2.285475 = 0.036453 bit.
    CHECK(dateFrom({sure("a", {0.25, 0.25, 0.2, 0.15, 0.15})}, five).edtf.empty());
    // 0.4 0.3 0.1 0.1 0.1: 2.321928 - (0.528771 + 0.521090 + 3 x 0.332193) = 0.275488 bit.
    CHECK(dateFrom({sure("a", {0.4, 0.3, 0.1, 0.1, 0.1})}, five).edtf == "[1940..1944]");
}

TEST_CASE("By hand: one certain year is worth log2 5 bits of five years", "[models][dating]")
{
    const Dating dating = dateFrom({sure("mark", {0, 0, 1, 0, 0})}, five);
    checkYears(dating, {0, 0, 1, 0, 0});
    CHECK(dating.edtf == "1942");
    // 1 x log2(1 / 0.2) = 2.321928; moved: (|1 - 0.2| + 4 x 0.2) / 2 = 0.8
    CHECK(dating.weights[0].bits == byHand(2.321928));
    CHECK(dating.weights[0].moved == byHand(0.8));
}

TEST_CASE("By hand: two pieces multiply", "[models][dating]")
{
    // (1 2 3 2 1) x (0 0 1 1 1) = (0 0 3 2 1), of 6
    const Dating dating = dateFrom({sure("a", {1, 2, 3, 2, 1}), sure("b", {0, 0, 1, 1, 1})}, five);
    checkYears(dating, {0, 0, 0.5, 1.0 / 3, 1.0 / 6});
    CHECK(dating.edtf == "[1942..1944]");  // 5/6 is below 0.95
    // Without a: 1/3 each. 0.5 log2 1.5 + 1/3 log2 1 + 1/6 log2 0.5 = 0.292481 + 0 - 0.166667
    CHECK(dating.weights[0].bits == byHand(0.125815));
    // (|0.5 - 1/3| + 0 + |1/6 - 1/3|) / 2 = 1/6
    CHECK(dating.weights[0].moved == byHand(0.166667));
    // Without b: (1 2 3 2 1) / 9. 0.5 log2(4.5 / 3) + 1/3 log2(3 / 2) + 1/6 log2(9 / 6), that is
    // log2 1.5 = 0.584963
    CHECK(dating.weights[1].bits == byHand(0.584963));
    // 1/9 + 2/9 = 1/3 went to the others
    CHECK(dating.weights[1].moved == byHand(0.333333));
}

TEST_CASE("By hand: a digit that cannot stand was misread", "[models][dating]")
{
    // The mark: 0.9 that it is 1943 as read, 0.1 that it is 1942. The detail ended sharply in 1942.
    // 0.1 x 1 at 1942, nothing elsewhere.
    DateEvidence mark = piece("mark", {{std::nullopt, 0.9, {0, 0, 0, 1, 0}, {}},
                                       {EvidenceFault::Misread, 0.1, {0, 0, 1, 0, 0}, "misread"}});
    mark.printed_year = 1943;
    const Dating dating = dateFrom({mark, sure("detail", {1, 1, 1, 0, 0})}, five);
    checkYears(dating, {0, 0, 1, 0, 0});
    CHECK(dating.contradiction == byHand(1));
    CHECK(dating.weights[0].sound == byHand(0));
    REQUIRE(dating.culprits.size() == 1);
    CHECK(dating.culprits[0].evidence == 0);
    CHECK(dating.culprits[0].probability == byHand(1));
    CHECK(dating.culprits[0].fault == EvidenceFault::Misread);
    CHECK(dating.culprits[0].printed == 1942);
}

TEST_CASE("By hand: what was an open question from the start contradicts nothing",
          "[models][dating]")
{
    // A lone 44: the year with 0.6, a size with 0.4, then of any year: 0.4 / 5 = 0.08. The detail
    // ended sharply in 1942: of 0.08 0.08 0.08 0.08 0.68 it leaves 0.08 0.08 0.08 0 0.
    DateEvidence lone = piece(
        "44",
        {{std::nullopt, 0.6, {0, 0, 0, 0, 1}, {}},
         {EvidenceFault::OtherRole, 0.4, {0.2, 0.2, 0.2, 0.2, 0.2}, "the figures are a size"}});
    CHECK(dateFrom({lone, sure("detail", {1, 1, 1, 0, 0})}, five).is_contradiction);
    lone.cases[1].is_open = true;
    const Dating dating = dateFrom({lone, sure("detail", {1, 1, 1, 0, 0})}, five);
    checkYears(dating, {1.0 / 3, 1.0 / 3, 1.0 / 3, 0, 0});
    CHECK(dating.contradiction == byHand(0));
    CHECK(dating.culprits.empty());
    CHECK(dating.weights[0].sound == byHand(0));
    // It is told all the same what the figures are.
    CHECK(dating.weights[0].words.find("; likeliest the figures are a size (100 %)") !=
          std::string::npos);
}

TEST_CASE("By hand: of two that disagree the one that errs more often is likelier wrong",
          "[models][dating]")
{
    // Mark: 0.01 0.01 0.01 0.01 0.96 (0.95 + 0.01). Detail: 1 1 1 0.04 0.04.
    // Product: 0.01 0.01 0.01 0.0004 0.0384, sum 0.0688.
    const Dating dating = dateFrom({markOf1944(), detailUntil1942()}, five);
    checkYears(dating, {0.145349, 0.145349, 0.145349, 0.005814, 0.558140});
    // Not one year suits both: it is certain that one of them is wrong.
    CHECK(dating.contradiction == byHand(1));
    REQUIRE(dating.culprits.size() == 2);
    // The register is wrong in 1943 and 1944: (0.0004 + 0.0384) / 0.0688; the mark in 1940 to 1943:
    // (3 x 0.01 + 0.0004) / 0.0688. In 1943 both are.
    CHECK(dating.culprits[0].evidence == 1);
    CHECK(dating.culprits[0].probability == byHand(0.563953));
    CHECK(dating.culprits[1].evidence == 0);
    CHECK(dating.culprits[1].probability == byHand(0.441860));
    // Never averaged: 1940 to 1942 and 1944 remain; 1943, which nothing asks for, is the least.
    CHECK(dating.edtf == "[1940..1942,1944]");
}

TEST_CASE("By hand: a second witness decides", "[models][dating]")
{
    // A second detail of the same years: 1 1 1 0.04 0.04 once more.
    // Product: 0.01 0.01 0.01 0.000016 0.001536, sum 0.031552.
    const Dating dating = dateFrom({markOf1944(), detailUntil1942(), detailUntil1942()}, five);
    checkYears(dating, {0.316937, 0.316937, 0.316937, 0.000507, 0.048682});
    REQUIRE_FALSE(dating.culprits.empty());
    CHECK(dating.culprits[0].evidence == 0);
    // 1 - 0.048682
    CHECK(dating.culprits[0].probability == byHand(0.951318));
}

TEST_CASE("By hand: where everything agrees nothing is wrong that matters", "[models][dating]")
{
    // Mark of 1942 and detail until 1942. Mark: 0.01, at 1942 0.96. Detail: 1 1 1 0.04 0.04.
    // Product: 0.01 0.01 0.96 0.0004 0.0004, sum 0.9808.
    DateEvidence mark =
        piece("mark", {{std::nullopt, 0.95, {0, 0, 1, 0, 0}, {}},
                       {EvidenceFault::OtherRole, 0.05, {0.2, 0.2, 0.2, 0.2, 0.2}, "no date"}});
    const Dating dating = dateFrom({mark, detailUntil1942()}, five);
    checkYears(dating, {0.010196, 0.010196, 0.978793, 0.000408, 0.000408});
    CHECK(dating.edtf == "1942");
    // All years but 1942 need the mark to be wrong: 1 - 0.978793. That the register may be wrong
    // without any harm (in 1942) does not count.
    CHECK(dating.contradiction == byHand(0.021207));
    CHECK_FALSE(dating.is_contradiction);
    CHECK(dating.culprits.empty());
    // Sound, the mark: in 1942 0.95 / 0.96 of 0.978793 = 0.968597
    CHECK(dating.weights[0].sound == byHand(0.968597));
}

TEST_CASE("By hand: a soft limit matters by as much as the year suits it", "[models][dating]")
{
    // Mark certain: 1944. Detail: sound 0.9 of (1 1 1 0.5 0.2), fault 0.1 of all 1.
    // At 1944: 0.9 x 0.2 + 0.1 = 0.28; the fault holds with 0.1 / 0.28 = 0.357143 and matters by
    // 1 - 0.2 / 1 = 0.8: 0.285714.
    const DateEvidence detail =
        piece("detail", {{std::nullopt, 0.9, {1, 1, 1, 0.5, 0.2}, {}},
                         {EvidenceFault::RegisterWrong, 0.1, {1, 1, 1, 1, 1}, "register"}});
    const Dating dating = dateFrom({sure("mark", {0, 0, 0, 0, 1}), detail}, five);
    checkYears(dating, {0, 0, 0, 0, 1});
    CHECK(dating.contradiction == byHand(0.285714));
    CHECK(dating.weights[1].sound == byHand(0.642857));  // 0.18 / 0.28
    CHECK(dating.weights[1].bits == byHand(0));          // the mark alone says as much
}

TEST_CASE("By hand: two faults that matter are joined as independent ones", "[models][dating]")
{
    // Mark certain: 1944; two details as above: 1 - (1 - 0.285714)^2 = 0.489796.
    const DateEvidence detail =
        piece("detail", {{std::nullopt, 0.9, {1, 1, 1, 0.5, 0.2}, {}},
                         {EvidenceFault::RegisterWrong, 0.1, {1, 1, 1, 1, 1}, "register"}});
    const Dating dating = dateFrom({sure("mark", {0, 0, 0, 0, 1}), detail, detail}, five);
    CHECK(dating.contradiction == byHand(0.489796));
}

TEST_CASE("By hand: the smallest set takes the likeliest years first", "[models][dating]")
{
    // 0.5 0.3 0.1 0.06 0.04: 0.5 + 0.3 + 0.1 = 0.9 and with 0.06 it is 0.96.
    const std::vector<double> years = {0.04, 0.5, 0.06, 0.3, 0.1};
    CHECK(smallestYearSet(years, five, 0.95) == std::vector<int>{1941, 1942, 1943, 1944});
    CHECK(smallestYearSet(years, five, 0.9) == std::vector<int>{1941, 1943, 1944});
    CHECK(smallestYearSet(years, five, 0.5) == std::vector<int>{1941});
    CHECK(dateFrom({sure("a", years)}, five).edtf == "[1941..1944]");
}

TEST_CASE("Many pieces do not run out of numbers", "[models][dating]")
{
    // Each halves 1940 against 1941: 2^-2000 is no double, the quotient of the two is 0.
    std::vector<DateEvidence> many(2000, sure("a", {1e-200, 2e-200, 0, 0, 0}));
    checkYears(dateFrom(many, five), {0, 1, 0, 0, 0});
}

TEST_CASE("A dating refuses what is none", "[models][dating]")
{
    CHECK_THROWS_AS(dateFrom({piece("none", {})}, five), std::invalid_argument);
    CHECK_THROWS_AS(dateFrom({sure("short", {1, 1})}, five), std::invalid_argument);
    CHECK_THROWS_AS(dateFrom({sure("negative", {1, 1, -1, 1, 1})}, five), std::invalid_argument);
    CHECK_THROWS_AS(dateFrom({sure("impossible", {0, 0, 0, 0, 0})}, five), std::invalid_argument);
    CHECK_THROWS_AS(dateFrom({piece("half", {{std::nullopt, 0.5, {1, 1, 1, 1, 1}, {}}})}, five),
                    std::invalid_argument);
    CHECK_THROWS_AS(
        dateFrom({piece("faulty", {{EvidenceFault::Misread, 1, {1, 1, 1, 1, 1}, {}}})}, five),
        std::invalid_argument);
    CHECK_THROWS_AS(dateFrom({}, {1944, 1940}), std::invalid_argument);
    DatingOptions options;
    options.set_share = 1;
    CHECK_THROWS_AS(dateFrom({}, five, options), std::invalid_argument);
    options = {};
    options.alarm_from = 0;
    CHECK_THROWS_AS(dateFrom({}, five, options), std::invalid_argument);
    options = {};
    options.least_culprit = -1;
    CHECK_THROWS_AS(dateFrom({}, five, options), std::invalid_argument);
}
