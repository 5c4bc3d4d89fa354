#include "app/flow/ranking.h"

namespace flow {

namespace {

models::ReadingErrors errorsWith(const models::ConfusionTable& confusions)
{
    models::ReadingErrors errors;
    errors.confusions = confusions;
    return errors;
}

}  // namespace

Ranking::Ranking(models::MakerRegister known, const models::Experience& experience)
    : ranker_(std::move(known), errorsWith(experience.confusions))
{
    options_.archive_counts = experience.maker_counts;
    options_.find_settling_cell = true;
}

models::CandidateList Ranking::rank(const std::vector<models::Reading>& readings,
                                    const std::string& type_id) const
{
    models::ItemEvidence evidence;
    evidence.type_id = type_id;
    std::vector<std::size_t> stamps;  // those with lines
    for (std::size_t i = 0; i < readings.size(); ++i)
        if (!readings[i].lines.empty()) {
            evidence.stamps.push_back(readings[i]);
            stamps.push_back(i);
        }
    models::CandidateList list = ranker_.rank(evidence, options_);
    if (list.settling)
        list.settling->stamp = stamps[list.settling->stamp];
    return list;
}

}  // namespace flow
