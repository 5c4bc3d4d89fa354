#include "models/candidates.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <numeric>

#include "models/edtf.h"
#include "models/typed_notation.h"

namespace {

const models::MakerRegister& demo()
{
    static const models::MakerRegister known =
        models::loadRegister(std::filesystem::path(WEFTMARK_SOURCE_DIR) / "models/register");
    return known;
}

models::Reading readingOf(const std::string& typed)
{
    const models::ParsedNotation parsed = models::parseTyped(typed);
    REQUIRE_FALSE(parsed.fault);
    models::Reading reading;
    reading.lines = parsed.lines;
    return reading;
}

models::CandidateList rankItem(const std::vector<std::string>& stamps, const std::string& type = "",
                               const models::CandidateOptions& options = {})
{
    models::ItemEvidence evidence;
    evidence.type_id = type;
    for (const std::string& typed : stamps)
        evidence.stamps.push_back(readingOf(typed));
    return models::rankCandidates(evidence, demo(), options);
}

models::CandidateList rank(const std::string& typed)
{
    return rankItem({typed});
}

double probabilityOf(const models::CandidateList& list, const std::string& maker_id)
{
    for (const models::Candidate& candidate : list.candidates)
        if (candidate.maker_id == maker_id)
            return candidate.probability;
    return 0;
}

bool hasReason(const models::Candidate& candidate, const std::string& part)
{
    return std::any_of(
        candidate.reasons.begin(), candidate.reasons.end(),
        [&](const std::string& reason) { return reason.find(part) != std::string::npos; });
}

models::CandidateOptions atMost(std::size_t most)
{
    models::CandidateOptions options;
    options.most = most;
    return options;
}

models::CandidateOptions unknownPrior(double prior)
{
    models::CandidateOptions options;
    options.unknown_prior = prior;
    return options;
}

const models::CandidateOptions all_makers = atMost(100);

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
            CHECK(std::is_sorted(
                list.candidates.begin(), list.candidates.end(),
                [](const auto& a, const auto& b) { return a.probability > b.probability; }));
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
    for (const models::Mark& mark : demo().marks) {
        CAPTURE(mark.text);
        CHECK(probabilityOf(rank(mark.text), mark.maker_id) > 0.8);
    }
}

