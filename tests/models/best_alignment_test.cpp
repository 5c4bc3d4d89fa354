#include "models/best_alignment.h"

#include <edlib.h>
#include <catch2/catch.hpp>
#include <cmath>
#include <random>
#include <string>

#include "models/typed_notation.h"

namespace {

const double one_edit = std::exp(-1.0);

// A line of clear letters against a text where each edit costs one: a letter replaced, a cell left
// alone, a letter skipped.
class UnitCosts {
public:
    UnitCosts(const std::string& seen, const std::string& truth) : rates_(0)
    {
        text_.letters = ids_.idsOf(truth);
        text_.skip.assign(text_.letters.size(), one_edit);
        const std::vector<std::size_t> letters = ids_.idsOf(seen);
        for (const std::size_t letter : letters) {
            models::CellWeights cell;
            cell.of_letter.assign(ids_.size(), one_edit / (1 - one_edit));
            cell.of_letter[letter] = 1 / (1 - one_edit);
            weights_.push_back(cell);
        }
        for (const models::CellWeights& cell : weights_)
            cells_.push_back({&cell, 1, one_edit});
        plan_.entry.assign(cells_.size() + 1, 0);
        plan_.exit = plan_.entry;
        plan_.entry.front() = plan_.exit.back() = 1;
    }

    models::BestAlignment best() const
    {
        return models::bestAlignment(cells_, text_, plan_, rates_);
    }
    double distance() const { return -best().log_weight; }

private:
    models::GapRates rates_;
    models::LetterIds ids_;
    models::MatchText text_;
    std::vector<models::CellWeights> weights_;
    std::vector<models::AlignedCell> cells_;
    models::AlignmentPlan plan_;
};

int edlibDistance(const std::string& a, const std::string& b)
{
    const EdlibAlignResult result =
        edlibAlign(a.data(), static_cast<int>(a.size()), b.data(), static_cast<int>(b.size()),
                   edlibDefaultAlignConfig());
    REQUIRE(result.status == EDLIB_STATUS_OK);
    const int distance = result.editDistance;
    edlibFreeAlignResult(result);
    return distance;
}

std::string randomText(std::mt19937& random)
{
    std::string text(std::uniform_int_distribution<std::size_t>(1, 14)(random), ' ');
    for (char& letter : text)
        letter = "HARSKEL"[std::uniform_int_distribution<std::size_t>(0, 6)(random)];
    return text;
}

}  // namespace

TEST_CASE("With unit costs the best alignment costs the published Levenshtein distance",
          "[models][match]")
{
    struct Published {
        const char *a, *b;
        int distance;
    };
    // Rosetta Code, page "Levenshtein distance": the first four. Jurafsky and Martin, Speech and
    // Language Processing, chapter 2 (with replacement at cost 1): the fifth. Wikipedia,
    // "Levenshtein distance" and "Damerau-Levenshtein distance": the last two. All from memory of
    // those pages.
    for (const Published& pair :
         {Published{"kitten", "sitting", 3}, Published{"saturday", "sunday", 3},
          Published{"rosettacode", "raisethysword", 8}, Published{"sleep", "fleeting", 5},
          Published{"intention", "execution", 5}, Published{"uninformed", "uniformed", 1},
          Published{"CA", "ABC", 3}}) {
        CAPTURE(pair.a, pair.b);
        CHECK(UnitCosts(pair.a, pair.b).distance() == Approx(pair.distance).margin(1e-9));
        CHECK(edlibDistance(pair.a, pair.b) == pair.distance);
    }
    CHECK(UnitCosts("", "ABC").distance() == Approx(3));
    CHECK(UnitCosts("ABC", "").distance() == Approx(3));
    CHECK(UnitCosts("", "").distance() == Approx(0).margin(1e-12));
}

TEST_CASE("With unit costs the best alignment costs what edlib counts", "[models][match]")
{
    std::mt19937 random(8);
    for (int i = 0; i < 500; ++i) {
        const std::string a = randomText(random), b = randomText(random);
        CAPTURE(a, b);
        CHECK(UnitCosts(a, b).distance() == Approx(edlibDistance(a, b)).margin(1e-9));
    }
}

TEST_CASE("The best alignment names each cell and each letter once, in order", "[models][match]")
{
    std::mt19937 random(9);
    for (int i = 0; i < 100; ++i) {
        const std::string seen = randomText(random), truth = randomText(random);
        CAPTURE(seen, truth);
        std::size_t cell = 0, letter = 0;
        for (const models::AlignedPair& pair : UnitCosts(seen, truth).best().pairs) {
            if (pair.first)
                CHECK(*pair.first == cell++);
            if (pair.second)
                CHECK(*pair.second == letter++);
        }
        CHECK(cell == seen.size());
        CHECK(letter == truth.size());
    }
}

TEST_CASE("The best alignment never weighs more than all together, and a stretch takes its letters",
          "[models][match]")
{
    models::LetterIds ids;
    const models::MatchText text = models::makeMatchText("HARSKELL", ids, 0.02);
    const models::GapRates rates(0.02);
    for (const char* typed : {"HARSKELL", "H[...]KELL", "H[- - -]L", "HA(8|R)SKEL", "XHARSKELL"}) {
        CAPTURE(typed);
        const auto weights = models::weighCells(models::parseTyped(typed).lines.at(0).cells, ids,
                                                models::ReadingErrors{});
        const auto cells = models::cellsAsOdds(weights, rates);
        models::AlignmentPlan plan;
        plan.entry.assign(cells.size() + 1, 0.01);
        plan.exit = plan.entry;
        plan.entry.front() = plan.exit.back() = 0.9;
        const models::BestAlignment best = models::bestAlignment(cells, text, plan, rates);
        CHECK(best.log_weight <= models::logAlignmentSum(cells, text, plan, rates) + 1e-9);
        std::size_t letters = 0;
        for (const models::AlignedPair& pair : best.pairs)
            letters += pair.second ? 1 : 0;
        CHECK(letters == 8);
    }
}
