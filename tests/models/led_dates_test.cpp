#include <catch2/catch.hpp>

#include "tests/models/demo_ranking.h"

// What words before dates and numbers do to the candidates.

namespace {

double yearOf(const std::string& typed, int year)
{
    const models::CandidateList list = rank(typed);
    REQUIRE_FALSE(list.candidates.empty());
    for (const models::YearShare& share : list.candidates.front().years)
        if (share.year == year)
            return share.probability;
    return 0;
}

}  // namespace

TEST_CASE("A number of another role says nothing of the year made", "[models][candidates]")
{
    for (const char* led : {"LOT 1938", "SIZE 38", "NAME 1938", "PROPERTY 1938", "NO. 1938",
                            "NO 1938", "SER NO 1938", "NO. 38", "BATCH 38"}) {
        CAPTURE(led);
        const std::string dated = std::string("T.H. & CO / ") + led + " / 1941";
        CHECK(yearOf(dated, 1941) > 0.9);
        CHECK(yearOf(dated, 1938) < 0.03);
    }
    CHECK(yearOf("LOT 1938 / 1941", 1941) > 0.8);
    CHECK(yearOf("LOT 1938 / 1941", 1938) < 0.05);
    CHECK(yearOf("T.H. & CO / NO 7301 1941", 1941) > 0.9);
    CHECK(yearOf("T.H. & CO / LOT 12 1941", 1941) > 0.9);
    CHECK(yearOf("T.H. & CO / MADE 1941", 1941) > 0.9);
    CHECK(yearOf("T.H. & CO / REPAIRED 1944", 1944) < yearOf("T.H. & CO / 1944", 1944));
    CHECK(yearOf("T.H. & CO / ISSUED 1944", 1944) < yearOf("T.H. & CO / 1944", 1944));
    CHECK(yearOf("T.H. & CO / ISSUED 1931", 1941) < 0.01);  // made before it was issued
}

TEST_CASE("A word that leads is not taken for a maker", "[models][candidates]")
{
    const double plain = rank("HARSKELL / 1939").unknown_maker;
    for (const char* led : {"CONTRACT 1939", "REPAIRED 1939", "INSP 1939", "INSPECTED", "PATTERN",
                            "PROPERTY", "CONTRACT 4471"}) {
        CAPTURE(led);
        CHECK(rank(std::string("HARSKELL / ") + led).unknown_maker < plain + 0.1);
    }
}
