#include "models/production_change.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "models/change_likelihood.h"
#include "tests/support/by_hand.h"

using namespace models;
using Catch::Contains;

namespace {

const YearRange decade = {1930, 1939};

ChangeItem itemOfYear(int year, bool has_detail, const std::string& maker = "",
                      const YearRange& range = decade)
{
    ChangeItem item;
    item.name = std::to_string(year);
    item.maker_id = maker;
    item.has_detail = has_detail;
    item.years.assign(range.size(), 0);
    item.years.at(static_cast<std::size_t>(year - range.first)) = 1;
    return item;
}

// Without until the year before `first_with`, then with, one or more a year.
std::vector<ChangeItem> changed(int first_with, int a_year = 1, const std::string& maker = "")
{
    std::vector<ChangeItem> items;
    for (int year = decade.first; year <= decade.last; ++year)
        for (int i = 0; i < a_year; ++i)
            items.push_back(itemOfYear(year, year >= first_with, maker));
    return items;
}

}  // namespace

TEST_CASE("By hand: the share of a year's items with the new state", "[models][change]")
{
    CHECK(newShare(1935, 1935.25, 0) == byHand(0.75));  // three quarters of the year
    CHECK(newShare(1935, 1936, 0) == 0);
    CHECK(newShare(1935, 1935, 0) == 1);
    // A line from 1934 to 1936 about 1935: the mean over 1935 is (0.5 + 1) / 2, over 1934 0.25.
    CHECK(newShare(1935, 1935, 2) == byHand(0.75));
    CHECK(newShare(1934, 1935, 2) == byHand(0.25));
    CHECK(newShare(1936, 1935, 2) == byHand(1));
    // A line from 1934.5 to 1935.5 about 1935: over 1935 half a year rises from 0.5 to 1, mean
    // 0.75, and half a year is 1: 0.875.
    CHECK(newShare(1935, 1935, 1) == byHand(0.875));
}

TEST_CASE("By hand: what two items say, and that there was no change", "[models][change]")
{
    // 1932 without, 1937 with; one step a year. Middle 1934.5, no overlap, slips 0.02:
    // 0.98 x 0.98. Given up instead: 0.02 x 0.02.
    const ChangeGrid grid(decade, 1);
    const std::vector<ChangeItem> items = {itemOfYear(1932, false), itemOfYear(1937, true)};
    const ChangeLikelihood likelihood = grid.likelihoodOf({&items[0], &items[1]});
    for (std::size_t s = 0; s < changeShapes().size(); ++s) {
        const ChangeShape& shape = changeShapes()[s];
        if (shape.overlap_years > 0 || std::abs(shape.other_state - 0.02) > 1e-9)
            continue;
        const double expected = shape.direction == ChangeDirection::Introduced ? 0.9604 : 0.0004;
        CHECK(std::exp(likelihood.by_shape[s][4]) == byHand(expected));
        // Middle 1932.5, in the first one's year: half of it is new. 0.02 + 0.96 x 0.5 = 0.5.
        const double half = shape.direction == ChangeDirection::Introduced ? 0.49 : 0.01;
        CHECK(std::exp(likelihood.by_shape[s][2]) == byHand(half));
    }
    // The share always the same: 1! 1! / 3! = 1/6.
    CHECK(std::exp(likelihood.none) == byHand(1.0 / 6));
}

TEST_CASE("By hand: an item of two possible years is the mean of both", "[models][change]")
{
    const ChangeGrid grid(decade, 1);
    ChangeItem item = itemOfYear(1934, true);
    item.years = {0, 0, 0, 0, 0.25, 0, 0.75, 0, 0, 0};  // 1934 or 1936
    const ChangeLikelihood likelihood = grid.likelihoodOf({&item});
    for (std::size_t s = 0; s < changeShapes().size(); ++s) {
        const ChangeShape& shape = changeShapes()[s];
        // Middle 1935.5: 1934 has none of the new, 1936 all: 0.05 + 0.9 x 0.75 = 0.725.
        if (shape.overlap_years == 0 && std::abs(shape.other_state - 0.05) < 1e-9 &&
            shape.direction == ChangeDirection::Introduced)
            CHECK(std::exp(likelihood.by_shape[s][5]) == byHand(0.725));
    }
}

TEST_CASE("A clear change is found where it lies", "[models][change]")
{
    const ProductionChange found = findProductionChange(changed(1935, 3), decade);
    CHECK(found.pooled.can_say);
    CHECK(found.pooled.direction() == ChangeDirection::Introduced);
    CHECK(found.pooled.with == 15);
    CHECK(found.pooled.without == 15);
    CHECK(found.pooled.from < 1935.01);
    CHECK(found.pooled.to > 1934.99);
    CHECK(found.pooled.to - found.pooled.from < 2);
    CHECK(found.odd.empty());
    CHECK_THAT(found.pooled.words, Contains("came in between"));
    double sum = 0, held = 0;
    for (std::size_t t = 0; t < found.pooled.time.size(); ++t) {
        const double begin = 1930 + static_cast<double>(t) / 4, end = begin + 0.25;
        const double inside =
            std::max(0.0, std::min(end, found.pooled.to) - std::max(begin, found.pooled.from));
        sum += found.pooled.time[t];
        held += found.pooled.time[t] * inside / 0.25;
    }
    CHECK(sum == byHand(1));
    CHECK(held == byHand(0.9));  // the interval holds what it says
}

