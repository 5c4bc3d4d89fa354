#include "models/letters.h"

#include <catch2/catch.hpp>

TEST_CASE("Text is split where a person sees characters", "[models][letters]")
{
    CHECK(models::charactersOf("A\xCC\x81"
                               "B") == std::vector<std::string>{"A\xCC\x81", "B"});
    CHECK(models::charactersOf("A\r\nB") == std::vector<std::string>{"A", "\r\n", "B"});
    CHECK(models::charactersOf("\xE2\x86\x91") == std::vector<std::string>{"\xE2\x86\x91"});
    CHECK(models::charactersOf("").empty());
    CHECK(models::charactersOf("A\xFF") == std::vector<std::string>{"A", "\xEF\xBF\xBD"});
}

TEST_CASE("Bytes that are not UTF-8 are found where they stand", "[models][letters]")
{
    CHECK_FALSE(models::firstBadByte("caf\xC3\xA9"));
    CHECK(models::firstBadByte("caf\xE9") == 3U);           // Latin-1
    CHECK(models::firstBadByte("A\xC0\x80") == 1U);         // overlong
    CHECK(models::firstBadByte("\xED\xA0\x80") == 0U);      // a surrogate
    CHECK(models::firstBadByte("\xF4\x90\x80\x80") == 0U);  // beyond U+10FFFF
    CHECK(models::firstBadByte("ab\xE2\x86") == 2U);        // cut short
    CHECK_FALSE(models::firstBadByte("\xF4\x8F\xBF\xBF"));  // U+10FFFF itself
}

TEST_CASE("Accents come in one order and one code point", "[models][letters]")
{
    // Unicode Standard Annex 15: NFC orders marks by class and composes.
    CHECK(models::normalForm("C\xCC\xA7") == "\xC3\x87");          // C cedilla
    CHECK(models::normalForm("u\xCC\x88\xCC\x81") == "\xC7\x98");  // u, diaeresis, acute
    // The one code point for both lies above U+024F: the acute stays apart.
    CHECK(models::normalForm("C\xCC\x81\xCC\xA7") == "\xC3\x87\xCC\x81");
    CHECK(models::normalForm("\xC3\x9F") == "\xC3\x9F");
    CHECK(models::normalForm("q\xCC\x81") == "q\xCC\x81");
    CHECK(models::normalForm("\xC3\xA9\xCC\xA3") == "\xC3\xA9\xCC\xA3");
}

TEST_CASE("Capitals are found for Latin letters with accents", "[models][letters]")
{
    CHECK(models::capitalOf("a") == "A");
    CHECK(models::capitalOf("\xC3\xA9") == "\xC3\x89");
    CHECK(models::capitalOf("\xC5\xBE") == "\xC5\xBD");  // z caron
    CHECK(models::capitalOf("\xC3\xB7") == "\xC3\xB7");  // the division sign is no letter
    CHECK(models::capitalOf("&") == "&");
}
