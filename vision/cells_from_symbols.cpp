#include <algorithm>

#include "vision/cell_states.h"
#include "vision/line_certainty.h"
#include "vision/symbol_alignment.h"

namespace vision {

namespace {

void addRival(std::vector<models::Alternative>& rivals, const std::string& text, double weight)
{
    const auto same = std::find_if(rivals.begin(), rivals.end(),
                                   [&](const auto& rival) { return rival.text == text; });
    if (same == rivals.end())
        rivals.push_back({text, weight});
    else
        same->certainty = std::max(same->certainty, weight);
}

// Everything either rendering held possible here but the chosen character, by weight.
std::vector<models::Alternative> rivalsOf(const RawSymbol& symbol, const RawSymbol* other)
{
    std::vector<models::Alternative> rivals;
    for (const models::Alternative& rival : symbol.rivals)
        addRival(rivals, rival.text, rival.certainty);
    if (other != nullptr) {
        addRival(rivals, other->text, other->score);
        for (const models::Alternative& rival : other->rivals)
            addRival(rivals, rival.text, rival.certainty);
    }
    std::erase_if(rivals, [&](const auto& rival) { return rival.text == symbol.text; });
    std::stable_sort(rivals.begin(), rivals.end(),
                     [](const auto& a, const auto& b) { return a.certainty > b.certainty; });
    if (rivals.size() >= most_alternatives)
        rivals.resize(most_alternatives - 1);
    return rivals;
}

models::Cell cellFrom(const RawSymbol& symbol, const RawSymbol* other, double certainty,
                      const std::string& by)
{
    models::Cell cell;
    cell.by = by;
    cell.left_px = symbol.left_px;
    cell.right_px = symbol.right_px;
    cell.alternatives.push_back({symbol.text, certainty});
    const std::vector<models::Alternative> rivals = rivalsOf(symbol, other);
    double sum = 0;
    for (const models::Alternative& rival : rivals)
        sum += rival.certainty;
    // What the best leaves over goes to the rivals, less a part for what nobody thought of.
    const double rest = 0.8 * (1 - certainty);
    for (const models::Alternative& rival : rivals)
        cell.alternatives.push_back(
            {rival.text, std::min(certainty, rest * rival.certainty / std::max(sum, 1e-9))});
    cell.state = stateAt(certainty);
    return cell;
}

models::Cell spaceBetween(const RawSymbol& before, const RawSymbol& after, bool agreed,
                          const std::string& by)
{
    models::Cell cell;
    cell.by = by;
    cell.alternatives.push_back({" ", agreed ? 0.95 : 0.6});
    cell.state = agreed ? models::CellState::Clear : models::CellState::Doubtful;
    cell.left_px = before.right_px;
    cell.right_px = std::max(before.right_px, after.left_px);
    return cell;
}

models::Cell tracesIn(const cv::Rect2d& box, const std::string& by)
{
    models::Cell traces;
    traces.state = models::CellState::Traces;
    traces.most = std::nullopt;
    traces.by = by;
    traces.left_px = box.x;
    traces.right_px = box.x + box.width;
    return traces;
}

bool holdsLetterOrDigit(const std::vector<RawSymbol>& symbols)
{
    return std::any_of(symbols.begin(), symbols.end(),
                       [](const RawSymbol& symbol) { return isLetterOrDigit(symbol.text); });
}

}  // namespace

models::Line lineFrom(const LineReadings& readings, const std::string& by)
{
    const cv::Rect2d& box = readings.box;
    models::Line line;
    line.box_px = {box.x, box.y, box.width, box.height};
    if (!holdsLetterOrDigit(readings.chosen)) {  // a speck or two read as a stop or a quote
        line.cells.push_back(tracesIn(box, by));
        line.certainty = 0;
        return line;
    }
    const std::vector<CellTraits> traits = cellTraits(readings);
    const std::vector<int> partner = alignSymbols(readings.chosen, readings.other);
    for (std::size_t i = 0; i < readings.chosen.size(); ++i) {
        const RawSymbol& symbol = readings.chosen[i];
        const RawSymbol* other =
            partner[i] >= 0 ? &readings.other[static_cast<std::size_t>(partner[i])] : nullptr;
        if (i > 0 && symbol.starts_word)
            line.cells.push_back(spaceBetween(readings.chosen[i - 1], symbol,
                                              other != nullptr && other->starts_word, by));
        line.cells.push_back(
            cellFrom(symbol, other, cellModel().probability(termsOf(traits[i])), by));
    }
    line.certainty = lineModel().probability(termsOf(lineTraits(readings)));
    return line;
}

}  // namespace vision
