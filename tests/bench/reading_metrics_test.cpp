#include "tests/support/reading_metrics.h"

#include <algorithm>
#include <stdexcept>

#include <catch2/catch.hpp>

using metrics::Judged;

namespace {

double rateOf(std::u32string_view read, std::u32string_view truth)
{
    return metrics::characterErrors(read, truth).rate().value();
}

}  // namespace

TEST_CASE("The character error rate is edits over the reference's length", "[bench][metrics]")
{
    // Definition: edits / reference length, as published by the ISRI evaluation tools and the
    // digitisation community; the values follow from it by counting.
    CHECK(rateOf(U"TVNO 1940", U"TVNO 1940") == 0);
    CHECK(rateOf(U"TVNO 1946", U"TVNO 1940") == Approx(1.0 / 9));
    CHECK(rateOf(U"TVN0 194", U"TVNO 1940") == Approx(2.0 / 9));
    CHECK(rateOf(U"", U"TVNO 1940") == 1);
    CHECK(rateOf(U"TVNO 1940", U"TVNO") == Approx(5.0 / 4));  // it may exceed 1
    CHECK(rateOf(U"TVNo 1940", U"T.V.No 1940") == Approx(2.0 / 11));
    CHECK(rateOf(U"sitting", U"kitten") == Approx(3.0 / 6));
    CHECK(rateOf(U"the quick brwn fox jumps", U"the quick brown fox") == Approx(7.0 / 19));
    CHECK(rateOf(U"19A0", U"1940") == Approx(1.0 / 4));
    CHECK_FALSE(metrics::characterErrors(U"A", U"").rate());
}

TEST_CASE("Pooled errors weigh long lines more than a mean of rates", "[bench][metrics]")
{
    // By counting: 2 edits on 27 characters. The mean of the three rates would be 0.100877.
    metrics::CharacterErrors pooled;
    pooled += metrics::characterErrors(U"TVN0", U"TVNO");
    pooled += metrics::characterErrors(U"1940", U"1940");
    pooled += metrics::characterErrors(U"BROWN & CO LTD 1947", U"BROWN & CO LTD 1941");
    CHECK(pooled.edits == 2);
    CHECK(pooled.rate().value() == Approx(0.074074).margin(5e-7));
}

TEST_CASE("Only letters and digits are compared, whatever their case", "[bench][metrics]")
{
    CHECK(metrics::lettersAndDigits("T.v. No 19-40") == U"TVNO1940");
    CHECK(metrics::lettersAndDigits("\xC3\xBC\xC3\x97\xC3\x9C") == U"\u00DC\u00DC");
    CHECK(metrics::lettersAndDigits("4\xEF\xBF\xBD/\xE2\x80\xA6"
                                    "0") == U"40");  // unread, a gap
    CHECK(metrics::lettersAndDigits("A\xFF\xC3") == U"A");
}

TEST_CASE("Characters read are paired with those they stand for", "[bench][metrics]")
{
    using Partners = std::vector<std::optional<std::size_t>>;
    CHECK(metrics::partnersOf(U"194A0", U"1940") == Partners{0, 1, 2, std::nullopt, 3});
    CHECK(metrics::partnersOf(U"140", U"1940") == Partners{0, 2, 3});
    CHECK(metrics::partnersOf(U"1A40", U"1940") == Partners{0, 1, 2, 3});
    CHECK(metrics::partnersOf(U"", U"1940").empty());
}

TEST_CASE("The Brier score is the mean squared miss of the certainty", "[bench][metrics]")
{
    // The example in scikit-learn's documentation of brier_score_loss, printed there as 0.037...
    CHECK(metrics::brierScore({{0.1, false}, {0.9, true}, {0.8, true}, {0.3, false}}).value() ==
          Approx(0.0375));
    CHECK_FALSE(metrics::brierScore({}));
}

