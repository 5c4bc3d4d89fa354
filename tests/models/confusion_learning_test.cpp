#include "models/confusion_learning.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "models/letters.h"
#include "models/typed_notation.h"
#include "tests/models/demo_ranking.h"

namespace {

const std::string person = "Ada Quell";

models::Reading seenByEngine(const std::string& typed)
{
    models::Reading reading;
    reading.reader = "line-reader";
    reading.lines = models::parseTyped(typed).lines;
    for (models::Line& line : reading.lines)
        for (models::Cell& cell : line.cells)
            cell.by = "line-reader";
    return reading;
}

// The engine's reading with one cell typed over, before any maker was in view.
models::Reading typedOver(models::Reading reading, std::size_t cell, const std::string& letter)
{
    reading.reader = person;
    reading.candidates_were_shown = false;
    reading.lines[0].cells[cell] = models::clearCell(letter);
    reading.lines[0].cells[cell].by = person;
    return reading;
}

// A reading that a person typed throughout, before any maker was in view.
models::Reading typedWhole(const std::string& typed)
{
    models::Reading reading = seenByEngine(typed);
    reading.reader = person;
    reading.candidates_were_shown = false;
    for (models::Line& line : reading.lines)
        for (models::Cell& cell : line.cells)
            cell.by = person;
    return reading;
}

// What was taught but that letters are what they look like.
std::vector<models::TaughtLetter> misread(const models::Reading& engine,
                                          const models::Reading& persons)
{
    std::vector<models::TaughtLetter> taught = models::lettersTaught(engine, persons);
    const auto isRight = [](const models::TaughtLetter& letter) {
        return letter.truth == letter.seen;
    };
    taught.erase(std::remove_if(taught.begin(), taught.end(), isRight), taught.end());
    return taught;
}

std::vector<models::TaughtLetter> tenTimes(const std::string& truth, const std::string& seen)
{
    return std::vector<models::TaughtLetter>(10, models::TaughtLetter{truth, seen});
}

models::CandidateList rankTaught(const std::string& typed,
                                 const std::vector<models::TaughtLetter>& letters)
{
    models::ReadingErrors taught;
    taught.confusions = models::learnConfusions(letters);
    return models::CandidateRanker(demoRegister(), taught)
        .rank({{readingOf(typed)}, ""}, all_makers);
}

// The most that any maker's share differs, the unknown maker's too.
double greatestMove(const models::CandidateList& before, const models::CandidateList& after)
{
    double move = std::abs(after.unknown_maker - before.unknown_maker);
    for (const models::Candidate& candidate : before.candidates)
        move = std::max(move,
                        std::abs(probabilityOf(after, candidate.maker_id) - candidate.probability));
    return move;
}

}  // namespace

TEST_CASE("A letter typed over teaches, one left as it was does not", "[models][confusion]")
{
    const models::Reading engine = seenByEngine("P.H. & CO");
    const auto taught = models::lettersTaught(engine, typedOver(engine, 0, "R"));
    CHECK(taught == std::vector<models::TaughtLetter>{{"R", "P"}});
    models::Reading accepted = engine;
    accepted.reader = person;
    accepted.candidates_were_shown = false;
    CHECK(models::lettersTaught(engine, accepted).empty());
}

TEST_CASE("Nothing is learnt with makers in view, or where that is not recorded",
          "[models][confusion]")
{
    const models::Reading engine = seenByEngine("P.H. & CO");
    models::Reading reading = typedOver(engine, 0, "R");
    reading.candidates_were_shown = true;
    CHECK(models::lettersTaught(engine, reading).empty());
    reading.candidates_were_shown.reset();
    CHECK(models::lettersTaught(engine, reading).empty());
}

