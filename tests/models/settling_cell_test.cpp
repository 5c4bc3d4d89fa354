#include <catch2/catch.hpp>
#include <cmath>

#include "models/settling_words.h"
#include "tests/models/demo_ranking.h"

namespace {

models::CandidateList rankAsking(const std::vector<std::string>& stamps)
{
    models::CandidateOptions options;
    options.find_settling_cell = true;
    return rankItem(stamps, "", options);
}

}  // namespace

TEST_CASE("The initial that tells makers apart settles more than the letters they share",
          "[models][settling]")
{
    const auto settling = rankAsking({"[.].H. & [.]O"}).settling;
    REQUIRE(settling);
    CHECK(settling->stamp == 0);
    CHECK(settling->line == 0);
    CHECK(settling->cell == 0);
    CHECK(settling->bits > 0.5);
    REQUIRE_FALSE(settling->letters.empty());
    for (const models::LetterMeaning& letter : settling->letters) {
        CAPTURE(letter.letter);
        CHECK(letter.probability > 0);
        CHECK(letter.probability <= 1);
        if (letter.letter == "T")
            CHECK(letter.maker_id == "harskell");
        if (letter.letter == "J")
            CHECK(letter.maker_id == "hewlaby");
    }
}

TEST_CASE("Reading the settling cell gives the maker that was foretold", "[models][settling]")
{
    const auto before = rankAsking({"[.].H. & CO / 193[.]"});
    REQUIRE(before.settling);
    CHECK(before.settling->line == 0);
    for (const models::LetterMeaning& letter : before.settling->letters) {
        if (letter.maker_probability < 0.8 || letter.maker_id.empty())
            continue;
        CAPTURE(letter.letter);
        const auto after = rank(letter.letter + ".H. & CO / 193[.]");
        CHECK(after.candidates.front().maker_id == letter.maker_id);
        CHECK(after.candidates.front().probability ==
              Approx(letter.maker_probability).margin(0.15));
    }
}

TEST_CASE("A digit settles where it is the year that tells makers apart", "[models][settling]")
{
    // T.H. & CO is clear; P.P. & CO and R.P. & CO differ by their years too (1924 to 1938, 1938
    // on).
    const auto settling = rankAsking({"(P|R).P. & CO / 19[.]5"}).settling;
    REQUIRE(settling);
    CHECK(settling->line == 1);
    CHECK(settling->cell == 2);
}

TEST_CASE("Where nothing is unread, or nothing would tell, no cell is named", "[models][settling]")
{
    for (const char* typed : {"", "T.H. & CO", "T.H. & CO / 1938", "[- - -]", "[3..5]",
                              "TOBIAS HARSKELL & C[.] / 1922"}) {
        CAPTURE(typed);
        CHECK_FALSE(rankAsking({typed}).settling);
    }
    CHECK_FALSE(rank("[.].H. & CO").settling);  // not asked for
    CHECK_FALSE(rankAsking({}).settling);
}

TEST_CASE("The cell is named by its stamp, its line and its place", "[models][settling]")
{
    const auto settling = rankAsking({"S.H. 31", "M / [.].H. & CO"}).settling;
    REQUIRE(settling);
    CHECK(settling->stamp == 1);
    CHECK(settling->line == 1);
    CHECK(settling->cell == 0);
    CHECK(settling->typed == "[.].H. & CO");
    const models::SettlingWords words = models::settlingInWords(*settling);
    CHECK(words.where ==
          "look again at the 1st character of [.].H. & CO first: it would tell most of the maker");
    CHECK(words.meanings.front().find("would speak for") != std::string::npos);
}
