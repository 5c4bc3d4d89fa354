#include "tests/bench/simulate_settling.h"

#include <utility>
#include <vector>

namespace {

// So many that the truth is among them unless it is hardly possible.
constexpr std::size_t listed = 300;

using Place = std::pair<std::size_t, std::size_t>;  // line and cell

double probabilityOf(const models::CandidateList& list, const std::string& maker_id)
{
    if (maker_id.empty())
        return list.unknown_maker;
    for (const models::Candidate& candidate : list.candidates)
        if (candidate.maker_id == maker_id)
            return candidate.probability;
    return 0;
}

std::vector<Place> unreadPlaces(const models::Reading& reading)
{
    std::vector<Place> places;
    for (std::size_t l = 0; l < reading.lines.size(); ++l)
        for (std::size_t c = 0; c < reading.lines[l].cells.size(); ++c)
            if (reading.lines[l].cells[c].alternatives.empty())
                places.emplace_back(l, c);
    return places;
}

}  // namespace

void SettlingGain::add(const models::CandidateRanker& ranker, const SimulatedMark& mark,
                       models::CandidateOptions options, Dice& dice)
{
    const std::vector<Place> unread = unreadPlaces(mark.reading);
    if (unread.size() < 2)
        return;
    options.most = listed;
    options.find_settling_cell = true;
    const models::CandidateList list = ranker.rank({{mark.reading}, ""}, options);
    options.find_settling_cell = false;
    const double now = probabilityOf(list, mark.maker_id);
    const auto gain = [&](const Place& place) {
        models::Reading read = mark.reading;
        read.lines[place.first].cells[place.second] =
            models::clearCell(mark.letters[place.first][place.second]);
        return probabilityOf(ranker.rank({{read}, ""}, options), mark.maker_id) - now;
    };
    const double lot = gain(dice.among(unread));
    ++count_;
    before_ += now;
    lot_ += lot;
    // Where the ranking names none, nobody is sent to look.
    if (list.settling)
        settling_ += gain({list.settling->line, list.settling->cell});
}

void SettlingGain::add(const SettlingGain& others)
{
    count_ += others.count_;
    before_ += others.before_;
    settling_ += others.settling_;
    lot_ += others.lot_;
}
