// What one piece of evidence says by year, worked out by hand from the constants that
// date_evidence.cpp states (common practice, no source).
#include "models/date_evidence.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "models/dating.h"
#include "models/year_spread.h"
#include "tests/support/by_hand.h"

using namespace models;

namespace {

const YearRange thirties = {1930, 1941};

double at(const std::vector<double>& years, int year)
{
    return years.at(static_cast<std::size_t>(year - thirties.first));
}

double at(const std::optional<DateEvidence>& piece, int year)
{
    REQUIRE(piece);
    double priors = 0;
    for (const EvidenceCase& one : piece->cases)
        priors += one.prior;
    CHECK(priors == byHand(1));
    return at(likelihoodOf(*piece), year);
}

Feature buckle(const std::string& from, const std::string& to)
{
    Feature feature;
    feature.feature_id = "buckle";
    feature.name = "Brass buckle";
    feature.from = from;
    feature.to = to;
    return feature;
}

MakerRegister oneAndTwo()
{
    MakerRegister known;
    Maker one;
    one.maker_id = "one";
    one.name = "One & Co.";
    one.from = "1930";
    one.to = "1933";
    Maker two = one;
    two.maker_id = "two";
    two.name = "Two & Co.";
    two.from = "1938";
    two.to = "1941";
    known.makers = {one, two};
    return known;
}

}  // namespace

TEST_CASE("By hand: a period falls off beyond its limits", "[models][dating]")
{
    const std::vector<double> sharp = periodWeights("1934", "1938", thirties, usual_softness);
    CHECK(at(sharp, 1934) == 1);
    CHECK(at(sharp, 1938) == 1);
    CHECK(at(sharp, 1933) == byHand(0.188876));  // exp(-1 / 0.6)
    CHECK(at(sharp, 1940) == byHand(0.108368));  // exp(-2 / 0.9)
    const std::vector<double> about = periodWeights("1934~", "1938?", thirties, usual_softness);
    CHECK(at(about, 1933) == byHand(0.367879));  // exp(-1 / 1)
    CHECK(at(about, 1940) == byHand(0.188876));  // exp(-2 / 1.2)
    const std::vector<double> open = periodWeights("", "1938", thirties, usual_softness);
    CHECK(at(open, 1930) == 1);
    CHECK(at(periodWeights("..", "", thirties, usual_softness), 1941) == 1);
}

TEST_CASE("By hand: an item type", "[models][dating]")
{
    ItemType type;
    type.name = "Belt";
    type.introduced = "1934";
    type.withdrawn = "1938";
    const auto piece = typeEvidence(type, thirties);
    CHECK(at(piece, 1936) == byHand(0.993));  // 0.96 + 0.03 + 0.01 x 0.3
    // 0.96 exp(-2 / 0.9) + 0.03 exp(-2 / 6) + 0.003 = 0.104033 + 0.021496 + 0.003
    CHECK(at(piece, 1940) == byHand(0.128529));
    type.introduced = type.withdrawn = "";
    CHECK_FALSE(typeEvidence(type, thirties));
}

TEST_CASE("By hand: a detail that is present", "[models][dating]")
{
    const auto piece = featureEvidence(buckle("1934", "1938"), FeatureSeen::Present, thirties);
    // Within: 0.92 + 0.03 + 0.03 x 0.5 + 0.01 x 0.5 + 0.01 x 0.3
    CHECK(at(piece, 1936) == byHand(0.973));
    // 1930: 0.92 exp(-4 / 0.6) + 0.03 exp(-4 / 6) + 0.03 x 0.5 (a later part) + 0.005 exp(-4 / 0.6)
    // + 0.003 = 0.001171 + 0.015403 + 0.015 + 0.000006 + 0.003
    CHECK(at(piece, 1930) == byHand(0.034580));
    // 1941: 0.92 exp(-3 / 0.9) + 0.03 exp(-3 / 6) + 0.015 exp(-3 / 0.9) + 0.005 (an older part)
    // + 0.003 = 0.032820 + 0.018196 + 0.000535 + 0.005 + 0.003
    CHECK(at(piece, 1941) == byHand(0.059551));
}

