#include "models/candidates.h"

#include <algorithm>
#include <catch2/catch.hpp>

#include "tests/models/demo_ranking.h"

namespace {

models::CandidateOptions unknownPrior(double prior)
{
    models::CandidateOptions options;
    options.unknown_prior = prior;
    return options;
}

}  // namespace

TEST_CASE("All shares together are one, best first, with reasons", "[models][candidates]")
{
    for (const char* typed : {"", "T.H. & CO / 1941", "[- - -]", "ZXQWV", "1941", "H?. & (B|P).",
                              "[+ + +] / [.]W.C. / 3/4[.]", "{arrow} K", "[3..] LTD[- - -]"})
        for (const std::size_t most : {0U, 3U, 10U, 100U}) {
            CAPTURE(typed, most);
            const models::CandidateList list = rankItem({typed}, "", atMost(most));
            double sum = list.other_makers + list.unknown_maker;
            for (const models::Candidate& candidate : list.candidates) {
                sum += candidate.probability;
                CHECK_FALSE(candidate.reasons.empty());
                CHECK_FALSE(candidate.maker.empty());
            }
            CHECK(sum == Approx(1).margin(1e-6));
            CHECK(list.candidates.size() <= most);
            CHECK(std::is_sorted(list.candidates.begin(), list.candidates.end(),
                                 [](const auto& a, const auto& b) {
                                     return a.probability > b.probability + 1e-11;
                                 }));
        }
}

TEST_CASE("An empty reading gives the prior", "[models][candidates]")
{
    for (const auto& stamps : {std::vector<std::string>{}, {""}, {"", ""}}) {
        const models::CandidateList list = rankItem(stamps, "", all_makers);
        CHECK(list.unknown_maker == Approx(0.1).margin(1e-9));
        REQUIRE(list.candidates.size() == 30);
        for (const models::Candidate& candidate : list.candidates) {
            CHECK(candidate.probability == Approx(0.03).margin(1e-9));
            CHECK(candidate.years.empty());
            CHECK_FALSE(candidate.edtf);
        }
    }
}

TEST_CASE("A line of which nothing was read says next to nothing", "[models][candidates]")
{
    for (const char* typed : {"[- - -]", "[+ + +]", "[- - -] / [- - -]"}) {
        CAPTURE(typed);
        const models::CandidateList list = rankItem({typed}, "", all_makers);
        CHECK(list.unknown_maker == Approx(0.1).margin(0.01));
        for (const models::Candidate& candidate : list.candidates)
            CHECK(candidate.probability == Approx(0.03).epsilon(0.5));
    }
}

TEST_CASE("An exact mark with a fitting year gives its maker", "[models][candidates]")
{
    struct Case {
        const char *typed, *maker_id, *edtf;
    };
    for (const Case& one : {Case{"J.H. & CO / 1938", "hewlaby", "1938"},
                            Case{"TOBIAS HARSKELL & CO / 1922", "harskell", "1922"},
                            Case{"BRAMSOE WEBBING COMPANY 1929", "bramsoe", "1929"},
                            Case{"1943 / C.O. & L.", "crossenvale", nullptr},
                            Case{"S.H.W. / 6/51", "saltmere-works", "1951"},
                            Case{"{arrow} K / '52", "kestervane", "1952"}}) {
        CAPTURE(one.typed);
        const models::CandidateList list = rank(one.typed);
        CHECK(list.candidates.front().maker_id == one.maker_id);
        CHECK(list.candidates.front().probability > 0.9);
        if (one.edtf)
            CHECK(list.candidates.front().edtf == std::string(one.edtf));
    }
}

TEST_CASE("Every mark of the register leads to its maker", "[models][candidates]")
{
    for (const models::Mark& mark : demoRegister().marks) {
        CAPTURE(mark.text);
        CHECK(probabilityOf(rank(mark.text), mark.maker_id) > 0.8);
    }
}

TEST_CASE("A reading that fits nobody goes to the unknown maker", "[models][candidates]")
{
    for (const char* typed : {"K.W. & CO", "GRIMSVOLD & TARNE LTD / 1936", "OSTERBRANE"}) {
        CAPTURE(typed);
        CHECK(rank(typed).unknown_maker > 0.7);
    }
    // Y begins few names, and six makers sign so but for two letters.
    CHECK(rank("Y.Y. & CO").unknown_maker > 0.6);
    CHECK(rank("Y.Y. & CO / 1940").unknown_maker > 0.5);
}

