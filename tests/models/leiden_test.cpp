#include "models/leiden.h"

#include <catch2/catch.hpp>

#include "models/typed_notation.h"

namespace {

std::string leidenOf(const std::string& typed)
{
    const models::ParsedNotation parsed = models::parseTyped(typed);
    REQUIRE_FALSE(parsed.fault);
    REQUIRE(parsed.lines.size() == 1);
    return models::toLeiden(parsed.lines.front());
}

}  // namespace

TEST_CASE("Leiden prints each state by its own sign", "[models][leiden]")
{
    // Signs after the EpiDoc Guidelines' pages on unclear, lost, illegible and restored text and
    // their appendix for Krummrey and Panciera.
    CHECK(leidenOf("T.V.No.") == "T.V.No.");
    CHECK(leidenOf("194?0?") ==
          "194\xCC\xA3"
          "0\xCC\xA3");
    CHECK(leidenOf("194[.]") == "194[.]");
    CHECK(leidenOf("[...]|") == "[...]");
    CHECK(leidenOf("+") == "+");
    CHECK(leidenOf("+++") == "+++");
    CHECK(leidenOf("[19]40") == "[19]40");
    CHECK(leidenOf("[19?]40") == "[19?]40");
    CHECK(leidenOf("[- - -]") == "[- - -]");
    CHECK(leidenOf("[5..7]") == "[5-7]");
    CHECK(leidenOf("1{erased}9{erased}") ==
          "\xE2\x9F\xA6"
          "19"
          "\xE2\x9F\xA7");
    CHECK(leidenOf("4{over}2{over}") ==
          "\xC2\xAB"
          "42"
          "\xC2\xBB");
    CHECK(leidenOf("T{earlier}V") ==
          "T\xCC\xB2"
          "V");
}

TEST_CASE("A dot below is never composed with its letter", "[models][leiden]")
{
    CHECK(leidenOf("A?") == "A\xCC\xA3");  // A, U+0323; not U+1EA0
    CHECK(leidenOf("(B|8)") == "B\xCC\xA3");
}

TEST_CASE("No unread stretch vanishes in Leiden", "[models][leiden]")
{
    CHECK(leidenOf("[+ + +]") == "+ + +");
    CHECK(leidenOf("[+2..4]") == "+ 2-4 +");
    CHECK(leidenOf("[3..]A") ==
          "[\xE2\x89\xA5"
          "3]A");
    CHECK(leidenOf("A{cut}") == "A[- - -]");
    CHECK(leidenOf("{cut}A") == "[- - -]A");
    CHECK(leidenOf("A[- - -]") == "A[- - -]");

    models::Cell nothing = models::clearCell("A");
    nothing.alternatives.clear();
    models::Line line;
    line.cells = {nothing};
    CHECK(models::toLeiden(line) == "+");
}
