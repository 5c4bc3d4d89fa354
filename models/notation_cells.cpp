#include <algorithm>
#include <utility>

#include "models/choice_weights.h"
#include "models/letters.h"
#include "models/notation_gap.h"
#include "models/notation_parser.h"

// How NotationParser reads single cells.
namespace models {

namespace {

constexpr const char* names_behind_a_cell = "{erased}, {over}, {earlier}";
constexpr double doubtful_certainty = 0.6;

bool isControl(const std::string& token)
{
    const auto first = static_cast<unsigned char>(token[0]);
    return first < 0x20 || first == 0x7F;
}

}  // namespace

void NotationParser::readClear(std::string letter)
{
    Cell cell = clearCell(std::move(letter));
    if (isAt(at_, "?")) {
        ++at_;
        cell.state = CellState::Doubtful;
        cell.alternatives.front().certainty = doubtful_certainty;
    }
    line_.cells.push_back(std::move(cell));
    readMarks(line_.cells.size() - 1);
}

// One character as it stands, escaped, or by name; nothing and a fault otherwise.
std::optional<std::string> NotationParser::readLetter()
{
    if (at_ >= tokens_.size() || isControl(tokens_[at_])) {
        fail("a letter, digit or sign");
        return std::nullopt;
    }
    if (tokens_[at_] == "{") {
        if (nameAt(at_) != "arrow") {
            fail("a symbol's name: {arrow}; the bracket itself is written \\{");
            return std::nullopt;
        }
        if (!isAt(at_ + 6, "}")) {
            fail("a closing brace right behind the name: {arrow}");
            return std::nullopt;
        }
        at_ += 7;
        return property_arrow;
    }
    if (tokens_[at_] == "\\") {
        ++at_;
        if (at_ >= tokens_.size() || isControl(tokens_[at_])) {
            fail("the character that the backslash stands before");
            return std::nullopt;
        }
    }
    if (isCombiningMark(tokens_[at_])) {
        fail("a letter for this accent to stand on");
        return std::nullopt;
    }
    return normalForm(tokens_[at_++]);
}

void NotationParser::readChoice()
{
    ++at_;
    const std::vector<std::string> letters = readAlternatives(")");
    if (fault_)
        return;
    Cell cell;
    cell.state = CellState::Doubtful;
    cell.alternatives = weighedChoice(letters);
    line_.cells.push_back(std::move(cell));
    readMarks(line_.cells.size() - 1);
}

// Letters parted by '|', up to and with the closing sign.
std::vector<std::string> NotationParser::readAlternatives(const char* close)
{
    std::vector<std::string> letters;
    while (!fault_) {
        if (isAt(at_, "|") || isAt(at_, close) || isAt(at_, "(") || isAt(at_, "[") ||
            isAt(at_, "]")) {
            fail("a letter; the sign itself is written with a backslash before it");
            break;
        }
        const std::size_t before = at_;
        auto letter = readLetter();
        if (!letter)
            break;
        if (std::find(letters.begin(), letters.end(), *letter) != letters.end()) {
            at_ = before;
            fail("a letter that has not been named yet");
            break;
        }
        letters.push_back(std::move(*letter));
        if (isAt(at_, close)) {
            ++at_;
            break;
        }
        if (!isAt(at_, "|"))
            fail(std::string("'|' or '") + close +
                 "'; an opening bracket itself is written \\( or \\{");
        else
            ++at_;
    }
    return letters;
}

// Where the bracket opened at at_ closes; the number of tokens when it does not on this line.
std::size_t NotationParser::closingBracket() const
{
    for (std::size_t i = at_ + 1; i < tokens_.size() && !isNewline(i); ++i) {
        if (isAt(i, "\\"))
            ++i;
        else if (isAt(i, "]"))
            return i;
    }
    return tokens_.size();
}

void NotationParser::readBracket()
{
    const std::size_t end = closingBracket();
    if (end >= tokens_.size())
        return fail("a closing bracket for this one; the sign itself is written \\[");
    std::string content;
    for (std::size_t i = at_ + 1; i < end; ++i)
        content += tokens_[i];
    ++at_;
    const GapForm form = readGap(content);
    if (!form.fault.empty())
        return fail(form.fault);
    if (!form.is_gap) {
        if (content.back() == '?' && readGap(content.substr(0, content.size() - 1)).is_gap) {
            at_ = end - 1;
            return fail("the closing bracket: a lost stretch takes no '?'");
        }
        return readRestored(end);
    }
    at_ = end + 1;
    line_.cells.push_back(form.cell);
    readMarks(line_.cells.size() - 1);
}

void NotationParser::readRestored(std::size_t end)
{
    const std::size_t first_cell = line_.cells.size();
    bool doubted = false;
    while (at_ < end && !fault_) {
        if (isAt(at_, "?") && at_ + 1 == end && line_.cells.size() > first_cell) {
            doubted = true;
            ++at_;
        } else if (isAt(at_, "(")) {
            readChoice();
        } else if (isAt(at_, "[") || isAt(at_, ")") || isAt(at_, "}") || isAt(at_, "?") ||
                   isAt(at_, "+") || isAt(at_, "|")) {
            fail("a restored letter; a sign itself is written with a backslash before it");
        } else if (auto letter = readLetter()) {
            line_.cells.push_back(clearCell(std::move(*letter)));
        }
    }
    for (std::size_t i = first_cell; i < line_.cells.size(); ++i) {
        if (line_.cells[i].alternatives.size() == 1)  // (A) in brackets is A
            line_.cells[i].alternatives.front().certainty = 1;
        line_.cells[i].state = CellState::Restored;
        line_.cells[i].doubted = doubted;
    }
    if (fault_)
        return;
    at_ = end + 1;
    readMarks(first_cell);
}

// What stands in braces by itself, not behind a cell.
bool NotationParser::isElement(const std::string& name)
{
    return name == "arrow" || name == "cut" || name == "open";
}

// The name in braces that open at `at`, up to a space, a brace or the line's end.
std::string NotationParser::nameAt(std::size_t at) const
{
    std::string name;
    for (std::size_t i = at + 1; i < tokens_.size() && i < at + 12; ++i) {
        if (isAt(i, "}") || isAt(i, "{") || isAt(i, " ") || isNewline(i))
            break;
        name += tokens_[i];
    }
    return name;
}

void NotationParser::readNamed()
{
    const std::string name = nameAt(at_);
    if ((name == "cut" || name == "open") && !isAt(at_ + name.size() + 1, "}"))
        return fail("a closing brace right behind the name: {" + name + "}");
    if (name == "cut")
        return readLineSign(LineEnd::CutOff, 5);
    if (name == "open")
        return readLineSign(LineEnd::Unknown, 6);
    if (!isElement(name))
        return fail(
            "a name that may stand here: {arrow}, {cut} or {open}; the bracket itself is written "
            "\\{");
    if (auto letter = readLetter())
        readClear(std::move(*letter));
}

// Marks in braces behind a cell (or a restored stretch), for all its cells.
void NotationParser::readMarks(std::size_t first_cell)
{
    while (isAt(at_, "{") && !fault_) {
        const std::string name = nameAt(at_);
        if (name == "guess") {
            readGuess(first_cell);
            continue;
        }
        if (name != "erased" && name != "over" && name != "earlier") {
            if (isElement(name))
                return;
            const Cell& cell = line_.cells[first_cell];
            const bool unread = cell.state == CellState::Traces || cell.state == CellState::Lost;
            return fail(std::string("a name that may stand here: ") + names_behind_a_cell +
                        (unread ? ", {guess 0|6}" : "") +
                        ", {arrow}, {cut} or {open}; the bracket itself is written \\{");
        }
        if (!isAt(at_ + name.size() + 1, "}"))
            return fail("a closing brace right behind the name: {" + name + "}");
        for (std::size_t i = first_cell; i < line_.cells.size(); ++i) {
            Cell& cell = line_.cells[i];
            (name == "erased" ? cell.erased
             : name == "over" ? cell.struck_over
                              : cell.seen_earlier) = true;
        }
        at_ += name.size() + 2;
    }
}

void NotationParser::readGuess(std::size_t first_cell)
{
    Cell& cell = line_.cells[first_cell];
    if (cell.state != CellState::Traces && cell.state != CellState::Lost)
        return fail("a guess only behind traces or a lost stretch");
    at_ += 6;
    if (!isAt(at_, " "))
        return fail("a space and letters, as in {guess 0|6}");
    ++at_;
    cell.alternatives = weighedChoice(readAlternatives("}"));
}

}  // namespace models
