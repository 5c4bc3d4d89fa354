// A dozen clear stamps on one item multiplied to more than a double holds, and every share became
// "not a number".

#include <catch2/catch.hpp>
#include <cmath>

#include "tests/models/demo_ranking.h"

TEST_CASE("Many clear stamps on one item still give shares that sum to one", "[bugs][candidates]")
{
    // 400 pass what a long double holds, too.
    const std::vector<std::string> stamps(400, "MESTRELBY & ESKWITH / 1944");
    const models::CandidateList list = rankItem(stamps, "", atMost(10));

    double sum = list.other_makers + list.unknown_maker;
    for (const models::Candidate& candidate : list.candidates)
        sum += candidate.probability;
    CHECK(sum == Approx(1).margin(1e-6));
    REQUIRE_FALSE(list.candidates.empty());
    CHECK(list.candidates.front().maker_id == "mestrelby");
    CHECK(list.candidates.front().edtf == "1944");
}
