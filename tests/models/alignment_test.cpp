#include "models/alignment.h"

#include <catch2/catch.hpp>
#include <cmath>

TEST_CASE("The edit distance agrees with published values", "[models][alignment]")
{
    // Rosetta Code, page "Levenshtein distance".
    CHECK(models::editDistance("kitten", "sitting") == 3);
    CHECK(models::editDistance("saturday", "sunday") == 3);
    CHECK(models::editDistance("rosettacode", "raisethysword") == 8);
    CHECK(models::editDistance("sleep", "fleeting") == 5);
    // Jurafsky and Martin, Speech and Language Processing, with unit costs.
    CHECK(models::editDistance("intention", "execution") == 5);
    // By definition.
    CHECK(models::editDistance("", "abc") == 3);
    CHECK(models::editDistance("abc", "") == 3);
    CHECK(models::editDistance("abc", "abc") == 0);
    CHECK(models::editDistance("1940", "1946") == 1);
    CHECK(models::editDistance("T.V.NO.", "TVNO") == 3);
    CHECK(models::editDistance("ab", "ba") == 2);
    CHECK(models::editDistance("\xC3\x89", "E") == 1);  // a character is one however many bytes
}

TEST_CASE("An alignment joins what is near and leaves the rest alone", "[models][alignment]")
{
    const std::vector<double> first = {1, 5, 9}, second = {1.1, 9.2};
    const auto pairs = models::alignSequences(
        first.size(), second.size(),
        [&](std::size_t i, std::size_t j) { return std::abs(first[i] - second[j]); }, 1.0);

    const std::vector<models::AlignedPair> expected = {{0, 0}, {1, std::nullopt}, {2, 1}};
    CHECK(pairs == expected);
    CHECK(models::alignSequences(
              0, 0, [](std::size_t, std::size_t) { return 0.0; }, 1)
              .empty());
}
