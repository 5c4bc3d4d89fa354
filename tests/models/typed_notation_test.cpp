#include "models/typed_notation.h"

#include <catch2/catch.hpp>

#include "models/letters.h"

using models::CellState;
using models::LineEnd;

namespace {

models::Line onlyLine(const std::string& text)
{
    const models::ParsedNotation parsed = models::parseTyped(text);
    INFO(text);
    if (parsed.fault)
        FAIL(parsed.fault->message());
    REQUIRE(parsed.lines.size() == 1);
    return parsed.lines.front();
}

models::Cell onlyCell(const std::string& text)
{
    const models::Line line = onlyLine(text);
    REQUIRE(line.cells.size() == 1);
    return line.cells.front();
}

std::vector<std::string> lettersOf(const models::Cell& cell)
{
    std::vector<std::string> letters;
    for (const models::Alternative& alternative : cell.alternatives)
        letters.push_back(alternative.text);
    return letters;
}

void checkCount(const std::string& text, CellState state, int least, std::optional<int> most)
{
    CAPTURE(text);
    const models::Cell cell = onlyCell(text + "|");  // the end said, so that a gap is only a gap
    CHECK(cell.state == state);
    CHECK(cell.least == least);
    CHECK(cell.most == most);
    CHECK(cell.alternatives.empty());
}

}  // namespace

TEST_CASE("Plain letters are clear cells, spaces too", "[models][typed]")
{
    const models::Line line = onlyLine("T.H. & CO");

    REQUIRE(line.cells.size() == 9);
    CHECK(models::plainText(line) == "T.H. & CO");
    for (const models::Cell& cell : line.cells) {
        CHECK(cell.state == CellState::Clear);
        CHECK(cell.alternatives.front().certainty == 1);
    }
    CHECK(line.left_end == LineEnd::Unknown);
    CHECK(line.right_end == LineEnd::Unknown);
}

TEST_CASE("A question mark makes the letter before it doubtful", "[models][typed]")
{
    const models::Cell cell = onlyCell("A?");
    CHECK(cell.state == CellState::Doubtful);
    CHECK(lettersOf(cell) == std::vector<std::string>{"A"});
    CHECK(cell.alternatives.front().certainty < 1);
}

TEST_CASE("A choice keeps its order, most likely first", "[models][typed]")
{
    const models::Cell cell = onlyCell("(0|6|8)");
    CHECK(cell.state == CellState::Doubtful);
    REQUIRE(lettersOf(cell) == std::vector<std::string>{"0", "6", "8"});
    CHECK(cell.alternatives[0].certainty > cell.alternatives[1].certainty);
    CHECK(cell.alternatives[1].certainty > cell.alternatives[2].certainty);
    CHECK(cell.alternatives[0].certainty + cell.alternatives[1].certainty +
              cell.alternatives[2].certainty <=
          1.0);
}

TEST_CASE("Traces and lost stretches keep their counts apart", "[models][typed]")
{
    checkCount("+", CellState::Traces, 1, 1);
    checkCount("[+ + +]", CellState::Traces, 1, std::nullopt);
    checkCount("[+3]", CellState::Traces, 3, 3);
    checkCount("[+2..4]", CellState::Traces, 2, 4);
    checkCount("[.]", CellState::Lost, 1, 1);
    checkCount("[...]", CellState::Lost, 3, 3);
    checkCount("[. . .]", CellState::Lost, 3, 3);
    checkCount("[3..5]", CellState::Lost, 3, 5);
    checkCount("[~5]", CellState::Lost, 4, 6);
    checkCount("[~20]", CellState::Lost, 16, 24);
    checkCount("[3..]", CellState::Lost, 3, std::nullopt);
    checkCount("[- - -]", CellState::Lost, 0, std::nullopt);
    checkCount("[+~5]", CellState::Traces, 4, 6);
    CHECK(onlyLine("+++").cells.size() == 3);
    CHECK(onlyCell("[~5]|").about);
    CHECK_FALSE(onlyCell("[4..6]|").about);
}

TEST_CASE("Restored letters are cells of their own", "[models][typed]")
{
    const models::Line sure = onlyLine("[19]40");
    REQUIRE(sure.cells.size() == 4);
    CHECK(sure.cells[0].state == CellState::Restored);
    CHECK(sure.cells[1].state == CellState::Restored);
    CHECK(sure.cells[2].state == CellState::Clear);
    CHECK_FALSE(sure.cells[0].doubted);

    CHECK(onlyLine("[(1)9]40").cells == sure.cells);  // a choice of one is none

    const models::Line unsure = onlyLine("[AB?]");
    REQUIRE(unsure.cells.size() == 2);
    CHECK(unsure.cells[0].doubted);
    CHECK(unsure.cells[1].doubted);
    CHECK(models::writeTyped(unsure) == "[AB?]");
}

