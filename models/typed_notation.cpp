#include "models/typed_notation.h"

#include <algorithm>

#include "models/letters.h"
#include "models/notation_gap.h"

namespace models {

namespace {

constexpr const char* arrow_sign = "\xE2\x86\x91";  // U+2191
constexpr double doubtful_certainty = 0.6;
constexpr double choice_certainty = 0.9, choice_ratio = 0.6;

std::vector<Alternative> weighedChoice(const std::vector<std::string>& letters)
{
    std::vector<Alternative> alternatives;
    double weight = 1, sum = 0;
    for (const std::string& letter : letters) {
        alternatives.push_back({letter, weight});
        sum += weight;
        weight *= choice_ratio;
    }
    for (Alternative& alternative : alternatives)
        alternative.certainty *= choice_certainty / sum;
    return alternatives;
}

bool isControl(const std::string& token)
{
    const auto first = static_cast<unsigned char>(token[0]);
    return first < 0x20 || first == 0x7F;
}

class Parser {
public:
    explicit Parser(const std::string& text)
    {
        const auto bad = firstBadByte(text);
        tokens_ = charactersOf(bad ? text.substr(0, *bad) : text);
        cut_by_bad_byte_ = bad.has_value();
        if (!cut_by_bad_byte_ && !tokens_.empty() && isNewline(tokens_.size() - 1))
            tokens_.pop_back();
    }

    ParsedNotation parse();

private:
    bool isAt(std::size_t at, const char* sign) const
    {
        return at < tokens_.size() && tokens_[at] == sign;
    }
    bool isNewline(std::size_t at) const
    {
        return isAt(at, "\n") || isAt(at, "\r\n") || isAt(at, "\r");
    }
    std::size_t separatorLength() const;
    bool atLineEnd() const { return at_ >= tokens_.size() || separatorLength() > 0; }

    void fail(std::string expected) { fault_ = NotationFault{at_, std::move(expected)}; }
    void finishLine();
    void readElement();
    void readClear(std::string letter);
    void readChoice();
    void readBracket();
    void readRestored(std::size_t end);
    void readNamed();
    void readLineSign(LineEnd end, std::size_t length);
    void readMarks(std::size_t first_cell);
    void readGuess(std::size_t first_cell);
    std::string nameAt(std::size_t at) const;
    std::optional<std::string> readLetter();
    std::vector<std::string> readAlternatives(const char* close);
    std::size_t closingBracket() const;

    std::vector<std::string> tokens_;
    bool cut_by_bad_byte_ = false;
    std::size_t at_ = 0;
    std::optional<NotationFault> fault_;
    std::vector<Line> lines_;
    Line line_;
    bool left_said_ = false, right_said_ = false;
};

// Tokens that part two lines here; 0 when none do.
std::size_t Parser::separatorLength() const
{
    if (isNewline(at_))
        return 1;
    return isAt(at_, " ") && isAt(at_ + 1, "/") && isAt(at_ + 2, " ") ? 3 : 0;
}

void Parser::finishLine()
{
    const auto isOpenGap = [](const Cell& cell) {
        return cell.state == CellState::Lost && cell.least == 0 && !cell.most;
    };
    if (!line_.cells.empty() && !left_said_ && isOpenGap(line_.cells.front()))
        line_.left_end = LineEnd::CutOff;
    if (!line_.cells.empty() && !right_said_ && isOpenGap(line_.cells.back()))
        line_.right_end = LineEnd::CutOff;
    lines_.push_back(std::move(line_));
    line_ = Line{};
    left_said_ = right_said_ = false;
}

ParsedNotation Parser::parse()
{
    while (at_ < tokens_.size() && !fault_) {
        const std::size_t separator = separatorLength();
        if (separator > 0) {
            finishLine();
            at_ += separator;
        } else {
            readElement();
        }
    }
    if (!fault_ && cut_by_bad_byte_)
        fail("text in UTF-8");
    const bool line_is_there = !line_.cells.empty() || left_said_ || !lines_.empty();
    if (fault_ ? !line_.cells.empty() : line_is_there)
        finishLine();
    return {std::move(lines_), std::move(fault_)};
}

void Parser::readElement()
{
    const std::string token = tokens_[at_];
    if (token == "(")
        return readChoice();
    if (token == "[")
        return readBracket();
    if (token == "{")
        return readNamed();
    if (token == "|")
        return readLineSign(LineEnd::Complete, 1);
    if (token == "+") {
        ++at_;
        Cell traces;
        traces.state = CellState::Traces;
        line_.cells.push_back(std::move(traces));
        return readMarks(line_.cells.size() - 1);
    }
    if (token == "?")
        return fail("a letter before '?'; the sign itself is written \\?");
    if (token == "]" || token == ")" || token == "}")
        return fail("an opening bracket before this; the sign itself is written \\" + token);
    if (auto letter = readLetter())
        readClear(std::move(*letter));
}

void Parser::readClear(std::string letter)
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
std::optional<std::string> Parser::readLetter()
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
        at_ += 7;
        return arrow_sign;
    }
    if (tokens_[at_] == "\\") {
        ++at_;
        if (at_ >= tokens_.size() || isControl(tokens_[at_])) {
            fail("the character that the backslash stands before");
            return std::nullopt;
        }
    }
    return normalForm(tokens_[at_++]);
}