TEST_CASE("What was given up is found as given up, at the same time", "[models][change]")
{
    std::vector<ChangeItem> items = changed(1935, 3);
    for (ChangeItem& item : items)
        item.has_detail = !item.has_detail;
    const ProductionChange up = findProductionChange(changed(1935, 3), decade);
    const ProductionChange down = findProductionChange(items, decade);
    CHECK(down.pooled.direction() == ChangeDirection::GivenUp);
    CHECK(down.pooled.from == byHand(up.pooled.from));  // the model is symmetric
    CHECK(down.pooled.to == byHand(up.pooled.to));
}

TEST_CASE("More items make the interval narrower, a wide overlap wider", "[models][change]")
{
    const auto width = [](const std::vector<ChangeItem>& items) {
        const ChangePosterior found = findProductionChange(items, decade).pooled;
        return found.to - found.from;
    };
    CHECK(width(changed(1935, 6)) < width(changed(1935, 1)));
    std::vector<ChangeItem> mixed = changed(1935, 3);
    for (const int year : {1932, 1933, 1934, 1935, 1936, 1937}) {
        mixed.push_back(itemOfYear(year, true));
        mixed.push_back(itemOfYear(year, false));
    }
    CHECK(width(mixed) > width(changed(1935, 3)));
    CHECK(findProductionChange(mixed, decade).pooled.overlap_years >
          findProductionChange(changed(1935, 3), decade).pooled.overlap_years);
}

TEST_CASE("Where the items cannot say when, it says so", "[models][change]")
{
    CHECK_THAT(findProductionChange({}, decade).pooled.words, Contains("cannot say: none"));
    CHECK_THAT(
        findProductionChange({itemOfYear(1933, true), itemOfYear(1936, true)}, decade).pooled.words,
        Contains("all are alike"));
    const ProductionChange two =
        findProductionChange({itemOfYear(1931, false), itemOfYear(1938, true)}, decade);
    CHECK_FALSE(two.pooled.can_say);
    CHECK_THAT(two.pooled.words, Contains("cannot say"));
    std::vector<ChangeItem> mixed;  // half and half in every year
    for (int year = decade.first; year <= decade.last; ++year)
        for (const bool has : {true, false, true, false})
            mixed.push_back(itemOfYear(year, has));
    const ProductionChange none = findProductionChange(mixed, decade);
    CHECK_FALSE(none.pooled.can_say);
    CHECK(none.pooled.is_change < 0.1);
}

TEST_CASE("An item that the change does not explain is named", "[models][change]")
{
    std::vector<ChangeItem> items = changed(1935, 4);
    items.push_back(itemOfYear(1931, true));
    items.back().name = "SHT 7";
    const ProductionChange found = findProductionChange(items, decade);
    CHECK(found.pooled.can_say);
    CHECK(found.odd == std::vector<std::string>{"SHT 7"});
}

TEST_CASE("Makers changed at their own times, and lean on each other", "[models][change]")
{
    std::vector<ChangeItem> items = changed(1934, 3, "one");
    for (const ChangeItem& item : changed(1937, 3, "two"))
        items.push_back(item);
    items.push_back(itemOfYear(1931, false, "three"));
    items.push_back(itemOfYear(1939, true, "three"));
    items.push_back(itemOfYear(1939, true, "once"));
    const ProductionChange found = findProductionChange(items, decade);
    REQUIRE(found.makers.size() == 3);  // `once` has one item
    CHECK(found.makers[0].maker_id == "one");
    CHECK(found.makers[0].change.likeliest == Approx(1934).margin(0.6));
    CHECK(found.makers[1].maker_id == "three");
    CHECK(found.makers[2].change.likeliest == Approx(1937).margin(0.6));
    // Two items say little; with what the others did it is narrower than alone.
    const ProductionChange alone = findProductionChange(
        {itemOfYear(1931, false, "three"), itemOfYear(1939, true, "three")}, decade);
    CHECK(found.makers[1].change.to - found.makers[1].change.from <
          alone.pooled.to - alone.pooled.from);
}

TEST_CASE("A change refuses what is none", "[models][change]")
{
    ChangeItem item = itemOfYear(1933, true);
    item.years.pop_back();
    CHECK_THROWS_AS(findProductionChange({item}, decade), std::invalid_argument);
    item = itemOfYear(1933, true);
    item.years[3] = 0.5;
    CHECK_THROWS_AS(findProductionChange({item}, decade), std::invalid_argument);
    CHECK_THROWS_AS(findProductionChange({}, {1939, 1930}), std::invalid_argument);
    ChangeOptions options;
    options.interval_share = 1;
    CHECK_THROWS_AS(findProductionChange({}, decade, options), std::invalid_argument);
    options = {};
    options.steps_a_year = 0;
    CHECK_THROWS_AS(findProductionChange({}, decade, options), std::invalid_argument);
    options = {};
    options.makers_apart_years = 0;
    CHECK_THROWS_AS(findProductionChange({}, decade, options), std::invalid_argument);
}

TEST_CASE("Times in words are thirds of a year", "[models][change]")
{
    CHECK(timeInWords(1938.1) == "early 1938");
    CHECK(timeInWords(1938.5) == "mid-1938");
    CHECK(timeInWords(1938.99) == "late 1938");
}
