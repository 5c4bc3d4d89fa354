#include <algorithm>
#include <array>
#include <catch2/catch.hpp>
#include <cmath>
#include <filesystem>
#include <iomanip>
#include <iostream>
#include <sstream>
#include <variant>

#include "models/candidates.h"
#include "models/edtf_days.h"
#include "tests/models/simulated_stamp.h"

namespace {

constexpr std::size_t bins = 5;

// How often the first answer (a maker, or "none of the known") was right, by the probability that
// it was given.
struct Reliability {
    std::array<double, bins> count{}, given{}, right{};
    double year_in_set = 0, dated = 0;

    void add(double probability, bool is_right)
    {
        const auto bin = std::min<std::size_t>(
            bins - 1, static_cast<std::size_t>(probability * static_cast<double>(bins)));
        count[bin] += 1;
        given[bin] += probability;
        right[bin] += is_right ? 1 : 0;
    }

    // Mean gap between the probability given and how often it came true, weighed by count.
    double expectedError() const
    {
        double error = 0, all = 0;
        for (std::size_t bin = 0; bin < bins; ++bin) {
            error += std::abs(given[bin] - right[bin]);
            all += count[bin];
        }
        return error / all;
    }

    std::string table() const
    {
        std::ostringstream text;
        text << "first answer: given, came true, of how many\n"
             << std::fixed << std::setprecision(3);
        for (std::size_t bin = 0; bin < bins; ++bin)
            if (count[bin] > 0)
                text << "  " << given[bin] / count[bin] << "  " << right[bin] / count[bin] << "  "
                     << static_cast<int>(count[bin]) << "\n";
        text << "expected calibration error (five bins of equal width) " << expectedError()
             << "\ntrue year within the set of 95 %, where dated: " << year_in_set / dated << " of "
             << static_cast<int>(dated) << "\n";
        return text.str();
    }
};

Reliability measure(int stamps, unsigned seed)
{
    const models::MakerRegister known =
        models::loadRegister(std::filesystem::path(WEFTMARK_SOURCE_DIR) / "models/register");
    std::mt19937 random(seed);
    Reliability reliability;
    for (int i = 0; i < stamps; ++i) {
        const SimulatedStamp stamp = simulateStamp(known, random);
        const models::CandidateList list = models::rankCandidates({{stamp.reading}, ""}, known);
        const models::Candidate& first = list.candidates.front();
        if (list.unknown_maker > first.probability)
            reliability.add(list.unknown_maker, stamp.maker_id.empty());
        else
            reliability.add(first.probability, stamp.maker_id == first.maker_id);
        if (first.maker_id != stamp.maker_id || !first.edtf)
            continue;
        reliability.dated += 1;
        reliability.year_in_set +=
            models::couldBeIn(std::get<models::Edtf>(models::parseEdtf(*first.edtf)), stamp.year);
    }
    return reliability;
}

}  // namespace

TEST_CASE("A probability given comes true as often as it says", "[models][candidates]")
{
    const Reliability reliability = measure(500, 1921);
    INFO(reliability.table());
    // 500 draws leave about 0.02 of chance in the whole and 0.08 in a bin of a few dozen.
    CHECK(reliability.expectedError() < 0.06);
    for (std::size_t bin = 0; bin < bins; ++bin)
        if (reliability.count[bin] >= 60)
            CHECK(std::abs(reliability.given[bin] - reliability.right[bin]) <
                  0.12 * reliability.count[bin]);
    CHECK(reliability.year_in_set > 0.88 * reliability.dated);
}

// Run by hand: models_tests "[reliability]".
TEST_CASE("The reliability table of the ranking", "[.][reliability]")
{
    std::cout << measure(4000, 1958).table();
}
