#include "models/letter_model.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "models/typed_notation.h"

namespace {

// A model of a few marks, and lines weighed by it.
class ModelCase {
public:
    ModelCase()
        : rates_(0.02),
          model_({{"T. HARSKELL & CO"},
                  {"J. HEWLABY & CO"},
                  {"P. HARSKELL & SONS"},
                  {"T.H. & CO"},
                  {"KESTERLOW LTD"},
                  {"NORROWBY & CO"}},
                 ids_, 0.02)
    {
    }

    double logSum(const std::string& typed) const
    {
        return sumOf(models::weighCells(models::parseTyped(typed).lines.at(0).cells, ids_,
                                        models::ReadingErrors{}));
    }

    double sumOf(const std::vector<models::CellWeights>& weights) const
    {
        const auto cells = models::cellsAsOdds(weights, rates_);
        models::AlignmentPlan plan;
        plan.entry.assign(cells.size() + 1, 0);
        plan.exit = plan.entry;
        plan.entry.front() = plan.exit.back() = 1;
        return model_.logSum(cells, plan, rates_);
    }

    std::vector<std::vector<double>> lettersOf(const std::string& typed) const
    {
        const auto weights = models::weighCells(models::parseTyped(typed).lines.at(0).cells, ids_,
                                                models::ReadingErrors{});
        const auto cells = models::cellsAsOdds(weights, rates_);
        models::AlignmentPlan plan;
        plan.entry.assign(cells.size() + 1, 0);
        plan.exit = plan.entry;
        plan.entry.front() = plan.exit.back() = 1;
        return model_.lettersOf(cells, plan, rates_);
    }

    const models::LetterIds& ids() const { return ids_; }

private:
    models::GapRates rates_;
    models::LetterIds ids_;
    models::LetterModel model_;
};

}  // namespace

TEST_CASE("Names and forms like those of the register are likelier than others",
          "[models][letter-model]")
{
    const ModelCase one;
    CHECK(one.logSum("B. HARSKELL & CO") > one.logSum("B. QXZVKJWW & CO") + 5);
    CHECK(one.logSum("K.W. & CO") > one.logSum("KW.O. C&") + 3);
    CHECK(one.logSum("WORROWBY LTD") > one.logSum("WQRRZWBY LTD") + 3);
    // Not by heart: a name that is new is far likelier than letters without order.
    CHECK(one.logSum("MERROWBY & CO") > one.logSum("YBWORREM & CO") + 1);
}

TEST_CASE("Any initial may come", "[models][letter-model]")
{
    const ModelCase one;
    CHECK(one.logSum("Y.Y. & CO") > one.logSum("T.H. & CO") - 10);
    CHECK(one.logSum("Y.Y. & CO") > one.logSum("4711") + 3);
}

// The sum over texts and alignments is linear in what a cell says of each letter.
TEST_CASE("An unread cell is the sum over what it can be", "[models][letter-model]")
{
    const ModelCase one;
    const double unread = one.logSum("H+RSK");
    auto weights = models::weighCells(models::parseTyped("H+RSK").lines.at(0).cells, one.ids(),
                                      models::ReadingErrors{});
    models::CellWeights& cell = weights[1];
    cell.unread = false;
    cell.dot = cell.space = 0;  // what nobody could read is no stray blank
    // Strays are part of either; they are counted once.
    cell.of_letter.assign(one.ids().size(), 0);
    const double none = std::exp(one.sumOf(weights));
    double sum = none;
    for (std::size_t letter = 0; letter < one.ids().size(); ++letter) {
        cell.of_letter[letter] = cell.other;
        sum += std::exp(one.sumOf(weights)) - none;
        cell.of_letter[letter] = 0;
    }
    CHECK(std::log(sum) == Approx(unread).margin(0.02));  // the least likely states are left out
}

TEST_CASE("What an unread cell may show follows from the letters before it",
          "[models][letter-model]")
{
    const ModelCase one;
    const auto letters = one.lettersOf("T.HARSK+");
    REQUIRE(letters.size() == 8);
    CHECK(letters[0].empty());
    std::size_t likeliest = 0;
    double sum = 0;
    for (std::size_t letter = 0; letter < letters[7].size(); ++letter) {
        sum += letters[7][letter];
        if (letters[7][letter] > letters[7][likeliest])
            likeliest = letter;
    }
    CHECK(sum == Approx(1).margin(1e-6));
    CHECK(one.ids().letter(likeliest) == "E");
}

TEST_CASE("A line of any length keeps in range", "[models][letter-model]")
{
    const ModelCase one;
    CHECK(std::isfinite(one.logSum(std::string(300, 'A'))));
    CHECK(std::isfinite(one.logSum("[- - -]")));
    CHECK(one.logSum(std::string(300, 'A')) > one.logSum(std::string(200, 'A')));
}
