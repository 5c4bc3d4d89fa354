#include "tests/bench/simulate_wear.h"

#include <algorithm>
#include <map>
#include <utility>

#include "models/letters.h"
#include "models/mark_spellings.h"

namespace {

using models::Cell;
using models::CellState;

// A line with the letter behind each cell.
struct WornLine {
    models::Line line;
    std::vector<std::string> letters;

    void add(Cell cell, const std::string& letter)
    {
        cell.by = "line-reader";
        line.cells.push_back(std::move(cell));
        letters.push_back(letter);
    }
};

class LetterWear {
public:
    LetterWear(const Wear& wear, const std::vector<LookAlikePair>& pairs, Dice& dice)
        : wear_(wear), dice_(dice)
    {
        for (const LookAlikePair& pair : pairs) {
            look_alikes_[pair.a].push_back(pair.b);
            look_alikes_[pair.b].push_back(pair.a);
        }
    }

    WornLine wornLine(const std::string& text);
    void cutAnEnd(WornLine& line);

private:
    bool happens(double probability) { return dice_.between(0, 1) < probability; }
    std::string lookAlike(const std::string& truth);
    Cell wornCell(const std::string& truth);
    Cell doubtfulCell(const std::string& truth);

    const Wear& wear_;
    Dice& dice_;
    std::map<std::string, std::vector<std::string>> look_alikes_;
};

// Most often one of its look-alikes, seldom whatever letter.
std::string LetterWear::lookAlike(const std::string& truth)
{
    const auto found = look_alikes_.find(truth);
    if (found == look_alikes_.end() || happens(slip_is_any_letter))
        return anyLetterSeen(dice_);
    return dice_.among(found->second);
}

// Two letters in three are named alone, others with a second choice.
Cell LetterWear::doubtfulCell(const std::string& truth)
{
    Cell cell;
    cell.state = CellState::Doubtful;
    const bool right = happens(wear_.doubtful_right);
    const std::string first = right ? truth : lookAlike(truth);
    cell.alternatives = {{first, wear_.doubtful_right}};
    if (!happens(1.0 / 3))
        return cell;
    // A second choice is right in half of the rest, so its certainty is half of what is left.
    const std::string second = !right && happens(0.5) ? truth : lookAlike(first);
    if (second != first)
        cell.alternatives.push_back({second, (1 - wear_.doubtful_right) / 2});
    return cell;
}

Cell LetterWear::wornCell(const std::string& truth)
{
    const double lot = dice_.between(0, 1);
    Cell cell = models::clearCell(truth);
    if (lot < wear_.lost + wear_.traces) {
        cell.state = lot < wear_.lost ? CellState::Lost : CellState::Traces;
        cell.alternatives.clear();
        return cell;
    }
    if (lot < wear_.lost + wear_.traces + wear_.doubtful)
        cell = doubtfulCell(truth);
    else if (happens(wear_.slip))
        cell = models::clearCell(lookAlike(truth));
    if (happens(wear_.any_letter))
        cell.alternatives.front().text = anyLetterSeen(dice_);
    return cell;
}

WornLine LetterWear::wornLine(const std::string& text)
{
    WornLine line;
    for (const std::string& letter : models::charactersOf(text)) {
        if (happens(wear_.stray))
            line.add(models::clearCell(anyLetterSeen(dice_)), "");
        const bool blank = letter == " " || letter == ".";
        if (happens(blank ? std::max(0.15, wear_.gone) : wear_.gone))
            continue;
        if (letter == " ") {  // a space is seen by what stands beside it
            line.add(models::clearCell(letter), letter);
            continue;
        }
        line.add(wornCell(letter), letter);
    }
    return line;
}

// A hem has taken one to four characters, and the reader saw that it did.
void LetterWear::cutAnEnd(WornLine& worn)
{
    std::vector<Cell>& cells = worn.line.cells;
    if (!happens(wear_.cut) || cells.size() < 6)
        return;
    const long taken = dice_.whole(1, 4);
    if (happens(0.5)) {
        cells.erase(cells.begin(), cells.begin() + taken);
        worn.letters.erase(worn.letters.begin(), worn.letters.begin() + taken);
        worn.line.left_end = models::LineEnd::CutOff;
    } else {
        cells.erase(cells.end() - taken, cells.end());
        worn.letters.erase(worn.letters.end() - taken, worn.letters.end());
        worn.line.right_end = models::LineEnd::CutOff;
    }
}

const std::string& markOf(const models::MakerRegister& trade, const models::Maker& maker,
                          Dice& dice)
{
    // A register's marks stand by maker.
    const auto begin =
        std::partition_point(trade.marks.begin(), trade.marks.end(), [&](const models::Mark& mark) {
            return std::make_pair(mark.maker_id.size(), mark.maker_id) <
                   std::make_pair(maker.maker_id.size(), maker.maker_id);
        });
    auto end = begin;
    while (end != trade.marks.end() && end->maker_id == maker.maker_id)
        ++end;
    return (begin + dice.whole(0, static_cast<int>(end - begin) - 1))->text;
}

std::string spelt(const std::string& text, const models::MakerRegister& trade, Dice& dice)
{
    const auto spellings = models::spellingsOf(text, trade.spellings);
    double lot = dice.between(0, 1);
    for (const models::SpelledText& spelling : spellings)
        if ((lot -= spelling.share) < 0)
            return spelling.text;
    return text;
}

std::string dateText(int year, Dice& dice)
{
    const std::string full = std::to_string(year), two = full.substr(2);
    const int form = dice.whole(1, 10);
    if (form <= 6)
        return full;
    return form <= 8 ? two : std::to_string(dice.whole(1, 12)).append("/").append(two);
}

std::string otherText(Dice& dice)
{
    static const std::vector<std::string> texts = {
        "S.H. 12", "S.H. 31", "M", "2", "36", "Q3", "PATTERN 1908", "4021", "LAMP POUCH", "17/3"};
    return dice.among(texts);
}

double legibleShare(const models::Line& line, const std::string& text)
{
    double read = 0, all = 0;
    for (const models::Cell& cell : line.cells)
        if (!cell.alternatives.empty() && cell.alternatives.front().text != " ")
            ++read;
    for (const char c : text)
        all += c == ' ' ? 0 : 1;
    return std::min(1.0, read / all);
}

bool holdsName(const std::string& text)
{
    std::size_t run = 0;
    for (const char c : text) {
        run = c >= 'A' && c <= 'Z' ? run + 1 : 0;
        if (run >= 5)
            return true;
    }
    return false;
}

}  // namespace