TEST_CASE("By hand: a detail that is absent, altered, or cannot be seen", "[models][dating]")
{
    const Feature feature = buckle("1934", "1938");
    const auto absent = featureEvidence(feature, FeatureSeen::Absent, thirties);
    CHECK(at(absent, 1936) == byHand(0.3));  // 0.99 (1 - 0.7) + 0.01 x 0.3
    // 0.99 (1 - 0.7 exp(-2 / 0.9)) + 0.003 = 0.99 x 0.924142 + 0.003
    CHECK(at(absent, 1940) == byHand(0.917901));
    const auto altered = featureEvidence(feature, FeatureSeen::AlteredLater, thirties);
    CHECK(at(altered, 1930) == byHand(1));
    CHECK(at(altered, 1940) == byHand(0.286694));  // 0.2 + 0.8 x 0.108368
    CHECK_FALSE(featureEvidence(feature, FeatureSeen::CannotBeSeen, thirties));
    CHECK_FALSE(featureEvidence(buckle("", ".."), FeatureSeen::Present, thirties));
}

TEST_CASE("By hand: five years after a type was given up about a year is a contradiction",
          "[models][dating]")
{
    // Withdrawn about 1938. The type says of 1943, five years later: 0.96 exp(-5 / 1.2) + 0.03
    // exp(-5 / 8) + 0.003 = 0.014884 + 0.016058 + 0.003 = 0.033942; of a year until 1938: 0.993.
    // Recorded as made in 1943: 0.97 + 0.03 / 16 = 0.971875 in 1943, 0.001875 in any other year.
    // 1943: 0.971875 x 0.033942 = 0.032987; the nine years to 1938: 9 x 0.993 x 0.001875 =
    // 0.016757; the six others 0.001602; sum 0.051345.
    const YearRange sixteen = {1930, 1945};
    ItemType belt;
    belt.name = "Belt";
    belt.withdrawn = "1938~";
    const auto datedIn = [&](const std::string& year) {
        return dateFrom({*typeEvidence(belt, sixteen),
                         *eventEvidence({EventKind::Made, DateBound::Exact, year, {}}, sixteen)},
                        sixteen);
    };
    const Dating five_later = datedIn("1943");
    CHECK(five_later.years[13] == byHand(0.642451));
    // The type is wrong, in a way that matters: in 1943 0.642451 x (0.016058 + 0.003) / 0.033942 x
    // (1 - exp(-5 / 1.2)) = 0.355137, in the six other years later than 1938 0.004115 more. The
    // record is wrong in all years but 1943: 1 - 0.642451. At least one of them: 0.712686.
    CHECK(five_later.contradiction == byHand(0.712686));
    CHECK(five_later.is_contradiction);
    REQUIRE(five_later.culprits.size() == 2);
    CHECK(five_later.culprits[0].probability == byHand(0.359252));
    CHECK(five_later.culprits[1].probability == byHand(0.357549));
    // The same sums two years later: "about" allows for that.
    CHECK(datedIn("1940").contradiction == byHand(0.176535));
    // Where the year is beyond doubt it is the type alone: of four years (0.03 exp(-4 / 8) + 0.003)
    // / (0.96 exp(-4 / 1.2) + 0.03 exp(-4 / 8) + 0.003) x (1 - exp(-4 / 1.2)), of five as above.
    const auto certainlyIn = [&](int year) {
        DateEvidence certain;
        certain.cases = {{std::nullopt, 1, std::vector<double>(sixteen.size(), 0), {}}};
        certain.cases[0].likelihood[static_cast<std::size_t>(year - sixteen.first)] = 1;
        return dateFrom({*typeEvidence(belt, sixteen), certain}, sixteen);
    };
    CHECK(certainlyIn(1942).contradiction == byHand(0.368663));
    CHECK_FALSE(certainlyIn(1942).is_contradiction);
    CHECK(certainlyIn(1943).contradiction == byHand(0.552785));
    CHECK(certainlyIn(1943).is_contradiction);
}

