#include "app/flow/ranking.h"

#include <algorithm>
#include <utility>

namespace flow {

namespace {

models::ReadingErrors errorsWith(const models::ConfusionTable& confusions)
{
    models::ReadingErrors errors;
    errors.confusions = confusions;
    return errors;
}

bool speaksOfMaker(models::LineRole role)
{
    return role == models::LineRole::Unknown || role == models::LineRole::Maker ||
           role == models::LineRole::Date;
}

// A line without the parts that somebody said are for something else than maker or date, and where
// each cell stood in it. A part's edge is its text's end: another part is known to begin there.
struct Narrowed {
    models::Line line;
    std::vector<std::size_t> cells;
};

Narrowed narrowed(const models::Line& line)
{
    Narrowed result{line, {}};
    result.line.cells.clear();
    const auto isLeftOut = [&](std::size_t cell) {
        return std::any_of(line.spans.begin(), line.spans.end(), [&](const auto& span) {
            return cell >= span.first_cell && cell < span.end_cell && !speaksOfMaker(span.role);
        });
    };
    for (std::size_t cell = 0; cell < line.cells.size(); ++cell)
        if (!isLeftOut(cell)) {
            result.line.cells.push_back(line.cells[cell]);
            result.cells.push_back(cell);
        }
    if (result.cells.size() == line.cells.size())
        return result;
    result.line.spans.clear();
    if (isLeftOut(0))
        result.line.left_end = models::LineEnd::Complete;
    if (isLeftOut(line.cells.size() - 1))
        result.line.right_end = models::LineEnd::Complete;
    return result;
}

// What of the readings speaks of maker and date, and where it stood.
struct Speaking {
    std::vector<models::Reading> stamps;
    struct Place {
        std::size_t stamp = 0, line = 0;
        std::vector<std::size_t> cells;
    };
    std::vector<std::vector<Place>> places;  // by stamp and line of `stamps`
};

Speaking speakingOf(const std::vector<models::Reading>& readings)
{
    Speaking speaking;
    for (std::size_t stamp = 0; stamp < readings.size(); ++stamp) {
        models::Reading kept = readings[stamp];
        kept.lines.clear();
        std::vector<Speaking::Place> places;
        for (std::size_t line = 0; line < readings[stamp].lines.size(); ++line) {
            Narrowed part = narrowed(readings[stamp].lines[line]);
            if (part.cells.empty() && !readings[stamp].lines[line].cells.empty())
                continue;
            kept.lines.push_back(std::move(part.line));
            places.push_back({stamp, line, std::move(part.cells)});
        }
        if (kept.lines.empty())
            continue;
        speaking.stamps.push_back(std::move(kept));
        speaking.places.push_back(std::move(places));
    }
    return speaking;
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
    Speaking speaking = speakingOf(readings);
    evidence.stamps = std::move(speaking.stamps);
    models::CandidateList list = ranker_.rank(evidence, options_);
    if (list.settling) {
        const Speaking::Place& place =
            speaking.places.at(list.settling->stamp).at(list.settling->line);
        list.settling->stamp = place.stamp;
        list.settling->line = place.line;
        list.settling->cell = place.cells.at(list.settling->cell);
    }
    return list;
}

models::CandidateList Ranking::rankLetters(const models::ItemEvidence& evidence) const
{
    return ranker_.rank(evidence);
}

}  // namespace flow
