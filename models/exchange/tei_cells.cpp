#include "models/exchange/tei_cells.h"

#include <algorithm>
#include <stdexcept>

#include "models/choice_weights.h"
#include "models/letters.h"
#include "models/notation_gap.h"

namespace models {

namespace {

std::string symbolOrText(const std::string& letter)
{
    for (const TeiSymbol& symbol : teiSymbols())
        if (letter == symbol.character)
            return std::string("<g type=\"") + symbol.name + "\"/>";
    return escapedXml(letter);
}

bool isUnreadCell(const Cell& cell)
{
    return cell.state == CellState::Traces || cell.state == CellState::Lost;
}

// What the format means where it gives no certainty.
std::vector<double> usualCertainties(const Cell& cell)
{
    const bool sure = cell.state == CellState::Clear || cell.state == CellState::Restored;
    if (cell.alternatives.size() == 1 && sure)
        return {1.0};
    std::vector<double> certainties;
    for (const auto& one : weighedChoice(std::vector<std::string>(cell.alternatives.size())))
        certainties.push_back(one.certainty);
    return certainties;
}

bool isUsual(const Cell& cell)
{
    const std::vector<double> usual = usualCertainties(cell);
    for (std::size_t i = 0; i < usual.size(); ++i)
        if (cell.alternatives[i].certainty != usual[i])
            return false;
    return true;
}

std::string certAttribute(double certainty)
{
    return " cert=\"" + teiCertainty(certainty) + "\"";
}

bool hasPlainLetters(const Cell& cell)
{
    return !cell.alternatives.empty() &&
           std::all_of(cell.alternatives.begin(), cell.alternatives.end(),
                       [](const Alternative& one) { return isPlainLetter(one.text); });
}

// Beginning and end of the element for one letter of several, or for one whose certainty is said.
std::string letterElement(const Alternative& letter, bool unclear, bool usual)
{
    const bool raw = !isPlainLetter(letter.text);
    std::string text = unclear ? "<unclear" : raw ? "<seg type=\"cell\"" : "<seg";
    if (!usual)
        text +=
            unclear && letter.certainty == 0.3 ? " cert=\"low\"" : certAttribute(letter.certainty);
    return text + ">" + symbolOrText(letter.text) + (unclear ? "</unclear>" : "</seg>");
}

std::string choiceOf(const Cell& cell, bool unclear)
{
    std::string text = "<choice>";
    for (const Alternative& letter : cell.alternatives)
        text += letterElement(letter, unclear, isUsual(cell));
    return text + "</choice>";
}

std::string countAttributes(const Cell& cell)
{
    const int usual_least = cell.state == CellState::Lost ? 0 : 1;
    if (!cell.most && cell.least == usual_least && !cell.about)
        return " extent=\"unknown\" unit=\"character\"";
    if (const int about = aboutNumber(cell); about > 0)
        return " quantity=\"" + std::to_string(about) + "\" unit=\"character\" precision=\"low\"";
    std::string text;
    if (cell.most == cell.least && cell.least > 0 && !cell.about) {
        text = " quantity=\"" + std::to_string(cell.least) + "\"";
    } else {
        text = " atLeast=\"" + std::to_string(cell.least) + "\"";
        if (cell.most)
            text += " atMost=\"" + std::to_string(*cell.most) + "\"";
    }
    return text + " unit=\"character\"" + (cell.about ? " precision=\"low\"" : "");
}

std::string gapText(const Cell& cell)
{
    std::string text =
        cell.state == CellState::Lost ? "<gap reason=\"lost\"" : "<gap reason=\"illegible\"";
    text += countAttributes(cell);
    if (cell.alternatives.empty())
        return text + "/>";
    text += ">";
    for (const Alternative& guess : cell.alternatives)
        text += "<desc type=\"guess\"" +
                (isUsual(cell) ? std::string() : certAttribute(guess.certainty)) + ">" +
                escapedXml(guess.text) + "</desc>";
    return text + "</gap>";
}

void checkCell(const Cell& cell, const TeiContext& context)
{
    const bool unread = isUnreadCell(cell);
    constexpr int too_many = 999999999;
    if (unread ? cell.least < 0 || cell.least > too_many ||
                     (cell.most && (*cell.most < 0 || *cell.most > too_many))
               : cell.least != 1 || cell.most != 1 || cell.about)
        throw std::invalid_argument("a cell's counts do not go with its state");
    if (cell.doubted && cell.state != CellState::Restored)
        throw std::invalid_argument("only a restored letter can be a restoration in doubt");
    const bool fits = (!context.erased || cell.erased) &&
                      (!context.struck_over || cell.struck_over) &&
                      (!context.seen_earlier || cell.seen_earlier) &&
                      (!context.restored ||
                       (cell.state == CellState::Restored && cell.doubted == context.doubted));
    if (!fits)
        throw std::invalid_argument("a cell does not go with the mark around it");
    if (context.unclear && (cell.state != CellState::Doubtful || cell.alternatives.size() != 1 ||
                            !hasPlainLetters(cell) ||
                            cell.alternatives.front().certainty != context.unclear_certainty ||
                            cell.left_px != 0 || cell.right_px != 0))
        throw std::invalid_argument("a cell does not go with the mark of doubt around it");
}

// Doubt that <unclear> itself can hold.
bool isSimplyUnclear(const Cell& cell)
{
    return cell.state == CellState::Doubtful && hasPlainLetters(cell);
}

// The letters of a cell that has been read, without what <seg> says around them.
std::string lettersText(const Cell& cell)
{
    if (isUnreadCell(cell))
        return gapText(cell);
    if (cell.alternatives.size() > 1)
        return choiceOf(cell, isSimplyUnclear(cell));
    if (cell.alternatives.empty())
        return "";
    return isSimplyUnclear(cell) ? letterElement(cell.alternatives.front(), true, isUsual(cell))
                                 : symbolOrText(cell.alternatives.front().text);
}

// What <seg> has to say of a cell, empty for a cell of which everyday markup says all.
std::string segmentAttributes(const Cell& cell)
{
    std::string text;
    const bool doubtful = cell.state == CellState::Doubtful && !isSimplyUnclear(cell);
    const bool no_letter = cell.alternatives.empty() && !isUnreadCell(cell);
    if (doubtful || no_letter)
        text += std::string(" subtype=\"") + (doubtful ? "doubtful" : "") +
                (doubtful && no_letter ? "-" : "") + (no_letter ? "no-letter" : "") + "\"";
    if (cell.left_px != 0 || cell.right_px != 0)
        text += " facs=\"px:" + numberText(cell.left_px) + "," + numberText(cell.right_px) + "\"";
    const bool alone = cell.alternatives.size() == 1 && !isUnreadCell(cell);
    if (alone && !isSimplyUnclear(cell) && !isUsual(cell))
        text += certAttribute(cell.alternatives.front().certainty);
    if (alone && !isSimplyUnclear(cell) && !isPlainLetter(cell.alternatives.front().text))
        text += " ";  // the letter itself needs the element
    return text;
}

std::string cellElement(const Cell& cell)
{
    std::string attributes = segmentAttributes(cell);
    if (attributes.empty())
        return lettersText(cell);
    if (attributes.back() == ' ')
        attributes.pop_back();
    return "<seg type=\"cell\"" + attributes + ">" + lettersText(cell) + "</seg>";
}

// Unclear letters side by side, equally certain, share one element.
std::size_t unclearEnd(const std::vector<Cell>& cells, std::size_t from, std::size_t to)
{
    const auto joins = [&](const Cell& cell) {
        return isSimplyUnclear(cell) && cell.alternatives.size() == 1 &&
               segmentAttributes(cell).empty() &&
               cell.alternatives.front().certainty == cells[from].alternatives.front().certainty;
    };
    std::size_t end = from;
    while (end < to && joins(cells[end]))
        ++end;
    return end;
}

std::string teiRun(const std::vector<Cell>& cells, std::size_t& at, std::size_t to,
                   const TeiContext& context)
{
    if (context.unclear)
        return symbolOrText(cells[at++].alternatives.front().text);
    const bool may_share = isSimplyUnclear(cells[at]) && cells[at].alternatives.size() == 1;
    const std::size_t end = may_share ? unclearEnd(cells, at, to) : at;
    if (end <= at + 1)
        return cellElement(cells[at++]);
    std::string text = letterElement(cells[at].alternatives.front(), true, isUsual(cells[at]));
    std::string others;
    for (++at; at < end; ++at) {
        checkCell(cells[at], context);
        others += symbolOrText(cells[at].alternatives.front().text);
    }
    return text.insert(text.rfind("</unclear>"), others);
}

}  // namespace

std::string teiCertainty(double certainty)
{
    if (!(certainty >= 0 && certainty <= 1))
        throw std::invalid_argument("a certainty is not between 0 and 1");
    return numberText(certainty);
}

bool isPlainLetter(const std::string& letter)
{
    return !letter.empty() && static_cast<unsigned char>(letter[0]) >= 0x20 &&
           charactersOf(letter).size() == 1 && !isCombiningMark(letter) &&
           normalForm(letter) == letter;
}

std::string teiCells(const std::vector<Cell>& cells, std::size_t from, std::size_t to,
                     const TeiContext& context)
{
    std::string text;
    for (std::size_t at = from; at < to;) {
        const std::size_t number = at + 1;
        try {
            checkCell(cells[at], context);
            text += teiRun(cells, at, to, context);
        } catch (const std::invalid_argument& error) {
            throw std::invalid_argument("cell " + std::to_string(number) + ": " + error.what());
        }
    }
    return text;
}

Cell gapCell(const TeiAttributes& attributes)
{
    Cell cell;
    std::optional<int> quantity, least, most;
    bool low = false;
    for (const auto& [name, value] : attributes) {
        if (name == "reason")
            cell.state = value == "lost" ? CellState::Lost : CellState::Traces;
        if (name == "quantity")
            quantity = wholeNumberOf(value);
        if (name == "atLeast")
            least = wholeNumberOf(value);
        if (name == "atMost")
            most = wholeNumberOf(value);
        low = low || name == "precision";
    }
    if (quantity && *quantity > 0 && low && *quantity < 100000)
        return aboutCell(cell.state, *quantity);
    const int unknown_least = cell.state == CellState::Lost ? 0 : 1;
    cell.least = quantity ? *quantity : least.value_or(unknown_least);
    cell.most = quantity ? quantity : most;
    cell.about = low && (quantity || least);
    return cell;
}

bool fitsTeiMark(const TeiMark& mark, const std::vector<Cell>& cells)
{
    if (mark.element == "gap")
        return cells.size() == 1 && isUnreadCell(cells.front());
    return std::all_of(cells.begin(), cells.end(), [](const Cell& cell) {
        return cell.state == CellState::Clear && cell.alternatives.size() == 1 &&
               cell.alternatives.front().text == " ";
    });
}

}  // namespace models