TEST_CASE("Unsure, lost and restored cells teach nothing", "[models][confusion]")
{
    const models::Reading engine = seenByEngine("P.H. & CO");
    for (const models::CellState state :
         {models::CellState::Doubtful, models::CellState::Restored, models::CellState::Lost}) {
        models::Reading reading = typedOver(engine, 0, "R");
        reading.lines[0].cells[0].state = state;
        CHECK(models::lettersTaught(engine, reading).empty());
    }
    CHECK(models::lettersTaught(seenByEngine("[.].H. & CO"), typedOver(engine, 0, "R")).empty());
}

TEST_CASE("A letter that the engine missed does not shift what the others teach",
          "[models][confusion]")
{
    const models::Reading engine = seenByEngine("HARSKFLL");
    models::Reading reading = typedOver(engine, 5, "E");
    models::Cell missed = models::clearCell("S");
    missed.by = person;
    auto& cells = reading.lines[0].cells;
    cells.insert(cells.begin() + 3, missed);
    CHECK(models::lettersTaught(engine, reading) == std::vector<models::TaughtLetter>{{"E", "F"}});
}

TEST_CASE("A line that the engine missed does not shift what the others teach",
          "[models][confusion]")
{
    const models::Reading date = seenByEngine("1938");
    CHECK(models::lettersTaught(date, typedWhole("T.H. & CO")).empty());
    CHECK(misread(date, typedWhole("T.H. & CO / 1938")).empty());
    CHECK(misread(date, typedWhole("T.H. & CO / S. 12 / 1933")) ==
          std::vector<models::TaughtLetter>{{"3", "8"}});
    CHECK(misread(seenByEngine("P.H. & CO / S. 12 / 1938"), typedWhole("R.H. & CO / 1938")) ==
          std::vector<models::TaughtLetter>{{"R", "P"}});
    CHECK(misread(seenByEngine("J.H. 3"), typedWhole("T.R. 9")).empty());  // only dots agree
    CHECK(misread(seenByEngine("tarow"), typedWhole("TAROW")).size() == 5);
}

TEST_CASE("Lines with boxes teach where they stand in one place", "[models][confusion]")
{
    models::Reading engine = seenByEngine("J / 1938");
    engine.lines[0].box_px = {0, 0, 20, 30};
    engine.lines[1].box_px = {0, 40, 80, 30};
    models::Reading persons = typedWhole("T / 1938");
    persons.lines[0].box_px = {2, 3, 18, 28};
    persons.lines[1].box_px = engine.lines[1].box_px;
    CHECK(misread(engine, persons) == std::vector<models::TaughtLetter>{{"T", "J"}});

    SECTION("not in another row")
    {
        persons.lines[0].box_px.y = 20;
        CHECK(misread(engine, persons).empty());
    }
    SECTION("nor side by side")
    {
        persons.lines[0].box_px.x = 25;
        CHECK(misread(engine, persons).empty());
    }
    SECTION("nor another text in the place of one that was taken out")
    {
        persons.lines[0].cells = typedWhole("S. 12").lines[0].cells;
        CHECK(misread(engine, persons).empty());
    }
    SECTION("a line without a box is found by its letters")
    {
        persons = typedWhole("T.H. & CO / 1933");
        CHECK(misread(engine, persons) == std::vector<models::TaughtLetter>{{"3", "8"}});
    }
}

TEST_CASE("Nothing taught leaves the table, ten corrections hardly move it, a thousand do",
          "[models][confusion]")
{
    const models::ConfusionTable& start = models::ConfusionTable::published();
    const auto letters = models::charactersOf("ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789&/.- ");
    const models::ConfusionTable none = models::learnConfusions({});
    const models::ConfusionTable ten = models::learnConfusions(tenTimes("H", "W"));
    for (const std::string& truth : letters)
        for (const std::string& seen : letters) {
            CAPTURE(truth, seen);
            CHECK(none.probability(truth, seen) == start.probability(truth, seen));
            CHECK(std::abs(ten.probability(truth, seen) - start.probability(truth, seen)) <= 0.011);
        }
    CHECK(ten.probability("H", "W") > start.probability("H", "W"));
    CHECK(ten.probability("H", "W") < start.probability("B", "P"));
    std::vector<models::TaughtLetter> many(1000, {"H", "W"});
    CHECK(models::learnConfusions(many).probability("H", "W") > start.probability("B", "P"));
    std::vector<models::TaughtLetter> listed(1000, {"B", "P"});
    CHECK(models::learnConfusions(listed).probability("B", "P") == Approx(0.511));
}