TEST_CASE("The calibration error is the mean gap of bins of equal mass", "[bench][metrics]")
{
    // By hand: 9 of 10 right at 0.95, 6 of 10 at 0.75, 6 of 10 at 0.55:
    // (|0.90 - 0.95| + |0.60 - 0.75| + |0.60 - 0.55|) / 3.
    std::vector<Judged> reads;
    for (int i = 0; i < 10; ++i) {
        reads.push_back({0.95, i < 9});
        reads.push_back({0.75, i < 6});
        reads.push_back({0.55, i < 6});
    }
    CHECK(metrics::calibrationError(reads, 3).value() == Approx(0.083333).margin(5e-7));
    // In one bin the gaps of opposite sign cancel: |0.70 - 0.75|.
    CHECK(metrics::calibrationError(reads, 1).value() == Approx(0.05));
    // By hand, five reads in two bins, of three and two: |1/3 - 0.2| * 3/5 + |1/2 - 0.8| * 2/5.
    CHECK(metrics::calibrationError(
              {{0.9, false}, {0.1, false}, {0.3, false}, {0.7, true}, {0.2, true}}, 2)
              .value() == Approx(0.2));
    CHECK(metrics::calibrationError({{0.75, true}}).value() == Approx(0.25));
    CHECK_FALSE(metrics::calibrationError({}));
    CHECK_THROWS_AS(metrics::calibrationError({{0.5, true}}, 0), std::invalid_argument);
}

TEST_CASE("The order of equal certainties does not matter", "[bench][metrics]")
{
    // All alike: half right at 0.5, whatever bins their order would put them into.
    std::vector<Judged> reads;
    for (int i = 0; i < 30; ++i)
        reads.push_back({0.5, i < 15});
    CHECK(metrics::calibrationError(reads, 15).value() == Approx(0).margin(1e-12));
    CHECK(metrics::coverageAtPrecision(reads, 30, 0.95).value() == 0);
    CHECK(metrics::coverageAtPrecision(reads, 30, 0.5).value() == Approx(0.5));
}

TEST_CASE("Coverage counts what is right above the lowest threshold that is precise enough",
          "[bench][metrics]")
{
    // By hand, selective accuracy: of ten marks six are answered, five of them right; the accuracy
    // on those answered is 0.8333, over all 0.5.
    const std::vector<Judged> answered{{0.8, true}, {0.8, true}, {0.8, true},
                                       {0.8, true}, {0.8, true}, {0.8, false}};
    CHECK(metrics::coverageAtPrecision(answered, 10, 0.83).value() == Approx(0.5));
    CHECK(metrics::coverageAtPrecision(answered, 10, 0.84).value() == 0);
    // By hand: a wrong one early does not end it, later right ones may make up for it.
    const std::vector<Judged> dips{
        {0.9, true}, {0.8, false}, {0.7, true}, {0.6, true}, {0.5, false}};
    CHECK(metrics::coverageAtPrecision(dips, 4, 0.75).value() == Approx(3.0 / 4));
    CHECK(metrics::coverageAtPrecision(dips, 4, 0.76).value() == Approx(1.0 / 4));
    CHECK_FALSE(metrics::coverageAtPrecision(dips, 0, 0.95));
}

TEST_CASE("Wrong but sure counts against all that was said, sure and right against what is right",
          "[bench][metrics]")
{
    const std::vector<Judged> cells{
        {0.95, true}, {0.9, false}, {0.89, false}, {0.4, true}, {0.99, true}};
    CHECK(metrics::wrongButSurePer100(cells).value() == Approx(20));
    CHECK(metrics::rightThatAreSure(cells).value() == Approx(2.0 / 3));
    CHECK_FALSE(metrics::wrongButSurePer100({}));
    CHECK_FALSE(metrics::rightThatAreSure({{0.9, false}}));
}

TEST_CASE("The share among the first k counts what is not listed as missed", "[bench][metrics]")
{
    // The example in scikit-learn's documentation of top_k_accuracy_score as ranks of the true
    // class (1, 1, 2, 3): 0.75 among two, and by counting 0.5 first.
    CHECK(metrics::topShare({1, 1, 2, 3}, 2).value() == Approx(0.75));
    CHECK(metrics::topShare({1, 1, 2, 3}, 1).value() == Approx(0.5));
    CHECK(metrics::topShare({0, 1}, 3).value() == Approx(0.5));
    CHECK_FALSE(metrics::topShare({}, 1));
}
