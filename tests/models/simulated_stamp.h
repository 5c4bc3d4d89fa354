#pragma once

#include <random>
#include <string>

#include "models/maker_register.h"
#include "models/reading.h"

// Stamps drawn as the ranking's model supposes them, so that its probabilities can be checked
// against how often they come true.
struct SimulatedStamp {
    models::Reading reading;
    std::string maker_id;  // empty: a maker that the register does not know
    int year = 0;
};

struct SimulationOptions {
    double unknown_share = 0.1;  // of stamps by makers that the register does not know
    double lost = 0.12, traces = 0.06, doubtful = 0.2, slip = 0.01;  // of letters
    double dated = 0.6, with_other_line = 0.4, markless = 0.15;      // of stamps
};

// One stamp: a maker, a year in which it worked, one of its marks of that year in one spelling,
// perhaps a date and a line of something else, each letter worn by chance.
SimulatedStamp simulateStamp(const models::MakerRegister& known, std::mt19937& random,
                             const SimulationOptions& options = {});
