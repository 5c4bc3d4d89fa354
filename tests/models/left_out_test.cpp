// What the ranking's search leaves out, against the same ranking with nothing left out.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <random>

#include "models/maker_posterior.h"
#include "tests/models/demo_ranking.h"
#include "tests/models/simulated_stamp.h"

namespace {

models::Posterior posteriorOf(const models::Reading& reading,
                              const models::CompiledRegister& compiled,
                              const models::LeftOut& left_out)
{
    std::vector<models::StampEvidence> stamps;
    stamps.emplace_back(reading, compiled, left_out);
    return models::MakerWeigher(stamps, demoRegister(), compiled, nullptr, {}).weigh();
}

double largestDifference(const models::Posterior& a, const models::Posterior& b)
{
    double largest = std::abs(a.unknown_maker - b.unknown_maker);
    for (std::size_t m = 0; m < a.makers.size(); ++m)
        largest = std::max(largest, std::abs(a.makers[m].probability - b.makers[m].probability));
    return largest;
}

}  // namespace

TEST_CASE("What is left out of the search moves no share by more than the header says",
          "[models][candidates]")
{
    const models::CompiledRegister compiled(demoRegister());
    std::mt19937 random(1937);
    double largest = 0, sum = 0;
    constexpr int stamps = 200;
    for (int i = 0; i < stamps; ++i) {
        SimulationOptions wear;
        wear.lost = 0.05 * (i % 8);
        const models::Reading reading = simulateStamp(demoRegister(), random, wear).reading;
        const models::Posterior whole = posteriorOf(reading, compiled, {0, 0, 0});
        const double difference = largestDifference(whole, posteriorOf(reading, compiled, {}));
        largest = std::max(largest, difference);
        sum += difference;
    }
    CAPTURE(largest, sum / stamps);
    CHECK(largest < 0.01);
    CHECK(sum / stamps < 0.001);
    CHECK(largest > 0);  // something is left out
}