TEST_CASE("A maker's place beside its mark is no unknown maker's mark", "[models][candidates]")
{
    for (const char* typed : {"T.H. CO / UMBERWICK 1932", "T.H. CO / UMBERWICK"}) {
        CAPTURE(typed);
        const models::CandidateList list = rank(typed);
        CHECK(probabilityOf(list, "thurrowby") > 0.9);
        CHECK(list.unknown_maker < 0.05);
    }
    // A place alone tells no maker.
    CHECK(rank("UMBERWICK 1932").candidates.front().probability < 0.3);
}

TEST_CASE("Crowded initials share what cannot be told apart", "[models][candidates]")
{
    const models::CandidateList list = rank("[.].H. & CO");
    for (const char* id : {"harskell", "hewlaby", "huxmoor", "holvane"}) {
        CAPTURE(id);
        CHECK(probabilityOf(list, id) > 0.04);
        CHECK(probabilityOf(list, id) < 0.6);
    }
    CHECK(hasReason(list.candidates.front(), "fit nearly as well"));

    const models::CandidateList dated = rank("[.].H. & CO / 1928");
    CHECK(probabilityOf(dated, "holvane") < 0.01);  // had not begun
    CHECK(probabilityOf(dated, "harskell") + probabilityOf(dated, "hewlaby") > 0.95);
}

TEST_CASE("One letter less never raises the certainty of the maker", "[models][candidates]")
{
    for (const char* typed : {"J.H. & CO", "TOBIAS HARSKELL & CO", "H. & B.", "KESTERLOW LTD"}) {
        const models::Reading whole = readingOf(typed);
        const models::CandidateList list = models::rankCandidates({{whole}, ""}, demoRegister());
        const std::string maker_id = list.candidates.front().maker_id;
        for (std::size_t i = 0; i < whole.lines[0].cells.size(); ++i) {
            if (whole.lines[0].cells[i].alternatives.front().text == " ")
                continue;
            models::Reading less = whole;
            less.lines[0].cells[i].state = models::CellState::Traces;
            less.lines[0].cells[i].alternatives.clear();
            CAPTURE(typed, i);
            const models::CandidateList now = models::rankCandidates({{less}, ""}, demoRegister());
            // One more may be a rounding's width: a full stop tells next to nothing.
            CHECK(probabilityOf(now, maker_id) <= list.candidates.front().probability + 1e-3);
        }
    }
}

TEST_CASE("A letter in doubt lies between the letter and nothing", "[models][candidates]")
{
    const double clear = probabilityOf(rank("J.H. & CO"), "hewlaby"),
                 doubtful = probabilityOf(rank("J?.H. & CO"), "hewlaby"),
                 traces = probabilityOf(rank("+.H. & CO"), "hewlaby"),
                 rival = probabilityOf(rank("(I|J).H. & CO"), "hewlaby");
    CHECK(clear > doubtful);
    CHECK(doubtful > traces);
    CHECK(doubtful > rival);
    CHECK(probabilityOf(rank("(I|J).H. & CO"), "holvane") > rival);
}

TEST_CASE("A register without makers leaves all to the unknown", "[models][candidates]")
{
    const models::CandidateList list = models::rankCandidates({{readingOf("A")}, ""}, {});
    CHECK(list.candidates.empty());
    CHECK(list.unknown_maker == 1);
    CHECK(list.other_makers == 0);
}

TEST_CASE("A maker without a registered mark stays possible", "[models][candidates]")
{
    models::MakerRegister known;
    known.makers.resize(2);
    known.makers[0].maker_id = "orrin";
    known.makers[0].name = "Orrin";
    known.makers[1].maker_id = "pelk";
    known.makers[1].name = "Pelk";
    models::Mark mark;
    mark.maker_id = "orrin";
    mark.text = "ORRIN";
    mark.line = readingOf("ORRIN").lines[0];
    known.marks = {mark};
    const models::CandidateList fits = models::rankCandidates({{readingOf("ORRIN")}, ""}, known);
    CHECK(probabilityOf(fits, "orrin") > 0.9);
    const models::CandidateList strange = models::rankCandidates({{readingOf("ZULWE")}, ""}, known);
    CHECK(probabilityOf(strange, "pelk") > probabilityOf(strange, "orrin"));
    CHECK(strange.unknown_maker > 0.05);
}

TEST_CASE("What cannot be ranked is refused", "[models][candidates]")
{
    CHECK_THROWS_AS(rankItem({"A"}, "no-such-type"), std::invalid_argument);
    CHECK_THROWS_AS(rankItem({"A"}, "", unknownPrior(0)), std::invalid_argument);
    CHECK_THROWS_AS(rankItem({"A"}, "", unknownPrior(1)), std::invalid_argument);
}
