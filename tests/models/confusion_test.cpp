#include "models/confusion.h"

#include <catch2/catch.hpp>

#include "models/letters.h"

namespace {

double p(const std::string& truth, const std::string& seen)
{
    return models::ConfusionTable::published().probability(truth, seen);
}

}  // namespace

TEST_CASE("What is seen for a letter sums to at most one", "[models][confusion]")
{
    const auto letters = models::charactersOf(
        "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789&/.,'-()+|! ");
    for (const std::string& truth : letters) {
        CAPTURE(truth);
        double sum = 0;
        for (const std::string& seen : letters)
            sum += p(truth, seen);
        CHECK(sum <= 1 + 1e-9);
        CHECK(sum > 0.9);
        CHECK(p(truth, truth) > 0.8);
    }
}

TEST_CASE("Published look-alikes are nearer than strangers, both ways", "[models][confusion]")
{
    // Unicode Technical Standard 39 (0 O, 1 I); a list for number plates (B 8, C G, E F, P R, 5 S).
    for (const auto& [a, b] : {std::pair{"0", "O"},
                               {"1", "I"},
                               {"B", "8"},
                               {"C", "G"},
                               {"E", "F"},
                               {"P", "R"},
                               {"5", "S"}}) {
        CAPTURE(a, b);
        CHECK(p(a, b) > 10 * p(a, "W"));
        CHECK(p(b, a) > 10 * p(b, "W"));
        CHECK(p(a, b) < p(a, a));
    }
    // Published pairs weigh more than those of common practice alone.
    CHECK(p("0", "O") > p("0", "6"));
}

TEST_CASE("Case is a mild difference", "[models][confusion]")
{
    CHECK(p("H", "h") > p("H", "N"));
    CHECK(p("H", "h") < p("H", "H"));
    CHECK(p("\xC3\x89", "\xC3\xA9") > p("\xC3\x89", "W"));
}

TEST_CASE("No character has no probability", "[models][confusion]")
{
    CHECK(p("", "A") == 0);
    CHECK(p("A", "") == 0);
}
