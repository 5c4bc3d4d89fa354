#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include "models/maker_register.h"

// A made-up trade, large enough to measure the ranking: a register of many makers, and makers that
// it does not hold, all from one source. Names are put together from syllables; any likeness to a
// real firm is chance.
struct SimulatedTrade {
    models::MakerRegister known;
    models::MakerRegister strangers;  // makers of the same trade that `known` does not hold
};

// Initials are as crowded as those of real firms: a few letters begin most names, some surnames are
// common to several firms, and one mark in four is initials alone. Makers work 6 to 60 years within
// 1860 to 1959, so that the ranking looks at 120 years.
SimulatedTrade simulateTrade(std::size_t makers, std::size_t strangers, std::uint32_t seed);
