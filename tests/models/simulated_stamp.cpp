#include "tests/models/simulated_stamp.h"

#include <algorithm>
#include <set>
#include <vector>

#include "models/confusion.h"
#include "models/edtf.h"
#include "models/letters.h"
#include "models/mark_spellings.h"
#include "models/year_weights.h"

namespace {

using models::Cell;
using models::CellState;

bool happens(std::mt19937& random, double probability)
{
    return std::uniform_real_distribution<double>(0, 1)(random) < probability;
}

std::size_t pick(std::mt19937& random, const std::vector<double>& weights)
{
    return std::discrete_distribution<std::size_t>(weights.begin(), weights.end())(random);
}

// A letter that is taken for `truth`, itself left out, as the published confusions have it.
std::string lookAlike(const std::string& truth, std::mt19937& random)
{
    static const std::vector<std::string> letters =
        models::charactersOf("ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789&/.");
    std::vector<double> weights;
    for (const std::string& letter : letters)
        weights.push_back(
            letter == truth ? 0 : models::ConfusionTable::published().probability(truth, letter));
    return letters[pick(random, weights)];
}

Cell wornCell(const std::string& truth, std::mt19937& random, const SimulationOptions& options)
{
    Cell cell = models::clearCell(truth);
    const double lot = std::uniform_real_distribution<double>(0, 1)(random);
    if (lot < options.lost + options.traces) {
        cell.state = lot < options.lost ? CellState::Lost : CellState::Traces;
        cell.alternatives.clear();
    } else if (lot < options.lost + options.traces + options.doubtful) {
        cell.state = CellState::Doubtful;  // 0.6 sure, and right as often
        const std::string seen = happens(random, 0.6) ? truth : lookAlike(truth, random);
        cell.alternatives = {{seen, 0.6}};
    } else if (happens(random, options.slip)) {
        cell.alternatives.front().text = lookAlike(truth, random);
    }
    return cell;
}

models::Line wornLine(const std::string& text, std::mt19937& random,
                      const SimulationOptions& options)
{
    models::Line line;
    for (const std::string& letter : models::charactersOf(text)) {
        const bool blank = letter == "." || letter == " ";
        if (happens(random, blank ? 0.15 : 0.015))
            continue;  // left no trace, not even a place
        line.cells.push_back(wornCell(letter, random, options));
    }
    return line;
}

int drawYear(const std::vector<double>& weights, const models::YearRange& range,
             std::mt19937& random)
{
    return range.first + static_cast<int>(pick(random, weights));
}

std::string markText(const models::MakerRegister& known, const models::Maker& maker, int year,
                     const models::YearRange& range, std::mt19937& random)
{
    std::vector<const models::Mark*> marks;
    std::vector<double> weights;
    for (const models::Mark& mark : known.marks) {
        if (mark.maker_id != maker.maker_id)
            continue;
        marks.push_back(&mark);
        const auto years = models::softYears(mark.from.empty() ? maker.from : mark.from,
                                             mark.to.empty() ? maker.to : mark.to, range);
        weights.push_back(years[static_cast<std::size_t>(year - range.first)]);
    }
    const auto spellings =
        models::spellingsOf(models::plainText(marks[pick(random, weights)]->line), known.spellings);
    std::vector<double> shares;
    for (const models::SpelledText& spelling : spellings)
        shares.push_back(spelling.share);
    return spellings[pick(random, shares)].text;
}

// Initials or a name in the manner of marks that no maker of the register has.
std::string strangerText(const models::MakerRegister& known, std::mt19937& random)
{
    static const std::vector<std::string> names = {"QUORVANE",  "ILDERSTRAW", "BRENNOWAY",
                                                   "TAMMERISK", "OXLINGATE",  "VARRINDOLE"};
    std::set<std::string> taken;
    for (const models::Mark& mark : known.marks)
        taken.insert(models::plainText(mark.line));
    const auto initial = [&] {
        return std::string(1, static_cast<char>('A' + pick(random, std::vector<double>(26, 1))));
    };
    while (true) {
        const std::size_t kind = pick(random, {1, 1, 1, 1});
        std::string text = initial();
        if (kind == 0)
            text.append(".").append(initial()).append(". & CO");
        else if (kind == 1)
            text.append(". & ").append(initial()).append(".");
        else
            text = names[pick(random, std::vector<double>(names.size(), 1))] +
                   (kind == 2 ? " LTD" : " & SONS");
        if (taken.count(text) == 0)
            return text;
    }
}

std::string dateText(int year, std::mt19937& random)
{
    const std::string full = std::to_string(year), two = full.substr(2);
    const std::size_t form = pick(random, {6, 1.5, 2.5});
    if (form == 0)
        return full;
    if (form == 1)
        return two;
    return std::to_string(1 + pick(random, std::vector<double>(12, 1))) + "/" + two;
}

std::string otherText(std::mt19937& random)
{
    static const std::vector<std::string> texts = {
        "S.H. 12", "S.H. 31", "M", "2", "36", "Q3", "PATTERN 1937", "4021", "LAMP POUCH", "17/3"};
    return texts[pick(random, std::vector<double>(texts.size(), 1))];
}

}  // namespace

SimulatedStamp simulateStamp(const models::MakerRegister& known, std::mt19937& random,
                             const SimulationOptions& options)
{
    SimulatedStamp stamp;
    const models::YearRange range = models::yearsOf(known);
    const models::Maker& maker =
        known.makers[pick(random, std::vector<double>(known.makers.size(), 1))];
    stamp.year = drawYear(models::softYears(maker.from, maker.to, range), range, random);
    const bool stranger = happens(random, options.unknown_share);
    if (!stranger)
        stamp.maker_id = maker.maker_id;
    if (!happens(random, options.markless))
        stamp.reading.lines.push_back(
            wornLine(stranger ? strangerText(known, random)
                              : markText(known, maker, stamp.year, range, random),
                     random, options));
    if (happens(random, options.dated))
        stamp.reading.lines.push_back(wornLine(dateText(stamp.year, random), random, options));
    if (happens(random, options.with_other_line))
        stamp.reading.lines.push_back(wornLine(otherText(random), random, options));
    std::shuffle(stamp.reading.lines.begin(), stamp.reading.lines.end(), random);
    return stamp;
}