std::string anyLetterSeen(Dice& dice)
{
    constexpr std::string_view letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789&/.-";
    return std::string(
        1, letters[static_cast<std::size_t>(dice.whole(0, static_cast<int>(letters.size()) - 1))]);
}

SimulatedMark simulateMark(const SimulatedTrade& trade, const Wear& wear,
                           const std::vector<LookAlikePair>& look_alikes, Dice& dice)
{
    SimulatedMark mark;
    const bool stranger = dice.once_in(5);
    const models::MakerRegister& makers = stranger ? trade.strangers : trade.known;
    const models::Maker& maker = makers.makers[static_cast<std::size_t>(
        dice.whole(0, static_cast<int>(makers.makers.size()) - 1))];
    mark.maker_id = stranger ? "" : maker.maker_id;
    mark.year = dice.whole(std::stoi(maker.from), std::stoi(maker.to));
    const std::string text = spelt(markOf(makers, maker, dice), makers, dice);
    mark.names = holdsName(text);
    LetterWear letters(wear, look_alikes, dice);
    const auto add = [&](const WornLine& worn, const std::string& stamped) {
        const auto at = dice.whole(0, static_cast<int>(mark.lines.size()));
        mark.reading.lines.insert(mark.reading.lines.begin() + at, worn.line);
        mark.letters.insert(mark.letters.begin() + at, worn.letters);
        mark.lines.insert(mark.lines.begin() + at, stamped);
    };
    const auto addText = [&](const std::string& text_beside) {
        add(letters.wornLine(text_beside), text_beside);
    };
    WornLine line = letters.wornLine(text);
    letters.cutAnEnd(line);
    mark.legible = legibleShare(line.line, text);
    add(line, text);
    if (dice.between(0, 1) < 0.7)
        addText(dateText(mark.year, dice));
    if (dice.between(0, 1) < 0.5)
        addText(otherText(dice));
    return mark;
}
