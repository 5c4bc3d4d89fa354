#include "tests/models/demo_ranking.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>

#include "models/typed_notation.h"

const models::MakerRegister& demoRegister()
{
    static const models::MakerRegister known =
        models::loadRegister(std::filesystem::path(WEFTMARK_SOURCE_DIR) / "models/register");
    return known;
}

models::Reading readingOf(const std::string& typed)
{
    const models::ParsedNotation parsed = models::parseTyped(typed);
    REQUIRE_FALSE(parsed.fault);
    models::Reading reading;
    reading.lines = parsed.lines;
    return reading;
}

models::CandidateList rankItem(const std::vector<std::string>& stamps, const std::string& type,
                               const models::CandidateOptions& options)
{
    models::ItemEvidence evidence;
    evidence.type_id = type;
    for (const std::string& typed : stamps)
        evidence.stamps.push_back(readingOf(typed));
    return models::rankCandidates(evidence, demoRegister(), options);
}

models::CandidateList rank(const std::string& typed)
{
    return rankItem({typed});
}

double probabilityOf(const models::CandidateList& list, const std::string& maker_id)
{
    for (const models::Candidate& candidate : list.candidates)
        if (candidate.maker_id == maker_id)
            return candidate.probability;
    return 0;
}

bool hasReason(const models::Candidate& candidate, const std::string& part)
{
    return std::any_of(
        candidate.reasons.begin(), candidate.reasons.end(),
        [&](const std::string& reason) { return reason.find(part) != std::string::npos; });
}

models::CandidateOptions atMost(std::size_t most)
{
    models::CandidateOptions options;
    options.most = most;
    return options;
}
