#include <catch2/catch.hpp>

#include "models/edtf.h"

namespace {

struct RefusedRow {
    const char* text;
    std::size_t position;  // in bytes
    const char* expected;  // words of what should stand there
};

// What the Library of Congress specification (4 February 2019) does not allow: its list of what
// changed since the draft of 2012 (u, x, unknown, open, brackets, y e p), its rule of hyphens and
// four digits, its "no spaces", its sets and intervals, and days that the Gregorian calendar lacks.
// Positions are those of the first byte that no longer fits, or of the number that cannot be.
constexpr RefusedRow refused_rows[] = {
    {"", 0, "a date"},                    // empty
    {"40", 2, "a year of four digits"},   // two-digit year is not EDTF (the LOC specification needs
                                          // four digits; ISO 8601-1 reads two digits as a CENTURY)
    {"194", 3, "a year of four digits"},  // three-digit year is not in the LOC specification (ISO
                                          // 8601-2 reads it as a DECADE)
    {"'40", 0, "a year of four digits"},  // apostrophe year
    {"194u", 3, "a year of four digits"},           // 2012 draft letter u
    {"194x", 3, "a year of four digits"},           // lower-case x
    {"19uu", 2, "a year of four digits"},           // 2012 draft
    {"194-", 3, "a year of four digits"},           // hyphen for a lost digit
    {"194.", 3, "a year of four digits"},           // dot for a lost digit
    {"194_", 3, "a year of four digits"},           // underscore for a lost digit
    {"194?X", 3, "a year of four digits"},          // qualifier inside a number
    {"19?0", 2, "a year of four digits"},           // question mark in place of a digit
    {"194[0]", 3, "a year of four digits"},         // Leiden bracket inside a date
    {"1940-3", 6, "a month"},                       // one-digit month
    {"1940-13", 5, "a month"},                      // no month 13
    {"1940-00", 5, "a month"},                      // no month 00
    {"1940-20", 5, "a month"},                      // 20 is neither month nor season
    {"1940-42", 5, "a month"},                      // 42 is beyond the sub-year groupings
    {"1940-02-30", 8, "a day that the month has"},  // no such day
    {"1941-02-29", 8, "a day that the month has"},  // not a leap year
    {"1900-02-29", 8, "a day that the month has"},  // not a leap year (century rule)
    {"1940-06-31", 8, "a day that the month has"},  // June has 30 days
    {"1940-03-32", 8, "a day that the month has"},  // no day 32
    {"1940-03-00", 8, "a day that the month has"},  // no day 00
    {"1940-03-5", 9, "a day of two digits"},        // one-digit day
    {"03/1940", 2, "a year of four digits"},        // month first
    {"3/40", 1, "a year of four digits"},           // printed mark, not EDTF
    {"1940/06", 7, "a year of four digits"},        // end 06 has two digits
    {"III.1940", 0, "a year of four digits"},       // Roman month
    {"c.1940", 0, "a year of four digits"},         // use 1940~
    {"ca. 1940", 0, "a year of four digits"},       // use 1940~
    {"1940s", 4, "the end of the date"},            // use 194X
    {"1940 ?", 4, "the end of the date"},           // space before qualifier
    {"1940??", 5, "the end of the date"},           // doubled qualifier
    {"1940?~", 5, "the end of the date"},           // use %
    {"1940~?", 5, "the end of the date"},           // use %
    {"(1940)?", 0, "a year of four digits"},        // 2012 grouping
    {"(1940-03)~", 0, "a year of four digits"},     // 2012 grouping
    {"unknown/1940", 0, "a year of four digits"},   // 2012 keyword; use /1940
    {"1940/open", 5, "a year of four digits"},      // 2012 keyword; use 1940/..
    {"1940/unknown", 5, "a year of four digits"},   // 2012 keyword
    {"y17000", 0, "a year of four digits"},         // lower-case y
    {"Y1940", 1, "more than four digits"},   // Y only when the year has more than four digits
    {"19400315", 4, "the end of the date"},  // basic format is not permitted
    {"1940-W12", 5, "a month"},              // week dates are outside level 0
    {"1940-075", 7, "the end of the date"},  // ordinal dates are outside level 0
    {"1940-03-15/P1M", 11, "a year of four digits"},   // durations are excluded
    {"P1Y/1940", 0, "a year of four digits"},          // durations are excluded
    {"1940-03-15T25:00:00", 11, "an hour"},            // no hour 25
    {"1940-03-15T10:00:00/1941", 19, "no interval"},   // time of day is excluded from intervals
    {"[1938,1939", 10, "or ']'"},                      // unclosed set
    {"1938,1939", 4, "the end of the date"},           // list without brackets
    {"[1938, 1939]", 6, "a year of four digits"},      // spaces are not allowed anywhere
    {"[1938;1939]", 5, "or ']'"},                      // wrong separator
    {"{1938,1939]", 10, "or '}'"},                     // mismatched brackets
    {"[]", 1, "a year of four digits"},                // empty set
    {"[1938.1940]", 5, "or ']'"},                      // single dot
    {"1938..1940", 4, "the end of the date"},          // consecutive years need brackets
    {"1938-1940", 5, "a month"},                       // hyphen range
    {"1938–1940", 4, "the end of the date"},           // en dash range
    {"1940-21-05", 7, "no days"},                      // season with a day
    {"1940S", 5, "after S"},                           // S without digits
    {"1940S0", 5, "after S"},                          // significant digits must be positive
    {"Y17E", 4, "after E"},                            // exponent missing
    {"Y17e7", 1, "more than four digits"},             // lower-case e
    {"1950p2", 4, "the end of the date"},              // 2012 draft letter p
    {" 1940", 0, "a year of four digits"},             // leading space
    {"1940 ", 4, "the end of the date"},               // trailing space
    {"l940", 0, "a year of four digits"},              // letter l for digit 1
    {"194O", 3, "a year of four digits"},              // letter O for digit 0
    {"１９４０", 0, "a year of four digits"},          // full-width digits
    {"+1940", 0, "a year of four digits"},             // plus sign
    {"1940--03", 5, "a month"},                        // double hyphen
    {"1940-XX-XX-XX", 10, "the end of the date"},      // too many components
    {"1940/1938/1936", 9, "the end of the interval"},  // two solidi
    {"1940\\1941", 4, "the end of the date"},          // backslash
    {"1940-09-31?", 8, "a day that the month has"},    // no such day, qualified
    {"194X-02-30", 8, "a day that the month has"},     // no such day in any year
    {"1940-03-1x", 9, "a day of two digits"},          // lower-case x
};

struct DisputedRow {
    const char* text;
    bool taken;
};

// Where the specification does not speak clearly, and checkers in use differ, this is what is done.
constexpr DisputedRow disputed_rows[] = {
    // Refused: its complete time of day has seconds.
    {"1940-03-15T10:00", false},
    // Refused: an end before the beginning is a slip of the pen, never a date.
    {"1940/1938", false},
    // Refused for the same reason: the last day of February is before 15 March.
    {"1940-03-15/1940-02", false},
    // Taken: each side is allowed, and the union of two open intervals can be written so.
    {"../..", true},
    // Refused: a lone stroke says nothing, and is likelier a field filled in by mistake.
    {"/", false},
    // Refused: there is one year zero, and it has no sign.
    {"-0000", false},
    // Taken: ISO 8601 has a year zero.
    {"0000", true},
    // Refused: no day fits, so it can only be a slip.
    {"1940-02-3X", false},
    // Taken: an X may stand in any place; only October fits.
    {"1940-X0", true},
    // Refused: no month fits, and parts of a year are not said to be masked.
    {"1940-2X", false},
    // Refused: the second sign says nothing that the first does not.
    {"?1940?", false},
    // Taken: a sign at the end speaks of the whole date, whatever its parts.
    {"1940-21?", true},
    // Taken: a year with an X is a year, and spring is known in each of them.
    {"194X-21", true},
    // Taken: a season has a first and a last day, which is all an interval needs.
    {"1940-21/1940-23", true},
    // Taken: a member is a date, and a date may be in doubt.
    {"[1938?,1939]", true},
    // Taken: a member is a date, and a date may have unread digits.
    {"[194X,1950]", true},
    // Taken: a digit can be unread and the rest in doubt at once; the two mean different things.
    {"194X?", true},
    // Refused: the sign on the right already speaks of the month.
    {"1940-~03~-15", false},
};

}  // namespace

