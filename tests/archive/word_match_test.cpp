#include "models/archive/word_match.h"

#include <stdexcept>

#include <catch2/catch.hpp>

#include "models/typed_notation.h"

using namespace models;

namespace {

// Whether a filed line, in the typed notation, is found by a query of one word.
bool finds(const std::string& query, const std::string& filed)
{
    const std::vector<SearchText> words = searchWords(query);
    REQUIRE(words.size() == 1);
    const ParsedNotation parsed = parseTyped(filed);
    REQUIRE_FALSE(parsed.fault);
    REQUIRE(parsed.lines.size() == 1);
    return holdsWord(searchText(parsed.lines[0]), words[0]);
}

}  // namespace

TEST_CASE("Unread letters of the query match filed ones", "[archive][words]")
{
    CHECK(finds("19[.]1", "1941"));
    CHECK(finds("19[.]1", "MAR 1941"));
    CHECK(finds("19[.]1", "3/1941"));
    CHECK_FALSE(finds("19[.]1", "1942"));
    CHECK_FALSE(finds("19[.]1", "191"));
    CHECK_FALSE(finds("19[.]1", "19401"));
    CHECK(finds("19+1", "1941"));
    CHECK(finds("[- - -]ER", "HALLER"));
    CHECK(finds("[- - -]ER", "JACOB HALLER & CO"));
    CHECK(finds("[- - -]ER", "ER"));
    CHECK_FALSE(finds("[- - -]ER", "ERNEST"));
    CHECK_FALSE(finds("[- - -]ER", "HALLE R"));  // a gap does not reach over a space
    CHECK(finds("HA[- - -]", "JACOB HALLER"));
    CHECK_FALSE(finds("HA[- - -]", "JOHANN"));
    CHECK(finds("H[3..5]R", "HALLER"));
    CHECK_FALSE(finds("H[3..5]R", "HALR"));
    CHECK_FALSE(finds("H[3..5]R", "HALLALALLER"));
    CHECK(finds("(1|7)94(0|6)", "1946"));
    CHECK_FALSE(finds("(1|7)94(0|6)", "1948"));
}

TEST_CASE("Unread letters that were filed match the query's", "[archive][words]")
{
    CHECK(finds("1941", "19[.]1"));
    CHECK(finds("1941", "19+1"));
    CHECK(finds("1941", "1(4|9)41"));
    CHECK(finds("1941", "19(9|4)1"));
    CHECK_FALSE(finds("1941", "19[.]2"));
    CHECK(finds("1941", "19[..]1"));  // a part of 19411
    CHECK(finds("1941", "19[1..2]1"));
    CHECK(finds("1941", "[- - -]41"));
    CHECK(finds("HALLER", "HALL[- - -]"));
    CHECK(finds("HALLER", "[~3]LER"));
    CHECK(finds("HALLER", "HALL{cut}"));  // cut off at the hem, no gap counted
    CHECK_FALSE(finds("HALLER", "HALL|"));
    CHECK(finds("HALLER", "[HAL]LER"));  // restored by the person who read
}

TEST_CASE("Unread letters on both sides match", "[archive][words]")
{
    CHECK(finds("19[.]1", "19[.]1"));
    CHECK(finds("19[.]1", "1[.]41"));
    CHECK(finds("[- - -]ER", "HAL[- - -]R"));
    CHECK(finds("[- - -]LASE", "W.P. [...]LASE & SONS"));
}

TEST_CASE("A line that is all lost does not answer every question", "[archive][words]")
{
    CHECK_FALSE(finds("HALLER", "[- - -]"));
    CHECK_FALSE(finds("HALLER", "[......]"));
    CHECK_FALSE(finds("HALLER", "[- - -]ER"));  // a third of the letters
    CHECK(finds("HALLER", "[- - -]LER"));       // half of them
    CHECK_FALSE(holdsWord({}, searchWords("HALLER").at(0)));
    CHECK(finds("[....]", "[- - -]"));  // the question is what is lost
}

TEST_CASE("A word of letters may stand anywhere, without case and accents", "[archive][words]")
{
    CHECK(finds("hall", "HALLER"));
    CHECK(finds("aller", "HALLER"));
    CHECK(finds("mühle", "MUHLE"));
    CHECK(finds("muhle", "Mühle"));
    CHECK_FALSE(finds("hallers", "HALLER"));
    CHECK(holdsWord(searchText(std::string("Größe: 3 — Straße")), searchWords("STRASSE").at(0)));
    CHECK(finds("strasse", "STRAßE"));
    CHECK(finds("straße", "STRASSE"));
    CHECK(finds("&", "HALL & CO"));
}

TEST_CASE("A query is split at its spaces, not within its signs", "[archive][words]")
{
    CHECK(searchWords("").empty());
    CHECK(searchWords("  ").empty());
    CHECK(searchWords("19[.]1 [- - -]ER").size() == 2);
    CHECK(searchWords("[+ + +]X a / b").size() == 3);
    CHECK_THROWS_AS(searchWords("(A"), std::invalid_argument);
    CHECK_THROWS_AS(searchWords("\xFF"), std::invalid_argument);
}

TEST_CASE("Long gaps do not make finding slow or endless", "[archive][words]")
{
    CHECK(finds("A[1..200]B", "A" + std::string(300, 'X') + "B"));
    CHECK_FALSE(finds("A[- - -]B[- - -]C[- - -]D", "A[- - -]D" + std::string(200, 'X')));
}
