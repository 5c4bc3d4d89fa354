#include "vision/ctc_decode.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <map>
#include <random>

namespace {

const vision::LineClasses classes{{"A", "B"}};  // and blank, traces, lost: five in all

cv::Mat logOf(const cv::Mat& shares)
{
    cv::Mat logs;
    cv::log(shares, logs);
    return logs;
}

cv::Mat randomShares(int steps, std::uint32_t seed)
{
    std::mt19937 dice(seed);
    std::uniform_real_distribution<float> share(0.02F, 1);
    cv::Mat shares(steps, classes.count(), CV_32F);
    for (int t = 0; t < steps; ++t) {
        for (int c = 0; c < shares.cols; ++c)
            shares.at<float>(t, c) = share(dice);
        shares.row(t) /= cv::sum(shares.row(t))[0];
    }
    return shares;
}

using Line = std::vector<int>;

// The definition itself: every alignment, with repeats joined and blanks dropped, adds to its line.
std::map<Line, double> allLines(const cv::Mat& shares)
{
    std::map<Line, double> lines;
    const int steps = shares.rows, count = shares.cols;
    const int alignments = static_cast<int>(std::lround(std::pow(count, steps)));
    for (int code = 0; code < alignments; ++code) {
        double share = 1;
        Line line;
        int before = 0, rest = code;
        for (int t = 0; t < steps; ++t, rest /= count) {
            const int c = rest % count;
            share *= shares.at<float>(t, c);
            if (c != 0 && c != before)
                line.push_back(c);
            before = c;
        }
        lines[line] += share;
    }
    return lines;
}

Line bestOf(const vision::DecodedLine& decoded)
{
    Line line;
    for (const vision::DecodedPlace& place : decoded.places)
        line.push_back(place.shares.front().of_class);
    return line;
}

vision::DecodedLine decode(const cv::Mat& shares)
{
    return vision::decodeLine(logOf(shares), classes, nullptr, {.beam = 2000});
}

}  // namespace

TEST_CASE("Alignments that give one line are summed", "[vision][ctc]")
{
    // Two steps, A with 0.4, blank with 0.6: the best single alignment is blank, blank (0.36), but
    // A, A and A, blank and blank, A together make the line "A" (0.16 + 0.24 + 0.24 = 0.64).
    cv::Mat shares = (cv::Mat_<float>(2, 5) << 0.6F, 0.4F, 0, 0, 0, 0.6F, 0.4F, 0, 0, 0);
    const vision::DecodedLine decoded = decode(shares + 1e-9F);
    REQUIRE(decoded.places.size() == 1);
    CHECK(decoded.share == Approx(0.64).margin(1e-4));
    CHECK(decoded.places[0].shares.front().of_class == 1);
    CHECK(decoded.places[0].shares.front().share == Approx(0.64).margin(1e-4));
}

TEST_CASE("The line found is the likeliest, with its share, as the definition has it",
          "[vision][ctc]")
{
    for (std::uint32_t seed = 1; seed <= 30; ++seed) {
        CAPTURE(seed);
        const cv::Mat shares = randomShares(5, seed);
        const std::map<Line, double> all = allLines(shares);
        const auto best =
            std::max_element(all.begin(), all.end(),
                             [](const auto& a, const auto& b) { return a.second < b.second; });
        const vision::DecodedLine decoded = decode(shares);
        REQUIRE(decoded.places.size() == best->first.size());
        CHECK(decoded.share == Approx(best->second).epsilon(1e-4));
        CHECK(decoded.seen == Approx(best->second).epsilon(1e-4));
    }
}

TEST_CASE("What else may stand in a place has the share that the definition gives it",
          "[vision][ctc]")
{
    for (std::uint32_t seed = 40; seed <= 60; ++seed) {
        CAPTURE(seed);
        const cv::Mat shares = randomShares(5, seed);
        std::map<Line, double> all = allLines(shares);
        const auto best =
            std::max_element(all.begin(), all.end(),
                             [](const auto& a, const auto& b) { return a.second < b.second; });
        const Line line = best->first;
        const vision::DecodedLine decoded = decode(shares);
        REQUIRE(decoded.places.size() == line.size());
        for (std::size_t i = 0; i < line.size(); ++i) {
            Line without = line;
            without.erase(without.begin() + static_cast<std::ptrdiff_t>(i));
            double sum = all[without];
            Line other = line;
            for (other[i] = 1; other[i] < classes.count(); ++other[i])
                sum += all[other];
            for (const vision::ClassShare& share : decoded.places[i].shares) {
                other[i] = share.of_class;
                CHECK(share.share == Approx(all[other] / sum).epsilon(1e-3));
            }
        }
    }
}

TEST_CASE("A narrow search finds what a wide one finds where the line is plain", "[vision][ctc]")
{
    cv::Mat shares(8, classes.count(), CV_32F, cv::Scalar(0.02));
    const int plain[] = {0, 1, 1, 0, 1, 2, 0, 4};  // A, A again behind a blank, B, lost
    for (int t = 0; t < shares.rows; ++t)
        shares.at<float>(t, plain[t]) = 0.92F;
    const vision::DecodedLine narrow =
        vision::decodeLine(logOf(shares), classes, nullptr, {.beam = 4});
    CHECK(bestOf(narrow) == Line{1, 1, 2, 4});
    REQUIRE(narrow.places.size() == 4);
    for (std::size_t i = 0; i + 1 < narrow.places.size(); ++i)
        CHECK(narrow.places[i].first_step < narrow.places[i + 1].first_step);
    CHECK(narrow.places[0].first_step == Approx(1).margin(0.5));
}

TEST_CASE("Nothing seen gives no places, and tables that do not fit are refused", "[vision][ctc]")
{
    cv::Mat blank(6, classes.count(), CV_32F, cv::Scalar(0.001));
    blank.col(0).setTo(0.996);
    CHECK(decode(blank).places.empty());
    CHECK_THROWS_AS(vision::decodeLine(cv::Mat(3, 4, CV_32F), classes, nullptr),
                    std::invalid_argument);
    CHECK_THROWS_AS(vision::decodeLine(cv::Mat(3, 5, CV_8U), classes, nullptr),
                    std::invalid_argument);
    for (const double weight : {-0.1, 11.0, std::nan("")})
        CHECK_THROWS_AS(
            vision::decodeLine(logOf(blank), classes, nullptr, {.writing_weight = weight}),
            std::invalid_argument);
    CHECK_THROWS_AS(vision::decodeLine(logOf(blank), classes, nullptr, {.beam = 0}),
                    std::invalid_argument);
}
