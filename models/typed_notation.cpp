#include "models/typed_notation.h"

#include <utility>

#include "models/letters.h"
#include "models/notation_gap.h"
#include "models/notation_parser.h"

// The lines of the typed notation; its cells are in notation_cells.cpp.
namespace models {

NotationParser::NotationParser(const std::string& text)
{
    const auto bad = firstBadByte(text);
    tokens_ = charactersOf(bad ? text.substr(0, *bad) : text);
    cut_by_bad_byte_ = bad.has_value();
    if (!cut_by_bad_byte_ && !tokens_.empty() && isNewline(tokens_.size() - 1))
        tokens_.pop_back();
}

// Tokens that part two lines here; 0 when none do.
std::size_t NotationParser::separatorLength() const
{
    if (isNewline(at_))
        return 1;
    return isAt(at_, " ") && isAt(at_ + 1, "/") && isAt(at_ + 2, " ") ? 3 : 0;
}

void NotationParser::finishLine()
{
    if (!line_.cells.empty() && !left_said_ && isOpenGap(line_.cells.front()))
        line_.left_end = LineEnd::CutOff;
    if (!line_.cells.empty() && !right_said_ && isOpenGap(line_.cells.back()))
        line_.right_end = LineEnd::CutOff;
    lines_.push_back(std::move(line_));
    line_ = Line{};
    left_said_ = right_said_ = false;
}

ParsedNotation NotationParser::parse()
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

void NotationParser::readElement()
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

void NotationParser::readLineSign(LineEnd end, std::size_t length)
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

std::string NotationFault::message() const
{
    return "At character " + std::to_string(position + 1) + ": expected " + expected + ".";
}

ParsedNotation parseTyped(const std::string& text)
{
    return NotationParser(text).parse();
}

}  // namespace models
