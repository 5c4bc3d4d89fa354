#include "models/reading.h"

#include <catch2/catch.hpp>

namespace {

models::Line lineOf(std::vector<models::Cell> cells)
{
    models::Line line;
    line.cells = std::move(cells);
    return line;
}

}  // namespace

TEST_CASE("Plain text shows every unread stretch", "[models][reading]")
{
    models::Cell three_lost;
    three_lost.state = models::CellState::Lost;
    three_lost.least = 3;
    three_lost.most = 3;
    models::Cell some_lost;
    some_lost.state = models::CellState::Lost;
    some_lost.least = 0;
    some_lost.most = std::nullopt;

    CHECK(models::plainText(lineOf({models::clearCell("A"), three_lost})) ==
          "A\xEF\xBF\xBD\xEF\xBF\xBD\xEF\xBF\xBD");
    CHECK(models::plainText(lineOf({some_lost, models::clearCell("B")})) ==
          "\xE2\x80\xA6"
          "B");
    CHECK(models::plainText(lineOf({})).empty());
}

TEST_CASE("A line is as certain as all its cells together", "[models][reading]")
{
    models::Cell half = models::clearCell("B");
    half.alternatives.front().certainty = 0.5;
    models::Cell traces;
    traces.state = models::CellState::Traces;

    CHECK(models::lineCertainty(lineOf({half, half})) == Approx(0.25));
    CHECK(models::lineCertainty(lineOf({half, traces})) == 0);
    CHECK(models::lineCertainty(lineOf({})) == 0);

    models::Line calibrated = lineOf({half, half});
    calibrated.certainty = 0.4;  // the reader knows better than independence
    CHECK(models::lineCertainty(calibrated) == 0.4);
}
