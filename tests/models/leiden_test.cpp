#include "models/leiden.h"

#include <catch2/catch.hpp>
#include <random>

#include "models/typed_notation.h"
#include "tests/models/random_reading.h"

namespace {

std::string leidenOf(const std::string& typed)
{
    const models::ParsedNotation parsed = models::parseTyped(typed);
    INFO(typed);
    REQUIRE_FALSE(parsed.fault);
    REQUIRE(parsed.lines.size() == 1);
    return models::toLeiden(parsed.lines.front());
}

// Several readings may print alike, but no unread stretch as nothing.
bool holdsAnUnreadSign(const std::string& leiden)
{
    return leiden.find('+') != std::string::npos || leiden.find('[') != std::string::npos;
}

}  // namespace

TEST_CASE("Leiden prints each state by its own sign", "[models][leiden]")
{
    struct Case {
        const char* typed;
        std::string leiden;
    };
    // Signs after the EpiDoc Guidelines' pages on unclear, lost, illegible, restored, erased,
    // overstruck and earlier seen text and their appendix for Krummrey and Panciera. The forms for
    // about, from-to and at-least counts of traces are the project's own, since those pages leave
    // them to the editor.
    const Case cases[] = {
        {"T.V.No.", "T.V.No."},
        {"194?0?", "194\u0323" + std::string("0\u0323")},
        {"194[.]", "194[.]"},
        {"[...]|", "[...]"},
        {"[......]|", "[......]"},
        {"[~7]|", "[c.7]"},
        {"[5..7]|", "[5-7]"},
        {"[3..]A", "[\u2265" + std::string("3]A")},
        {"[- - -]", "[- - -]"},
        {"+", "+"},
        {"+++", "+++"},
        {"[+3]", "+++"},
        {"[+~5]", "+ c.5 +"},
        {"[+4..6]", "+ 4-6 +"},
        {"[+3..]", "+ \u2265" + std::string("3 +")},
        {"[+ + +]", "+ + +"},
        {"[19]40", "[19]40"},
        {"[19?]40", "[19?]40"},
        {"1{erased}9{erased}3{erased}8{erased}", "\u27E61938\u27E7"},
        {"[...]{erased}|", "\u27E6[...]\u27E7"},
        {"[abc]{erased}", "\u27E6[abc]\u27E7"},
        {"4{over}2{over}", "\u00AB42\u00BB"},
        {"8{erased}2{over}", "\u27E68\u27E7\u00AB2\u00BB"},
        {"T{earlier}V", "T\u0332V"},
        {"{arrow} K", "(property arrow) K"},
        {"{arrow}?", "(property arrow?)"},
        {"T.V.C?o [.]94?0?", "T.V.C\u0323o [.]94\u0323" + std::string("0\u0323")},
    };
    for (const Case& one : cases) {
        CAPTURE(one.typed);
        CHECK(leidenOf(one.typed) == one.leiden);
    }
}

TEST_CASE("Leiden uses the code points of the conventions and none of their doubles",
          "[models][leiden]")
{
    // Code points and their NFC forms: the Unicode Character Database 14; which sign means what:
    // the EpiDoc Guidelines and their appendix for Krummrey and Panciera. What a reading cannot say
    // (corrections U+2E22 U+2E23 or U+2308 U+2309, omissions U+27E8 U+27E9, ligatures U+0361) has
    // no sign here.
    CHECK(leidenOf("A?") == "A\xCC\xA3");                            // U+0323
    CHECK(leidenOf("A{earlier}") == "A\xCC\xB2");                    // U+0332
    CHECK(leidenOf("A{erased}") == "\xE2\x9F\xA6\x41\xE2\x9F\xA7");  // U+27E6, U+27E7
    CHECK(leidenOf("A{over}") == "\xC2\xAB\x41\xC2\xBB");            // U+00AB, U+00BB
    CHECK(leidenOf("[...]A") == "[...]A");                           // three dots, never U+2026

    // U+301A and U+301B are the other form of erasure, U+2329 and U+232A change under NFC, U+2014
    // is one of several dashes for a range: one form each is printed, whatever the reading.
    std::mt19937 random(1958);
    const std::string not_used[] = {"\u301A", "\u301B", "\u2329", "\u232A", "\u2E22", "\u2E23",
                                    "\u2308", "\u2309", "\u27E8", "\u27E9", "\u0361", "\u2014"};
    for (int round = 0; round < 2000; ++round)
        for (const models::Line& line : randomLines(random)) {
            const std::string leiden = models::toLeiden(line);
            CAPTURE(leiden);
            for (const std::string& sign : not_used)
                REQUIRE(leiden.find(sign) == std::string::npos);
        }
}

TEST_CASE("A dot below is never composed with its letter", "[models][leiden]")
{
    CHECK(leidenOf("A?") == "A\xCC\xA3");  // A, U+0323; not U+1EA0
    CHECK(leidenOf("(B|8)") == "B\xCC\xA3");
    // U+0323 and U+0332 are of combining class 220, accents above of class 230 (Unicode Character
    // Database): the signs come first where the accent is a code point of its own.
    CHECK(leidenOf("Q\xCC\x81?") == "Q\xCC\xA3\xCC\x81");
    CHECK(leidenOf("E\xCC\x81?") == "\xC3\x89\xCC\xA3");  // U+00C9 has a code point of its own
    CHECK(leidenOf("A?{earlier}") == "A\xCC\xA3\xCC\xB2");
}

TEST_CASE("No unread stretch vanishes in Leiden", "[models][leiden]")
{
    CHECK(leidenOf("A{cut}") == "A[- - -]");
    CHECK(leidenOf("{cut}A") == "[- - -]A");
    CHECK(leidenOf("A[- - -]") == "A[- - -]");
    CHECK(leidenOf("A[- - -]B") == "A[- - -]B");
    CHECK(leidenOf("+{earlier}") == "+\u0332");
    CHECK(leidenOf("{arrow}{earlier}") == "(property arrow)\u0332");
    CHECK(leidenOf("{arrow}?{earlier}") == "(property arrow?)\u0332");

    models::Cell nothing = models::clearCell("A");
    nothing.alternatives.clear();
    models::Line line;
    line.cells = {nothing};
    CHECK(models::toLeiden(line) == "+");

    // Whatever the counts, also ones that make no sense.
    for (const models::CellState state : {models::CellState::Lost, models::CellState::Traces})
        for (const int least : {-1, 0, 1, 2, 13, 1000000})
            for (const std::optional<int> most :
                 {std::optional<int>(), std::optional<int>(0), std::optional<int>(1),
                  std::optional<int>(7), std::optional<int>(2147483647)})
                for (const bool about : {false, true}) {
                    models::Cell unread;
                    unread.state = state;
                    unread.least = least;
                    unread.most = most;
                    unread.about = about;
                    line.cells = {models::clearCell("A"), unread, models::clearCell("B")};
                    CAPTURE(models::toLeiden(line));
                    CHECK(holdsAnUnreadSign(models::toLeiden(line)));
                }
}

TEST_CASE("A letter that looks like a closing sign beside an opening one stays", "[models][leiden]")
{
    models::Line line;
    line.cells = {models::clearCell("\u00BB"), models::clearCell("\u00AB"),
                  models::clearCell("\u27E7"), models::clearCell("\u27E6")};
    CHECK(models::toLeiden(line) == "\u00BB\u00AB\u27E7\u27E6");
}
