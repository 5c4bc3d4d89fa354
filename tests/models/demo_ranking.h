#pragma once

#include <string>
#include <vector>

#include "models/candidates.h"

// Rankings against the demo register, for tests.
const models::MakerRegister& demoRegister();

// The reading of a text in the typed notation; the test fails on a fault.
models::Reading readingOf(const std::string& typed);

// Ranks an item's stamps, each in the typed notation.
models::CandidateList rankItem(const std::vector<std::string>& stamps, const std::string& type = "",
                               const models::CandidateOptions& options = {});
models::CandidateList rank(const std::string& typed);

// 0 when the maker is not listed.
double probabilityOf(const models::CandidateList& list, const std::string& maker_id);

bool hasReason(const models::Candidate& candidate, const std::string& part);

models::CandidateOptions atMost(std::size_t most);
inline const models::CandidateOptions all_makers = atMost(100);
