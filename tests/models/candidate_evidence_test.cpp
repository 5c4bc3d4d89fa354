#include <algorithm>
#include <catch2/catch.hpp>
#include <map>
#include <numeric>

#include "models/edtf.h"
#include "tests/models/demo_ranking.h"

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

TEST_CASE("A year struck over another leaves both", "[models][candidates]")
{
    const models::Candidate first =
        rank("J. HEWLABY & CO 193{erased}8{erased}4{over}0{over}").candidates.front();
    CHECK(first.maker_id == "hewlaby");
    REQUIRE(first.years.size() >= 2);
    CHECK(first.years[0].probability + first.years[1].probability > 0.9);
    const auto [earlier, later] = std::minmax({first.years[0].year, first.years[1].year});
    CHECK(earlier == 1938);
    CHECK(later == 1940);
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
          "the letters J.H. & C? fit the mark J.H. & CO (known 1927 to 1946): for it, 29 times");
    CHECK(hasReason(first, "the year 1938 lies within the maker's years (1924 to 1946)"));

    const models::CandidateList late = rank("J. HEWLABY & CO / 1955");
    CHECK(hasReason(late.candidates.front(), "the year 1955 lies outside the maker's years"));
    CHECK(hasReason(late.candidates.front(), "is known only 1930 to 1946"));
}

TEST_CASE("A letter that a mark has not is told against it", "[models][candidates]")
{
    const models::CandidateList list = rank("J.H. & CO / 1938");
    const auto holvane = std::find_if(list.candidates.begin(), list.candidates.end(),
                                      [](const auto& one) { return one.maker_id == "holvane"; });
    REQUIRE(holvane != list.candidates.end());
    CHECK(hasReason(*holvane, "the letters J.H. & CO fit others better than the mark I.H. & CO"));
    CHECK(hasReason(*holvane, "one other maker's mark fits better: J.H. & CO"));
    CHECK(hasReason(*holvane, ": against it, "));
}

TEST_CASE("What is said of years is what was read and what the register states",
          "[models][candidates]")
{
    const models::Candidate open = rank("HUXMOOR / 1965").candidates.front();
    CHECK(hasReason(open, "the year 1965 lies within the maker's years (from 1929)"));

    const models::Candidate two = rank("T.H. & CO / 1938 / 1951").candidates.front();
    CHECK(hasReason(two, "the years 1938 or 1951 (the dates disagree) lie outside"));

    for (const char* year : {"1999", "1890"}) {
        CAPTURE(year);
        const models::Candidate beyond =
            rank(std::string("T.H. & CO / ") + year).candidates.front();
        CHECK(beyond.maker_id == "harskell");
        CHECK(beyond.years.empty());
        CHECK(hasReason(beyond, std::string("the year ") + year + " was read, which lies beyond"));
    }

    // An inspector's number that might be a year is no year to speak of.
    for (const models::Candidate& one : rank("S.H. 12").candidates)
        CHECK_FALSE(hasReason(one, "1912"));
}

TEST_CASE("A letter of another script is nobody's of the register", "[models][candidates]")
{
    for (const char* typed : {"\u0414.\u0416. & CO", "\u0414.\u0416. LTD", "\u00C9.\u0416. & CO"}) {
        CAPTURE(typed);
        const models::CandidateList list = rank(typed);
        CHECK(list.unknown_maker > 0.3);
    }
}

TEST_CASE("A cell that would change nothing is not told to settle anything", "[models][candidates]")
{
    models::CandidateOptions options;
    options.find_settling_cell = true;
    CHECK_FALSE(rankItem({"T.H. & C? / 19[.]1"}, "", options).settling);
    CHECK(rankItem({"[.].H. & CO / 1938"}, "", options).settling);
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
    CHECK(probabilityOf(models::rankCandidates({{reading}, ""}, demoRegister()), "hewlaby") > 0.9);
}

TEST_CASE("A code that stands for a year dates what stands beside it", "[models][candidates]")
{
    // codes.csv of the demo register: YB stands for 1942.
    for (const char* typed : {"T.H. & CO / YB", "T.H. & CO YB", "YB / T.H. & CO / M"}) {
        CAPTURE(typed);
        const models::CandidateList list = rank(typed);
        CHECK(list.candidates.at(0).maker_id == "harskell");
        CHECK(list.candidates.at(0).edtf == "1942");
    }
    const models::CandidateList faint = rank("T.H. & CO / Y(B|D)");
    CHECK(faint.candidates.at(0).years.at(0).year == 1942);
    CHECK(faint.candidates.at(0).years.at(1).year == 1944);
    CHECK(faint.candidates.at(0).years.at(2).probability < 0.02);
    CHECK(rank("T.H. & CO / RUYBAK").candidates.at(0).years.empty());
}

TEST_CASE("A date says of the making what the word before it lets it say", "[models][candidates]")
{
    const auto yearsOf = [](const std::string& typed) {
        const models::CandidateList list = rank(typed);
        REQUIRE_FALSE(list.candidates.empty());
        std::map<int, double> years;
        for (const models::YearShare& share : list.candidates.front().years)
            years[share.year] += share.probability;
        return years;
    };
    auto pattern = yearsOf("T.H. & CO / PATTERN 1931 / 1942");
    CHECK(pattern[1942] > 0.7);
    auto plain = yearsOf("T.H. & CO / 1944"), inspected = yearsOf("T.H. & CO / INSP 1944");
    CHECK(plain[1944] > 0.9);
    double before = 0;  // made not after
    for (int year = 1938; year <= 1944; ++year)
        before += inspected[year];
    CHECK(before > 0.9);
    CHECK(inspected[1944] < plain[1944]);
    auto contract = yearsOf("T.H. & CO / CONTRACT 1938");
    double behind = 0;  // made not before
    for (int year = 1938; year <= 1943; ++year)
        behind += contract[year];
    CHECK(behind > 0.9);
    CHECK(contract[1939] > inspected[1945]);
}

TEST_CASE("Letters of another script fit no mark of the register", "[models][candidates]")
{
    for (const char* typed : {"\u65E5\u672C", "\u0414\u0416", "\u00C9"}) {
        CAPTURE(typed);
        for (const models::Candidate& candidate : rank(typed).candidates)
            CHECK_FALSE(hasReason(candidate, "fit the mark"));
    }
}
