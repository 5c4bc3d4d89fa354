#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "tests/bench/scoring.h"

namespace bench {

struct Row {
    std::string reader;
    Score score;
    double median_seconds = 0;
    std::optional<double> peak_mib;
};

// A Markdown table, one row a reader; "-" where there was nothing to judge.
std::string tableOf(const std::vector<Row>& rows);

// What was measured where: "2001-02-03, commit 0123abc with changes", processor, cores, memory.
std::string circumstances(const std::filesystem::path& repository);

}  // namespace bench
