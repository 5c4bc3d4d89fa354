// A cell that held one letter twice was written as a choice that the parser refuses.

#include <catch2/catch.hpp>

#include "models/typed_notation.h"

TEST_CASE("A cell that holds a letter twice is written so that it can be read", "[bugs][notation]")
{
    for (const auto state :
         {models::CellState::Doubtful, models::CellState::Restored, models::CellState::Traces}) {
        models::Cell cell;
        cell.state = state;
        cell.alternatives = {{"O", 0.5}, {"O", 0.2}, {"0", 0.1}};
        models::Line line;
        line.cells = {cell};

        const models::ParsedNotation parsed = models::parseTyped(models::writeTyped(line));

        REQUIRE_FALSE(parsed.fault);
        REQUIRE(parsed.lines.size() == 1);
        const auto& letters = parsed.lines.front().cells.at(0).alternatives;
        REQUIRE(letters.size() == 2);
        CHECK(letters.front().text == "O");
        CHECK(letters.back().text == "0");
    }
}
