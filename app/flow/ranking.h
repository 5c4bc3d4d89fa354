#pragma once

#include <string>
#include <vector>

#include "models/candidates.h"
#include "models/experience.h"
#include "models/reading.h"

namespace flow {

// A register made ready for ranking, with what an archive teaches; keep it where there are several
// stamps. Any number of threads may ask.
class Ranking {
public:
    explicit Ranking(models::MakerRegister known, const models::Experience& experience = {});

    // The candidates of readings taken together as marks of one item, and the unread cell that
    // would settle most; its places are those in the readings as given. Parts of lines that
    // somebody said are for something else than maker or date say nothing of either.
    models::CandidateList rank(const std::vector<models::Reading>& readings,
                               const std::string& type_id) const;
    // What letters alone can mean, as models::dateItem asks for it.
    models::CandidateList rankLetters(const models::ItemEvidence& evidence) const;

private:
    models::CandidateRanker ranker_;
    models::CandidateOptions options_;
};

}  // namespace flow
