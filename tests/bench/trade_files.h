#pragma once

#include <filesystem>

#include "tests/bench/simulate_trade.h"

// The makers that a made-up trade knows, with their marks and spellings, as a register's files.
void writeTrade(const std::filesystem::path& folder, const SimulatedTrade& trade);