TEST_CASE("What is not EDTF is refused where it goes wrong", "[models][edtf]")
{
    for (const RefusedRow& row : refused_rows) {
        CAPTURE(row.text);
        const auto parsed = models::parseEdtf(row.text);
        REQUIRE(std::holds_alternative<models::EdtfFault>(parsed));
        const auto& fault = std::get<models::EdtfFault>(parsed);
        CHECK(fault.position == row.position);
        CHECK_THAT(fault.expected, Catch::Contains(row.expected));
    }
}

TEST_CASE("Disputed EDTF is taken or refused as is laid down", "[models][edtf]")
{
    for (const DisputedRow& row : disputed_rows) {
        CAPTURE(row.text);
        const auto parsed = models::parseEdtf(row.text);
        CHECK(std::holds_alternative<models::Edtf>(parsed) == row.taken);
    }
}

// Choices of our own beside the table, each by the rule named beside it.
TEST_CASE("Further slips in EDTF are refused", "[models][edtf]")
{
    constexpr RefusedRow rows[] = {
        {"1940-03-15T10:60:00", 14, "minutes"},      // ISO 8601-1: minutes are 00 to 59
        {"1940-03-15T10:00:60", 17, "seconds"},      // a leap second ends an hour (from memory)
        {"1940-03-15T10:00:00-00", 19, "Z"},         // no shift is never west (from memory)
        {"194X-03-15T10:00:00", 10, "without X"},    // times stand in level 0 alone
        {"Y01940", 1, "first digit"},                // the digits of a long year are counted
        {"Y1234567890123456789", 1, "18 digits"},    // 64 bits
        {"Y17E17", 1, "18 digits"},                  // 64 bits
        {"Y17E07", 4, "after E"},                    // one way of writing a number
        {"19XXS2", 4, "no S"},                       // S counts digits that are known
        {"1950S5", 5, "after S"},                    // a year of four digits has no fifth
        {"[1940..1938]", 7, "not before"},           // as with intervals
        {"[1938..1940-03]", 7, "as precise"},        // specification: same precision
        {"[1940,..1946]", 6, "a year"},              // specification: open at the beginning
        {"[1940..,1946]", 7, "a year"},              // specification: open at the end
        {"[..]", 3, "a year"},                       // an open run needs a date
        {"-?1940", 1, "a year"},                     // a sign stands beside the part, not in it
        {"1940-03-15T10:00:00Z+01", 20, "the end"},  // one zone
        {"1940/..x", 7, "the end of the interval"},  // nothing follows
    };
    for (const RefusedRow& row : rows) {
        CAPTURE(row.text);
        const auto parsed = models::parseEdtf(row.text);
        REQUIRE(std::holds_alternative<models::EdtfFault>(parsed));
        CHECK(std::get<models::EdtfFault>(parsed).position == row.position);
        CHECK_THAT(std::get<models::EdtfFault>(parsed).expected, Catch::Contains(row.expected));
    }
    CHECK(std::get<models::EdtfFault>(models::parseEdtf("1940-13"))
              .message()
              .find("At character 6: expected a month from 01 to 12") == 0);
}
