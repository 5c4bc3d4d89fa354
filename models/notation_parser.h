#pragma once

#include <optional>
#include <string>
#include <vector>

#include "models/typed_notation.h"

namespace models {

// Walks over the characters of a typed reading once, cell by cell, and stops at the first fault.
// For parseTyped alone.
class NotationParser {
public:
    explicit NotationParser(const std::string& text);

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
    static bool isElement(const std::string& name);
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

}  // namespace models