TEST_CASE("A restored sign that looks like a lost stretch is escaped", "[models][typed]")
{
    models::Cell dot = models::clearCell(".");
    dot.state = CellState::Restored;
    models::Line line;
    line.cells = {dot, dot};
    CHECK(models::writeTyped(line) == "[\\..]");
    CHECK(onlyLine("[\\..]").cells == line.cells);
}

TEST_CASE("The bar says that a line is complete, a gap that it is cut off", "[models][typed]")
{
    CHECK(onlyLine("|1940").left_end == LineEnd::Complete);
    CHECK(onlyLine("|1940").right_end == LineEnd::Unknown);
    CHECK(onlyLine("1940|").right_end == LineEnd::Complete);
    CHECK(onlyLine("1940|").cells.size() == 4);

    const models::Line cut = onlyLine("19[- - -]");
    CHECK(cut.right_end == LineEnd::CutOff);
    CHECK(cut.left_end == LineEnd::Unknown);
    REQUIRE(cut.cells.size() == 3);
    CHECK_FALSE(cut.cells.back().most);

    const models::Line inside = onlyLine("19[- - -]40");
    CHECK(inside.left_end == LineEnd::Unknown);
    CHECK(inside.right_end == LineEnd::Unknown);

    CHECK(onlyLine("19{cut}").right_end == LineEnd::CutOff);
    CHECK(onlyLine("19{cut}").cells.size() == 2);
    CHECK(onlyLine("19[- - -]{open}").right_end == LineEnd::Unknown);
}

TEST_CASE("Lines are parted by a spaced slash or a newline, not by a bare slash", "[models][typed]")
{
    for (const char* text : {"T.H. & CO / 3/40", "T.H. & CO\n3/40", "T.H. & CO\r\n3/40\n"}) {
        const models::ParsedNotation parsed = models::parseTyped(text);
        CAPTURE(text);
        REQUIRE_FALSE(parsed.fault);
        REQUIRE(parsed.lines.size() == 2);
        CHECK(models::plainText(parsed.lines[0]) == "T.H. & CO");
        CHECK(models::plainText(parsed.lines[1]) == "3/40");
        CHECK(models::writeTyped(parsed.lines) == "T.H. & CO / 3/40");
    }
    CHECK(models::writeTyped(onlyLine("A \\/ ?B")) == "A \\/ ?B");  // a doubtful space behind
    CHECK(models::parseTyped("").lines.empty());
    CHECK_FALSE(models::parseTyped("").fault);
}

TEST_CASE("Symbols go by name and a backslash keeps a sign as it is", "[models][typed]")
{
    CHECK(models::plainText(onlyLine("{arrow} K")) == "\xE2\x86\x91 K");
    CHECK(models::writeTyped(onlyLine("{arrow} K")) == "{arrow} K");
    CHECK(models::plainText(onlyLine("\\(K\\)\\|\\+\\?\\\\")) == "(K)|+?\\");
    CHECK(onlyLine("{arrow}?").cells.front().state == CellState::Doubtful);
}

TEST_CASE("Each letter comes in one form however it was typed", "[models][typed]")
{
    const std::string joined = "\xC3\x89", apart = "E\xCC\x81";  // U+00C9; E and U+0301
    CHECK(lettersOf(onlyCell(apart)) == std::vector<std::string>{joined});
    CHECK(lettersOf(onlyCell(joined)) == std::vector<std::string>{joined});

    const std::string dotted = "A\xCC\xA3", one_point = "\xE1\xBA\xA0";  // A, U+0323; U+1EA0
    CHECK(lettersOf(onlyCell(dotted)) == std::vector<std::string>{dotted});
    CHECK(lettersOf(onlyCell(one_point)) == std::vector<std::string>{dotted});
}