TEST_CASE("Ten corrections at most double a share, however rare it was", "[models][confusion]")
{
    const models::ConfusionTable& start = models::ConfusionTable::published();
    for (const auto& [truth, seen] : std::vector<std::pair<std::string, std::string>>{
             {"T", "W"}, {"H", "h"}, {"R", "P"}, {"T", "7"}, {"&", "+"}}) {
        CAPTURE(truth, seen);
        const double before = start.probability(truth, seen);
        const double after =
            models::learnConfusions(tenTimes(truth, seen)).probability(truth, seen);
        CHECK(after > 1.2 * before);
        CHECK(after <= 2 * before);
    }
}

TEST_CASE("Ten corrections do not upset who made a mark", "[models][confusion]")
{
    for (const char* typed :
         {"W.H. & CO", "W.H. & CO / 1928", "K.H. & CO", "T.H. & CO", "R.H. & CO", "M.H. & CO",
          "J.H. & CO", "K9", "W7", "[.].H. & CO / 1928", "J. HEWLABY & CO"}) {
        const models::CandidateList before = rankTaught(typed, {});
        const models::Candidate &first = before.candidates.at(0), &next = before.candidates.at(1);
        for (const auto& [truth, seen] : std::vector<std::pair<std::string, std::string>>{
                 {"T", "W"}, {"J", "K"}, {"T", "R"}, {"M", "K"}, {"K", "W"}, {"T", "J"}}) {
            CAPTURE(typed, truth, seen);
            const models::CandidateList after = rankTaught(typed, tenTimes(truth, seen));
            CHECK(greatestMove(before, after) <= 0.1);
            if (first.probability - next.probability > 0.1)
                CHECK(after.candidates.front().maker_id == first.maker_id);
        }
    }
}

TEST_CASE("Hundreds of corrections teach who made a mark", "[models][confusion]")
{
    const std::vector<models::TaughtLetter> many(300, {"T", "W"});
    CHECK(models::learnConfusions(many).probability("T", "W") >
          30 * models::ConfusionTable::published().probability("T", "W"));
    const models::CandidateList before = rankTaught("W.H. & CO", {});
    const models::CandidateList after = rankTaught("W.H. & CO", many);
    CHECK(after.candidates.front().maker_id == "harskell");  // whose mark is T.H. & CO
    CHECK(after.candidates.front().probability > probabilityOf(before, "harskell") + 0.3);
}

TEST_CASE("However much is taught, what is seen for a letter sums to at most one",
          "[models][confusion]")
{
    std::vector<models::TaughtLetter> taught;
    for (const char* seen : {"0", "Q", "D", "C", "G", "X"})
        taught.insert(taught.end(), 5000, {"O", seen});
    const models::ConfusionTable table = models::learnConfusions(taught);
    double sum = 0;
    for (const std::string& seen :
         models::charactersOf("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789"))
        sum += table.probability("O", seen);
    CHECK(sum <= 1 + 1e-9);
    CHECK(table.probability("O", "O") > 0);
}

TEST_CASE("Changes are told with their counts, the most frequent first", "[models][confusion]")
{
    std::vector<models::TaughtLetter> taught = tenTimes("R", "P");
    taught.push_back({"E", "F"});
    taught.push_back({"E", "E"});
    const auto changes = models::confusionChanges(taught);
    REQUIRE(changes.size() == 2);
    CHECK(changes[0].truth == "R");
    CHECK(changes[0].seen == "P");
    CHECK(changes[0].count == 10);
    CHECK(changes[0].learnt > changes[0].start);
    CHECK(changes[1].count == 1);
}
