// What cannot be known is said as not known, whatever the reading.
#include <catch2/catch.hpp>
#include <cmath>

#include "models/typed_notation.h"
#include "tests/models/demo_ranking.h"

namespace {

void checkShares(const models::CandidateList& list)
{
    double sum = list.other_makers + list.unknown_maker;
    for (const models::Candidate& candidate : list.candidates) {
        CHECK(std::isfinite(candidate.probability));
        sum += candidate.probability;
    }
    CHECK(std::isfinite(list.unknown_maker));
    CHECK(sum == Approx(1).margin(1e-6));
}

// The demo's register with one more maker, who has this mark; an empty one: none.
models::MakerRegister withMaker(const std::string& mark_text)
{
    models::MakerRegister known = demoRegister();
    models::Maker maker;
    maker.maker_id = "one-more";
    maker.name = "One More";
    known.makers.push_back(maker);
    if (mark_text.empty())
        return known;
    models::Mark mark;
    mark.maker_id = maker.maker_id;
    mark.text = mark_text;
    mark.line = readingOf(mark_text).lines.front();
    known.marks.push_back(mark);
    return known;
}

}  // namespace

TEST_CASE("Lines of gaps alone leave the makers as they were", "[models][candidates]")
{
    const models::CandidateList prior = rankItem({}, "", all_makers);
    for (const char* typed : {"[- - -]", "[.]", "[......]", "[+ + +]", "[3..200]",
                              "[- - -] / [- - -] / [- - -]", "[.....] / [.]",
                              // A restored letter was not read, and a full stop is no letter.
                              "[HARSKELL]", "[HARSKELL] / [.]", "."}) {
        CAPTURE(typed);
        const models::CandidateList list = rankItem({typed}, "", all_makers);
        checkShares(list);
        CHECK(list.unknown_maker == Approx(prior.unknown_maker).margin(0.02));
        for (const models::Candidate& candidate : list.candidates)
            CHECK(candidate.probability ==
                  Approx(probabilityOf(prior, candidate.maker_id)).margin(0.01));
    }
}

TEST_CASE("Two hundred cells are ranked like any others", "[models][candidates]")
{
    const std::string long_text(200, 'A'), gaps = "[.]";
    std::string lost, mixed;
    for (int i = 0; i < 200; ++i) {
        lost += gaps;
        mixed += i % 3 == 0 ? "H?" : i % 3 == 1 ? "+" : "(0|O)";
    }
    for (const std::string& typed :
         {long_text, lost, mixed, "T.H. & CO " + long_text, long_text + " / " + long_text}) {
        CAPTURE(typed.substr(0, 20));
        checkShares(rank(typed));
    }
    std::vector<std::string> many(12, long_text);
    std::string lines = long_text;
    for (int i = 1; i < 12; ++i)
        lines += " / " + long_text;
    checkShares(rank(lines));
    checkShares(rankItem(many));
    CHECK(rank(long_text).unknown_maker > rankItem({}).unknown_maker - 0.05);
}

TEST_CASE("A maker without marks says so, and is never more likely than an unknown one",
          "[models][candidates]")
{
    const models::MakerRegister known = withMaker("");
    models::CandidateOptions options = all_makers;
    options.most = 100;
    for (const char* typed : {"T.H. & CO", "OSTERBRANE", "1938"}) {
        CAPTURE(typed);
        const models::CandidateList list =
            models::rankCandidates({{readingOf(typed)}, ""}, known, options);
        checkShares(list);
        CHECK(probabilityOf(list, "one-more") <= list.unknown_maker);
        for (const models::Candidate& candidate : list.candidates)
            if (candidate.maker_id == "one-more") {
                CHECK(candidate.mark.empty());
                CHECK(hasReason(candidate, "no mark of this maker"));
            }
    }
}

TEST_CASE("A mark of one letter is found where that letter stands, and hardly elsewhere",
          "[models][candidates]")
{
    const models::MakerRegister known = withMaker("V");
    const auto of = [&](const std::string& typed) {
        const models::CandidateList list =
            models::rankCandidates({{readingOf(typed)}, ""}, known, all_makers);
        checkShares(list);
        return probabilityOf(list, "one-more");
    };
    const double before = 0.9 / 31;
    CHECK(of("V") > 5 * before);
    CHECK(of("M") < 2 * before);
    CHECK(of("+") == Approx(before).margin(0.01));
    CHECK(of("VALLOWMERE CANVAS WORKS") < 0.01);
    CHECK(of("V") < 0.99);  // one letter is little
}