TEST_CASE("By hand: dated events bound by their kind", "[models][dating]")
{
    // A slip in the record: 0.03 / 12 = 0.0025 a year.
    const auto made = eventEvidence({EventKind::Made, DateBound::Exact, "193X", {}}, thirties);
    CHECK(at(made, 1934) == byHand(0.0995));  // 0.97 / 10 + 0.0025
    CHECK(at(made, 1940) == byHand(0.0025));
    const auto contract =
        eventEvidence({EventKind::Contract, DateBound::NotBefore, "1936", {}}, thirties);
    CHECK(at(contract, 1935) == byHand(0.0025));
    CHECK(at(contract, 1936) == byHand(0.3905));   // 0.97 x 0.4 + 0.0025
    CHECK(at(contract, 1938) == byHand(0.14218));  // 0.97 x 0.4 x 0.36 + 0.0025
    const auto inspected =
        eventEvidence({EventKind::Inspected, DateBound::NotAfter, "1936", {}}, thirties);
    CHECK(at(inspected, 1937) == byHand(0.0025));
    CHECK(at(inspected, 1935) == byHand(0.2353));  // 0.97 x 0.4 x 0.6 + 0.0025
    const auto repaired =
        eventEvidence({EventKind::Repaired, DateBound::NotAfter, "1936", {}}, thirties);
    CHECK(at(repaired, 1934) == byHand(0.08107));  // 0.97 x 0.1 x 0.81 + 0.0025
    CHECK_FALSE(eventEvidence({EventKind::Disposed, DateBound::None, "1936", {}}, thirties));
    CHECK_FALSE(eventEvidence({EventKind::Made, DateBound::Exact, "no date", {}}, thirties));
    CHECK_FALSE(eventEvidence({EventKind::Made, DateBound::Exact, "1950", {}}, thirties));
}

TEST_CASE("By hand: a doubtful year spreads to those beside it", "[models][dating]")
{
    // After and before by halves with fading 0.6: in the year 0.4 of each side, so that 1935 and
    // 1937 have 0.5 x 0.24. Cut at the range's ends: after 1936 come 1936 to 1941, 1 - 0.6^6 of the
    // side, before it 1930 to 1936, 1 - 0.6^7: half of 0.953344 + 0.972006 = 0.962675.
    const auto made = eventEvidence({EventKind::Made, DateBound::Exact, "1936?", {}}, thirties);
    CHECK(at(made, 1936) == byHand(0.97 * 0.4 / 0.962675 + 0.0025));
    CHECK(at(made, 1937) == byHand(0.97 * 0.12 / 0.962675 + 0.0025));
}

TEST_CASE("By hand: a maker's years", "[models][dating]")
{
    const MakerRegister known = oneAndTwo();
    // One, 1930 to 1933: weights 1 1 1 1 and beyond exp(-n / 0.9), n to 8; r = exp(-1 / 0.9) =
    // 0.329193: 4 + r (1 - r^8) / (1 - r) = 4 + 0.490674 = 4.490674 (r^8 = 0.000138).
    // Two, 1938 to 1941: 4 + q (1 - q^8) / (1 - q), q = exp(-1 / 0.6) = 0.188876: 4.232857.
    const double r = std::exp(-1 / 0.9), q = std::exp(-1 / 0.6);
    const double one = 4 + r * (1 - std::pow(r, 8)) / (1 - r);
    const double two = 4 + q * (1 - std::pow(q, 8)) / (1 - q);
    CHECK(one == byHand(4.490674));
    CHECK(two == byHand(4.232857));
    const auto piece =
        makerEvidence("maker", {{"one", "", 0.8}, {"two", "", 0.15}}, known, thirties);
    REQUIRE(piece);
    REQUIRE(piece->cases.size() == 3);
    CHECK(piece->cases[0].prior == byHand(0.776));  // 0.8 x 0.97
    CHECK(at(piece->cases[0].likelihood, 1931) == byHand(1 / one));
    CHECK(piece->cases[2].prior == byHand(0.2));
    // Two with 0.15, any year with what is left, 0.05 / 12; both of 0.2.
    CHECK(at(piece->cases[2].likelihood, 1939) == byHand((0.15 / two + 0.05 / 12) / 0.2));
    CHECK(at(piece->cases[2].likelihood, 1931) ==
          byHand((0.15 * std::pow(q, 7) / two + 0.05 / 12) / 0.2));
    CHECK(piece->meaning == "One & Co. worked 1930 to 1933");
}

TEST_CASE("By hand: makers of whom none is the one", "[models][dating]")
{
    const auto piece =
        makerEvidence("maker", {{"one", "", 0.4}, {"two", "", 0.3}}, oneAndTwo(), thirties);
    REQUIRE(piece);
    REQUIRE(piece->cases.size() == 1);
    // 0.4 / 4.490674 + 0.3 exp(-7 / 0.6) / 4.232857 + 0.3 / 12 = 0.0890735 + 0.0000006 + 0.025
    CHECK(at(piece, 1931) == byHand(0.114074));
    CHECK_FALSE(makerEvidence("maker", {{"nobody", "", 0.9}}, oneAndTwo(), thirties));
    CHECK_FALSE(makerEvidence("maker", {}, oneAndTwo(), thirties));
}
