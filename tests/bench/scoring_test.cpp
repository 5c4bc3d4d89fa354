#include "tests/bench/scoring.h"

#include <catch2/catch.hpp>

namespace {

vision::Quad box(float x, float y, float width, float height)
{
    return {{{x, y}, {x + width, y}, {x + width, y + height}, {x, y + height}}};
}

// A line of clear cells, each of the same certainty, and the line's own.
bench::ReadLine readLine(const std::string& text, const vision::Quad& corners, double certainty)
{
    bench::ReadLine read{{}, corners};
    for (const char c : text) {
        read.line.cells.push_back(models::clearCell(std::string(1, c)));
        read.line.cells.back().alternatives.front().certainty = certainty;
    }
    read.line.certainty = certainty;
    return read;
}

bench::Picture twoLines()
{
    bench::Picture picture;
    picture.lines = {{"A.B. & Co", box(0, 0, 100, 20)}, {"1940", box(0, 30, 60, 20)}};
    return picture;
}

}  // namespace

TEST_CASE("A line is right where it stands, and there only", "[bench][scoring]")
{
    const bench::Picture picture = twoLines();
    bench::ReadPicture read;
    read.lines = {readLine("1940", box(2, 31, 55, 17), 0.8),
                  readLine("a.b.  & CO", box(200, 0, 100, 20), 0.8)};
    const bench::Score score = bench::scoreOf({picture}, {read});
    CHECK(score.lines == 2);
    CHECK(score.exact == 1);
    CHECK(score.false_lines == 1);       // the right text, but in a place where nothing stands
    CHECK(score.characters.edits == 4);  // A, B, C, O
    CHECK(score.characters.reference == 8);
    read.lines[1].corners = box(0, 0, 100, 20);
    CHECK(bench::scoreOf({picture}, {read}).exact == 2);
}

TEST_CASE("Of lines in one place the text that fits best is taken, the others are false",
          "[bench][scoring]")
{
    const bench::Picture picture = twoLines();
    bench::ReadPicture read;
    read.lines = {readLine("IQ4O", box(0, 30, 60, 20), 0.95),
                  readLine("1946", box(0, 30, 55, 18), 0.5)};
    const auto verdicts = bench::judge(picture, read);
    REQUIRE(verdicts.size() == 3);
    CHECK_FALSE(verdicts[0].read);
    CHECK(verdicts[1].read == 1U);
    CHECK_FALSE(verdicts[1].right);
    CHECK_FALSE(verdicts[2].truth);
    CHECK(verdicts[2].read == 0U);
}

TEST_CASE("An outline is the place of all its lines", "[bench][scoring]")
{
    bench::Picture picture = twoLines();
    for (bench::LabelledLine& line : picture.lines)
        line.corners = box(0, 0, 110, 60);
    bench::ReadPicture read;
    read.lines = {readLine("1940", box(0, 30, 60, 20), 0.9),
                  readLine("A.B. & CO", box(0, 0, 100, 20), 0.9)};
    const bench::Score score = bench::scoreOf({picture}, {read});
    CHECK(score.exact == 2);
    CHECK(score.false_lines == 0);
    CHECK(score.misled == 0);
}

TEST_CASE("Cells are judged against the letters they stand for", "[bench][scoring]")
{
    const bench::Picture picture = twoLines();
    bench::ReadPicture read;
    read.lines = {readLine("19A0", box(0, 30, 60, 20), 0.95),
                  readLine("X-", box(300, 300, 20, 20), 0.92)};
    read.lines[0].line.cells[3].state = models::CellState::Traces;  // read as nothing
    const bench::Score score = bench::scoreOf({picture}, {read});
    REQUIRE(score.judged_cells.size() == 4);  // 1, 9, A and X; a sign is no cell
    CHECK(metrics::wrongButSurePer100(score.judged_cells).value() == Approx(50));
    REQUIRE(score.judged_lines.size() == 2);
    CHECK_FALSE(score.judged_lines[0].right);
}

TEST_CASE("Where not all is labelled, text elsewhere is neither right nor wrong",
          "[bench][scoring]")
{
    bench::Picture picture = twoLines();
    picture.all_labelled = false;
    bench::ReadPicture read;
    read.lines = {readLine("BEST", box(300, 300, 60, 20), 0.95),
                  readLine("19", box(0, 30, 30, 20), 0.5),
                  readLine("1940", box(0, 30, 60, 20), 0.9)};
    const bench::Score score = bench::scoreOf({picture}, {read});
    CHECK(score.false_lines == 1);  // the second reading of one place
    CHECK(score.judged_lines.size() == 2);
    CHECK_FALSE(score.all_labelled);
}

TEST_CASE("Other text in the loose box of a tilted line is neither right nor wrong",
          "[bench][scoring]")
{
    bench::Picture picture;
    picture.lines = {{"25 NOV", box(0, 0, 200, 130)}};
    picture.all_labelled = false;
    bench::ReadPicture read;
    read.lines = {readLine("USE BY", box(20, 10, 80, 30), 0.99),
                  readLine("25 NOV", box(10, 60, 180, 40), 0.99)};
    const bench::Score score = bench::scoreOf({picture}, {read});
    CHECK(score.exact == 1);
    CHECK(score.false_lines == 0);
    CHECK(score.judged_cells.size() == 5);
}

TEST_CASE("The true maker's rank counts from one, and zero when it is not listed",
          "[bench][scoring]")
{
    const auto madeBy = [](std::optional<std::string> maker) {
        bench::Picture picture;
        picture.maker = std::move(maker);
        return picture;
    };
    const bench::Picture known = madeBy("b"), unlisted = madeBy("c"), without = madeBy({});
    const auto candidate = [](std::string maker) {
        models::Candidate made;
        made.maker_id = std::move(maker);
        return made;
    };
    bench::ReadPicture read;
    read.candidates.candidates = {candidate("a"), candidate("b")};
    const bench::Score score = bench::scoreOf({known, unlisted, without}, {read, read, read});
    CHECK(score.maker_ranks == std::vector<int>{2, 0});
}
