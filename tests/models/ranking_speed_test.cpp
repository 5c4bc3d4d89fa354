#include <algorithm>
#include <catch2/catch.hpp>
#include <chrono>
#include <filesystem>
#include <iostream>

#include "models/candidates.h"
#include "models/typed_notation.h"

namespace {

// Makers enough for a large register: the demo's, each many times with other letters.
models::MakerRegister manyMakers(std::size_t copies)
{
    const models::MakerRegister demo =
        models::loadRegister(std::filesystem::path(WEFTMARK_SOURCE_DIR) / "models/register");
    models::MakerRegister many = demo;
    for (std::size_t copy = 1; copy < copies; ++copy) {
        for (models::Maker maker : demo.makers) {
            maker.maker_id.append("-").append(std::to_string(copy));
            many.makers.push_back(std::move(maker));
        }
        for (models::Mark mark : demo.marks) {
            mark.maker_id.append("-").append(std::to_string(copy));
            for (models::Cell& cell : mark.line.cells) {
                char& letter = cell.alternatives.front().text[0];
                if (letter >= 'A' && letter <= 'Z')
                    letter = static_cast<char>('A' + (letter - 'A' + static_cast<int>(copy)) % 26);
            }
            mark.text = models::writeTyped(mark.line);
            many.marks.push_back(std::move(mark));
        }
    }
    return many;
}

double millisecondsToRank(const models::MakerRegister& known)
{
    models::Reading reading;
    reading.lines = models::parseTyped("T.H. & C? 193[.] / SIZE 3 / S.H. 31").lines;
    const auto start = std::chrono::steady_clock::now();
    const models::CandidateList list = models::rankCandidates({{reading}, ""}, known);
    const std::chrono::duration<double, std::milli> taken =
        std::chrono::steady_clock::now() - start;
    CHECK_FALSE(list.candidates.empty());
    return taken.count();
}

}  // namespace

// Run by hand: models_tests "[speed]".
TEST_CASE("How long the ranking of one stamp of three lines takes", "[.][speed]")
{
    for (const std::size_t copies : {1U, 10U, 34U}) {
        const models::MakerRegister known = manyMakers(copies);
        double best = millisecondsToRank(known);
        for (int i = 0; i < 4; ++i)
            best = std::min(best, millisecondsToRank(known));
        std::cout << known.makers.size() << " makers, " << known.marks.size() << " marks: " << best
                  << " ms\n";
    }
}