void Parser::readChoice()
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
std::vector<std::string> Parser::readAlternatives(const char* close)
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
std::size_t Parser::closingBracket() const
{
    for (std::size_t i = at_ + 1; i < tokens_.size() && !isNewline(i); ++i) {
        if (isAt(i, "\\"))
            ++i;
        else if (isAt(i, "]"))
            return i;
    }
    return tokens_.size();
}

void Parser::readBracket()
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

void Parser::readRestored(std::size_t end)
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
        line_.cells[i].state = CellState::Restored;
        line_.cells[i].doubted = doubted;
    }
    if (fault_)
        return;
    at_ = end + 1;
    readMarks(first_cell);
}

// The name in braces that open at `at`, up to a space or the closing brace; empty when none.
std::string Parser::nameAt(std::size_t at) const
{
    std::string name;
    for (std::size_t i = at + 1; i < tokens_.size() && i < at + 12; ++i) {
        if (isAt(i, "}") || isAt(i, " "))
            return name;
        name += tokens_[i];
    }
    return {};
}

void Parser::readNamed()
{
    const std::string name = nameAt(at_);
    if (name == "cut" && isAt(at_ + 4, "}"))
        return readLineSign(LineEnd::CutOff, 5);
    if (name == "open" && isAt(at_ + 5, "}"))
        return readLineSign(LineEnd::Unknown, 6);
    if (auto letter = readLetter())
        readClear(std::move(*letter));
}

void Parser::readLineSign(LineEnd end, std::size_t length)
{
    if (line_.cells.empty() && !left_said_) {
        line_.left_end = end;
        left_said_ = true;
        at_ += length;
        return;
    }
    const std::size_t before = at_;
    at_ += length;
    if (atLineEnd()) {
        line_.right_end = end;
        right_said_ = true;
        return;
    }
    at_ = before;
    fail("this sign only at a line's end; the sign '|' itself is written \\|");
}

// Marks in braces behind a cell (or a restored stretch), for all its cells.
void Parser::readMarks(std::size_t first_cell)
{
    while (isAt(at_, "{") && !fault_) {
        const std::string name = nameAt(at_);
        if (name == "guess") {
            readGuess(first_cell);
            continue;
        }
        if (name != "erased" && name != "over" && name != "earlier")
            return;
        if (!isAt(at_ + name.size() + 1, "}"))
            return fail("a closing brace right behind the name");
        for (std::size_t i = first_cell; i < line_.cells.size(); ++i) {
            Cell& cell = line_.cells[i];
            (name == "erased" ? cell.erased
             : name == "over" ? cell.struck_over
                              : cell.seen_earlier) = true;
        }
        at_ += name.size() + 2;
    }
}

void Parser::readGuess(std::size_t first_cell)
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

}  // namespace

std::string NotationFault::message() const
{
    return "At character " + std::to_string(position + 1) + ": expected " + expected + ".";
}

ParsedNotation parseTyped(const std::string& text)
{
    return Parser(text).parse();
}

}  // namespace models
