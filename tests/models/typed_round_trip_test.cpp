#include <catch2/catch.hpp>
#include <map>
#include <random>

#include "models/typed_notation.h"
#include "tests/models/random_reading.h"

namespace {

// What the notation carries; it leaves certainties to the reader that parses.
std::vector<models::Line> withoutCertainties(std::vector<models::Line> lines)
{
    for (models::Line& line : lines)
        for (models::Cell& cell : line.cells)
            for (models::Alternative& alternative : cell.alternatives)
                alternative.certainty = 0;
    return lines;
}

// How often each thing that the notation can say was drawn.
void countKinds(const std::vector<models::Line>& lines, std::map<std::string, int>& kinds)
{
    for (const models::Line& line : lines) {
        ++kinds["left end " + std::to_string(static_cast<int>(line.left_end))];
        ++kinds["right end " + std::to_string(static_cast<int>(line.right_end))];
        kinds["empty line"] += line.cells.empty();
        for (const models::Cell& cell : line.cells) {
            const std::string state = "state " + std::to_string(static_cast<int>(cell.state));
            ++kinds[state];
            kinds["erased " + state] += cell.erased;
            kinds["struck over " + state] += cell.struck_over;
            kinds["seen earlier " + state] += cell.seen_earlier;
            kinds["doubted"] += cell.doubted;
            kinds["choice " + state] += cell.alternatives.size() > 1;
            kinds["about " + state] += cell.about;
            kinds["unknown " + state] += !cell.most;
            kinds["range " + state] += cell.most && *cell.most > cell.least && !cell.about;
            kinds["several " + state] += cell.most == cell.least && cell.least > 1;
            kinds["guess " + state] += !cell.alternatives.empty();
        }
    }
}

// Only unread cells have counts, only read ones waver, a clear one has one letter.
bool canBe(const std::string& kind)
{
    const bool counts = kind.rfind("about", 0) == 0 || kind.rfind("unknown", 0) == 0 ||
                        kind.rfind("range", 0) == 0 || kind.rfind("several", 0) == 0;
    const bool unread = kind.back() == '2' || kind.back() == '3';  // Traces, Lost
    if (kind.rfind("choice", 0) == 0)
        return kind.back() != '0';  // Clear
    return !counts || unread;
}

}  // namespace

TEST_CASE("Writing a reading and parsing it gives the same reading", "[models][typed]")
{
    std::mt19937 random(1921);
    std::map<std::string, int> kinds;
    for (int round = 0; round < 100000; ++round) {
        const std::vector<models::Line> lines = randomLines(random);
        const std::string text = models::writeTyped(lines);
        countKinds(lines, kinds);
        CAPTURE(round, text);
        const models::ParsedNotation parsed = models::parseTyped(text);
        REQUIRE_FALSE(parsed.fault);
        REQUIRE(withoutCertainties(parsed.lines) == withoutCertainties(lines));
        REQUIRE(models::writeTyped(parsed.lines) == text);
    }
    CHECK(kinds.size() == 6 + 2 + 5 * 10);
    for (const auto& [kind, times] : kinds) {
        CAPTURE(kind);
        CHECK((times > 100) == canBe(kind));  // often enough that no luck is needed
    }
}