TEST_CASE("A fault says where it is and what was expected", "[models][typed]")
{
    struct Case {
        const char* text;
        std::size_t position;
        const char* expected;  // part of it
    };
    const Case cases[] = {
        {"AB[..", 2, "closing bracket"},
        {"AB[]", 3, "dot"},
        {"A[5..3]", 2, "not less"},
        {"A[~x]", 2, "number"},
        {"A[+~]", 2, "number"},
        {"A[~0]", 2, "number"},
        {"A[+x]", 2, "+ + +"},
        {"A[3..2000]", 2, "three digits"},
        {"A{erased", 1, "closing brace right behind the name: {erased}"},
        {"A{erased ", 1, "closing brace"},
        {"A[+2", 1, "closing bracket"},
        {"+{guess}", 7, "space"},
        {"+{guess 0|}", 10, "letter"},
        {"+{guess 0|0}", 10, "not been named"},
        {"(0?|6)", 2, "'|'"},
        {"()", 1, "letter"},
        {"[A+]", 2, "restored letter"},
        {"A{cut}B", 1, "line's end"},
        {"\xCC\x81", 0, "accent"},
        {"A[- -]", 2, "- - -"},
        {"A[\xE2\x80\xA6]", 2, "dot for each"},  // one sign of three dots is not three dots
        {"[..?]", 3, "no '?'"},
        {"AB(0|", 5, "letter"},
        {"AB(06)", 4, "'|'"},
        {"AB(0|0)", 5, "not been named"},
        {"A)B", 1, "opening bracket"},
        {"?A", 0, "letter before"},
        {"A|B", 1, "line's end"},
        {"{anchor}", 0, "arrow"},
        {"A\\", 2, "backslash"},
        {"\xC3\x89\tA", 1, "letter"},
        {"AB / C\nD\x01", 8, "letter"},
        {"AB\xFF"
         "C",
         2, "UTF-8"},
        {"A{guess B}", 1, "traces"},
    };
    for (const Case& one : cases) {
        CAPTURE(one.text);
        const models::ParsedNotation parsed = models::parseTyped(one.text);
        REQUIRE(parsed.fault);
        CAPTURE(parsed.fault->expected);
        CHECK(parsed.fault->position == one.position);
        CHECK(parsed.fault->expected.find(one.expected) != std::string::npos);
    }
    const auto expected = [](const char* typed) {
        return models::parseTyped(typed).fault->expected;
    };
    for (const char* typed : {"[0..0]", "[+0]", "[+0..0]"})
        CHECK(expected(typed) == "a number of at least 1: no character is no stretch");
    CHECK(expected("[]") ==
          "a dot for each lost character, a number as in [3..5], '- - -', or restored letters");
    CHECK(expected("A{over") == "a closing brace right behind the name: {over}");
    CHECK(expected("{cut") == "a closing brace right behind the name: {cut}");
    for (const char* typed : {"A{erase}", "A{foo}"})
        CHECK(expected(typed) ==
              "a name that may stand here: {erased}, {over}, {earlier}, {arrow}, {cut} or {open}; "
              "the bracket itself is written \\{");
    CHECK(expected("+{gues A}") ==
          "a name that may stand here: {erased}, {over}, {earlier}, {guess 0|6}, {arrow}, {cut} or "
          "{open}; the bracket itself is written \\{");
    CHECK(
        expected("{foo}") ==
        "a name that may stand here: {arrow}, {cut} or {open}; the bracket itself is written \\{");
    CHECK(models::parseTyped("AB[..").fault->message().rfind("At character 3: expected ", 0) == 0);
}

TEST_CASE("What stands before a fault is kept", "[models][typed]")
{
    const models::ParsedNotation parsed = models::parseTyped("AB / C[");
    REQUIRE(parsed.fault);
    REQUIRE(parsed.lines.size() == 2);
    CHECK(models::plainText(parsed.lines[0]) == "AB");
    CHECK(models::plainText(parsed.lines[1]) == "C");
}

TEST_CASE("Counts beyond the notation are written as at least so many", "[models][typed]")
{
    models::Cell lost;
    lost.state = CellState::Lost;
    lost.alternatives.clear();
    lost.least = 5;
    lost.most = 2000;
    models::Line line;
    line.cells = {models::clearCell("A"), lost, models::clearCell("B")};
    CHECK(models::writeTyped(line) == "A[5..]B");
    CHECK(models::writeTyped(onlyLine("[3\\..2000]")) == "[\\3..2000]");
}

TEST_CASE("Of a clear cell with rivals only the first letter is written", "[models][typed]")
{
    models::Cell cell = models::clearCell("2");
    cell.alternatives = {{"2", 0.98}, {"Z", 0.01}};
    models::Line line;
    line.cells = {cell, models::clearCell("4")};
    CHECK(models::writeTyped(line) == "24");
}