TEST_CASE("A reading that fits nobody goes to the unknown maker", "[models][candidates]")
{
    for (const char* typed :
         {"K.W. & CO", "GRIMSVOLD & TARNE LTD / 1936", "OSTERBRANE", "Y.Y. & CO / 1940"}) {
        CAPTURE(typed);
        CHECK(rank(typed).unknown_maker > 0.7);
    }
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
        const models::CandidateList list = models::rankCandidates({{whole}, ""}, demo());
        const std::string maker_id = list.candidates.front().maker_id;
        for (std::size_t i = 0; i < whole.lines[0].cells.size(); ++i) {
            if (whole.lines[0].cells[i].alternatives.front().text == " ")
                continue;
            models::Reading less = whole;
            less.lines[0].cells[i].state = models::CellState::Traces;
            less.lines[0].cells[i].alternatives.clear();
            CAPTURE(typed, i);
            const models::CandidateList now = models::rankCandidates({{less}, ""}, demo());
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

TEST_CASE("A mark stands in any line, among other lines, or over two", "[models][candidates]")
{
    for (const char* typed :
         {"J. HEWLABY & CO / 1938 / M", "M / J. HEWLABY & CO / 1938", "J. HEWLABY & CO 1938 / M",
          "1938 J. HEWLABY & CO", "J. HEWLABY / & CO / 1938", "SIZE 3 J. HEWLABY & CO",
          "J HEWLABY AND COMPANY / 38"}) {
        CAPTURE(typed);
        CHECK(probabilityOf(rank(typed), "hewlaby") > 0.9);
    }
}

TEST_CASE("A mark over two lines fits better than its first line alone", "[models][candidates]")
{
    CHECK(rank("QUILLSBY / BROTHERS").unknown_maker <
          0.1 * rank("QUILLSBY / TARBEMOS").unknown_maker);
    CHECK(probabilityOf(rank("P.P. / & CO"), "pellarby-p") > 0.95);
    CHECK(probabilityOf(rank("C.O. / & L."), "crossenvale") > 0.95);
}

TEST_CASE("Spellings of one word are one mark", "[models][candidates]")
{
    CHECK(probabilityOf(rank("E. QUILLSBY LIMITED"), "quillsby") > 0.9);
    CHECK(probabilityOf(rank("QUILLSBY BROTHERS"), "quillsby-bros") > 0.9);
    CHECK(probabilityOf(rank("HARSKELL AND SONS LTD"), "harskell-sons") > 0.9);
    CHECK(probabilityOf(rank("KESTERLOW LIMITED"), "kesterlow") > 0.9);
    CHECK(probabilityOf(rank("T H & CO"), "harskell") > 0.8);
    CHECK(probabilityOf(rank("E2"), "ebberquist") > 0.9);  // a maker's code in codes.csv
}

TEST_CASE("A text cut off at a hem still names its maker", "[models][candidates]")
{
    CHECK(probabilityOf(rank("[- - -]RROWBY HIDE CO"), "thurrowby") > 0.9);
    CHECK(probabilityOf(rank("HOLLIMARSH & BR[- - -]"), "hollimarsh") > 0.9);
    CHECK(probabilityOf(rank("HOLLIMARSH & BR{cut}"), "hollimarsh") > 0.9);
    CHECK(probabilityOf(rank("{cut}BY HIDE CO"), "thurrowby") > 0.9);
    CHECK(probabilityOf(rank("|BY HIDE CO"), "thurrowby") < 0.1);
    // Where the line is whole, the letters that are missing speak against it.
    CHECK(probabilityOf(rank("|HARSK|"), "harskell") <
          probabilityOf(rank("HARSK[- - -]"), "harskell") +
              probabilityOf(rank("HARSK[- - -]"), "harskell-sons"));
}

TEST_CASE("Several stamps of an item join, and an inspector's does not kill the maker's",
          "[models][candidates]")
{
    const std::string mark = "T.H. & CO / 193[.]";
    const double alone = probabilityOf(rank(mark), "harskell");
    CHECK(alone > 0.9);
    CHECK(probabilityOf(rankItem({mark, "S.H. 31"}), "harskell") > 0.9);
    CHECK(probabilityOf(rankItem({mark, "M"}), "harskell") > 0.9);
    CHECK(probabilityOf(rankItem({mark, "4021 / VIEWED"}), "harskell") > 0.8);

    // Two faint stamps say more than one.
    const std::string faint = "J?.[.]. & C+";
    CHECK(probabilityOf(rankItem({faint, faint}), "hewlaby") >
          probabilityOf(rank(faint), "hewlaby"));
    // A date on one and a mark on the other belong to one item.
    CHECK(probabilityOf(rankItem({"[.].H. & CO", "1928"}), "holvane") < 0.01);
}

TEST_CASE("The item type's years weigh", "[models][candidates]")
{
    const double untyped = probabilityOf(rankItem({"T.[.]. & CO"}, "", all_makers), "brundlow");
    const double early =
        probabilityOf(rankItem({"T.[.]. & CO"}, "line-satchel", all_makers), "brundlow");
    const double late =
        probabilityOf(rankItem({"T.[.]. & CO"}, "belt-1937", all_makers), "brundlow");
    CHECK(late < 0.5 * untyped);
    CHECK(late < early);
    const models::CandidateList prior = rankItem({}, "belt-1937", all_makers);
    CHECK(prior.unknown_maker == Approx(0.1).margin(1e-6));
    CHECK(probabilityOf(prior, "wrenmarsh") > 5 * probabilityOf(prior, "brundlow"));
    CHECK(hasReason(prior.candidates.front(), "suit the item type Body belt"));
}

TEST_CASE("The archive's counts weigh, and say so", "[models][candidates]")
{
    models::CandidateOptions options;
    options.archive_counts = {{"holvane", 30}};
    const models::CandidateList list = rankItem({"[.].H. & CO"}, "", options);
    CHECK(probabilityOf(list, "holvane") > 0.9);
    CHECK(hasReason(list.candidates.front(), "the archive holds 30 items of this maker"));
}

TEST_CASE("Reasons name the letters, the mark and the years", "[models][candidates]")
{
    const models::CandidateList list = rank("J.H. & C? / 1938");
    const models::Candidate& first = list.candidates.front();
    REQUIRE(first.maker_id == "hewlaby");
    CHECK(first.mark == "J.H. & CO");
    CHECK(first.reasons.front() ==
          "the letters J.H. & C? fit the mark J.H. & CO (known 1927 to 1946)");
    CHECK(hasReason(first, "the year 1938 lies within the maker's years (1924 to 1946)"));

    const models::CandidateList late = rank("J. HEWLABY & CO / 1955");
    CHECK(hasReason(late.candidates.front(), "the year 1955 lies outside the maker's years"));
    CHECK(hasReason(late.candidates.front(), "is known only 1930 to 1946"));
}

TEST_CASE("Years are the maker's, and the set holds most of them", "[models][candidates]")
{
    const models::CandidateList list = rank("J.H. & CO / 193[.]");
    const models::Candidate& first = list.candidates.front();
    REQUIRE(first.edtf);
    REQUIRE(first.years.size() == 10);
    CHECK(first.edtf == std::string("193X"));
    const double sum = std::accumulate(
        first.years.begin(), first.years.end(), 0.0,
        [](double all, const models::YearShare& year) { return all + year.probability; });
    CHECK(sum > 0.9);
    CHECK(sum <= 1 + 1e-9);

    const models::CandidateList begun = rank("I.H. & CO / 193[.]");
    const auto bounds = models::edtfYearBounds(*begun.candidates.front().edtf);
    REQUIRE(bounds);
    CHECK(*bounds->first >= 1934);  // that maker began in 1936
}

TEST_CASE("Noise beside a mark does not drown it", "[models][candidates]")
{
    models::Reading reading = readingOf("J.H. & CO / XQ7VLW / 1938");
    for (models::Cell& cell : reading.lines[1].cells) {
        cell.state = models::CellState::Doubtful;
        cell.alternatives.front().certainty = 0.3;
    }
    CHECK(probabilityOf(models::rankCandidates({{reading}, ""}, demo()), "hewlaby") > 0.9);
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
    known.makers[0].maker_id = "a";
    known.makers[0].name = "Orrin";
    known.makers[1].maker_id = "b";
    known.makers[1].name = "Pelk";
    models::Mark mark;
    mark.maker_id = "a";
    mark.text = "ORRIN";
    mark.line = readingOf("ORRIN").lines[0];
    known.marks = {mark};
    const models::CandidateList fits = models::rankCandidates({{readingOf("ORRIN")}, ""}, known);
    CHECK(probabilityOf(fits, "a") > 0.9);
    const models::CandidateList strange = models::rankCandidates({{readingOf("ZULWE")}, ""}, known);
    CHECK(probabilityOf(strange, "b") > probabilityOf(strange, "a"));
    CHECK(strange.unknown_maker > 0.05);
}

TEST_CASE("What cannot be ranked is refused", "[models][candidates]")
{
    CHECK_THROWS_AS(rankItem({"A"}, "no-such-type"), std::invalid_argument);
    CHECK_THROWS_AS(rankItem({"A"}, "", unknownPrior(0)), std::invalid_argument);
    CHECK_THROWS_AS(rankItem({"A"}, "", unknownPrior(1)), std::invalid_argument);
}
