#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace models {

// Dates with doubt in them, as the Extended Date/Time Format writes them: ISO 8601-2:2019 in the
// profile of the Library of Congress (4 February 2019), levels 0, 1 and 2. A value keeps its
// writing: two values are equal when they are written alike, and writeEdtf(parsed) is the text that
// was parsed. What days a value means is told by edtf_days.h, sets of days by edtf_set.h.

// ? uncertain, ~ approximate, % both. Joined by `|`.
enum class EdtfDoubt : std::uint8_t { None = 0, Uncertain = 1, Approximate = 2, Both = 3 };

constexpr EdtfDoubt operator|(EdtfDoubt a, EdtfDoubt b)
{
    return static_cast<EdtfDoubt>(static_cast<int>(a) | static_cast<int>(b));
}

// The digits of a year, month or day, and the sign of doubt beside them.
struct EdtfDigits {
    std::int64_t number = 0;  // unread digits count as 0
    unsigned unread = 0;      // bit i: the digit with place value 10^i is an X
    EdtfDoubt doubt{};        // on the right it speaks of this part and of those before it,
    bool doubt_left = false;  // on the left of this part alone

    bool operator==(const EdtfDigits&) const = default;
};

struct EdtfYear : EdtfDigits {
    bool negative = false;  // `number` is without its sign
    bool letter = false;    // Y170000002: a year of more than four digits
    int exponent = 0;       // Y17E7: `number` times ten to this power; 0 when there is no E
    int significant = 0;    // 1950S2: only so many digits count; 0 when there is no S

    bool operator==(const EdtfYear&) const = default;
};

// A time of day, as written: the day that it belongs to is never moved by the shift.
struct EdtfTime {
    enum class Zone : std::uint8_t { Local, Utc, Hours, HoursMinutes };
    int hour = 0, minute = 0, second = 0;
    Zone zone{};
    bool west = false;  // the shift is negative
    int shift_hours = 0, shift_minutes = 0;

    bool operator==(const EdtfTime&) const = default;
};

// A month of 21 to 41 without an X is a part of the year: 21 to 24 seasons, 25 to 28 seasons of the
// north and 29 to 32 of the south, 33 to 36 quarters, 37 to 39 thirds, 40 and 41 halves.
struct EdtfDate {
    EdtfYear year;
    std::optional<EdtfDigits> month, day;
    std::optional<EdtfTime> time;

    bool operator==(const EdtfDate&) const = default;
    bool isPartOfYear() const { return month && !month->unread && month->number >= 21; }
};

// One end of an interval or of a run in a set.
struct EdtfEnd {
    enum class Kind : std::uint8_t { Date, Open, Unknown };  // 1940, .., nothing
    Kind kind{};
    EdtfDate date;  // only of an end that is a date

    bool operator==(const EdtfEnd&) const = default;
};

struct EdtfMember {
    EdtfEnd from;               // a single date is `from`
    std::optional<EdtfEnd> to;  // of intervals and runs

    bool operator==(const EdtfMember&) const = default;
};

// A date or an interval has one member; [one of] and {all of} have one or more.
struct Edtf {
    enum class Kind : std::uint8_t { Date, Interval, OneOf, AllOf };
    Kind kind{};
    std::vector<EdtfMember> members;

    bool operator==(const Edtf&) const = default;
};

// Why a text is not EDTF, fit to be shown under it.
struct EdtfFault {
    std::size_t position = 0;  // 0-based, in bytes
    std::string expected;      // what should stand there: "a month from 01 to 12"

    // "At character 5: expected a month from 01 to 12."
    std::string message() const;
};

// Reads one EDTF text. Never throws on foreign text. Where the format leaves a choice:
// - Taken: qualifiers and X together, X and part-years anywhere a date may stand, negative years
//   with months, Y years in intervals and sets, ../.. for any day at all.
// - Refused: masks that fit no day, ends before beginnings, an interval without a date but for
//   ../.., -0000, times without seconds, qualifiers on both sides of a part, runs between ends of
//   different precision, years of more than 18 digits.
std::variant<Edtf, EdtfFault> parseEdtf(std::string_view text);

std::string writeEdtf(const Edtf& edtf);

// The lowest level (0, 1 or 2) that has everything the value uses.
int edtfLevel(const Edtf& edtf);

struct EdtfDoubts {
    EdtfDoubt year{}, month{}, day{};
};

// What the qualifiers of a date say of each of its parts.
EdtfDoubts doubtsOf(const EdtfDate& date);

// First and last year an EDTF string allows; nullopt on an open or unknown side.
struct YearBounds {
    std::optional<int> first, last;
    bool soft = false;  // qualified by ?, ~ or %: the limits are not sharp

    bool operator==(const YearBounds&) const = default;
};

// Years of an EDTF text whose years are 0 to 9999, as marks and registers have them: of the first
// and the last day it allows. Anything else gives nullopt, such as a negative or longer year, and
// ../.. , which bounds nothing.
std::optional<YearBounds> edtfYearBounds(const std::string& edtf);

// Why a text has no such bounds, as a part of a sentence: "at character 6 should stand a month from
// 01 to 12"; empty when it has.
std::string whyNoYearBounds(const std::string& edtf);

}  // namespace models
