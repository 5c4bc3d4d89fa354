#include <algorithm>
#include <bit>

#include "models/edtf.h"

namespace models {

namespace {

char signOf(EdtfDoubt doubt)
{
    return doubt == EdtfDoubt::Uncertain ? '?' : doubt == EdtfDoubt::Approximate ? '~' : '%';
}

std::string twoDigits(int number)
{
    return {static_cast<char>('0' + number / 10), static_cast<char>('0' + number % 10)};
}

std::string digitsText(const EdtfDigits& digits, int length)
{
    std::string text(static_cast<std::size_t>(length), 'X');
    std::int64_t rest = digits.number;
    for (int place = 0; place < length; ++place, rest /= 10)
        if ((digits.unread >> place & 1U) == 0)
            text[static_cast<std::size_t>(length - 1 - place)] = static_cast<char>('0' + rest % 10);
    return text;
}

// The part with its sign of doubt on the side where it was.
void addPart(std::string& text, const EdtfDigits& digits, const std::string& written)
{
    if (digits.doubt != EdtfDoubt::None && digits.doubt_left)
        text += signOf(digits.doubt);
    text += written;
    if (digits.doubt != EdtfDoubt::None && !digits.doubt_left)
        text += signOf(digits.doubt);
}

std::string yearText(const EdtfYear& year)
{
    std::string text = year.letter ? "Y" : "";
    if (year.negative)
        text += '-';
    text += year.letter ? std::to_string(year.number) : digitsText(year, 4);
    if (year.exponent > 0)
        text.append("E").append(std::to_string(year.exponent));
    if (year.significant > 0)
        text.append("S").append(std::to_string(year.significant));
    return text;
}

void addTime(std::string& text, const EdtfTime& time)
{
    text += 'T';
    text.append(twoDigits(time.hour)).append(":").append(twoDigits(time.minute));
    text.append(":").append(twoDigits(time.second));
    if (time.zone == EdtfTime::Zone::Local)
        return;
    if (time.zone == EdtfTime::Zone::Utc) {
        text += 'Z';
        return;
    }
    text.append(time.west ? "-" : "+").append(twoDigits(time.shift_hours));
    if (time.zone == EdtfTime::Zone::HoursMinutes)
        text.append(":").append(twoDigits(time.shift_minutes));
}

void addDate(std::string& text, const EdtfDate& date)
{
    addPart(text, date.year, yearText(date.year));
    for (const auto* part : {&date.month, &date.day}) {
        if (!*part)
            continue;
        text += '-';
        addPart(text, **part, digitsText(**part, 2));
    }
    if (date.time)
        addTime(text, *date.time);
}

void addEnd(std::string& text, const EdtfEnd& end)
{
    if (end.kind == EdtfEnd::Kind::Date)
        addDate(text, end.date);
    else if (end.kind == EdtfEnd::Kind::Open)
        text += "..";
}

// One end of a run in a set, where the dots stand once however the run is open.
void addRunEnd(std::string& text, const EdtfEnd& end)
{
    if (end.kind == EdtfEnd::Kind::Date)
        addDate(text, end.date);
}

int levelOfYear(const EdtfYear& year)
{
    if (year.exponent > 0 || year.significant > 0)
        return 2;
    if (year.letter || year.negative)
        return year.unread == 0 ? 1 : 2;
    const bool last_digits = year.unread == 0b1 || year.unread == 0b11;
    return year.unread == 0 ? 0 : last_digits ? 1 : 2;
}

int levelOfMasks(const EdtfDate& date)
{
    const unsigned month = date.month ? date.month->unread : 0U;
    const unsigned day = date.day ? date.day->unread : 0U;
    if ((date.year.unread | month | day) == 0)
        return 0;
    const bool whole_parts = (month == 0 || month == 0b11) && (day == 0 || day == 0b11);
    const bool from_the_end = date.year.unread == 0 && (month == 0 || !date.day || day != 0);
    return whole_parts && (from_the_end || !date.month) ? 1 : 2;
}

int levelOfDoubt(const EdtfDate& date)
{
    const EdtfDigits* last = &date.year;
    bool inner = false;
    for (const auto* part : {&date.month, &date.day}) {
        if (!*part)
            continue;
        inner = inner || last->doubt != EdtfDoubt::None;
        last = &**part;
    }
    if (inner || last->doubt_left)
        return 2;
    return last->doubt == EdtfDoubt::None ? 0 : 1;
}

int levelOfDate(const EdtfDate& date)
{
    int level = std::max({levelOfYear(date.year), levelOfMasks(date), levelOfDoubt(date)});
    if (date.isPartOfYear())
        level = std::max(level, date.month->number <= 24 ? 1 : 2);
    return level;
}

bool hasMask(const EdtfDate& date)
{
    return date.year.unread != 0 || (date.month && date.month->unread != 0) ||
           (date.day && date.day->unread != 0);
}

// In an interval, unread digits belong to level 2 and open and unknown ends to level 1.
int levelOfEnd(const EdtfEnd& end)
{
    if (end.kind != EdtfEnd::Kind::Date)
        return 1;
    return hasMask(end.date) ? 2 : levelOfDate(end.date);
}

EdtfDoubt backwards(const EdtfDigits& digits)
{
    return digits.doubt_left ? EdtfDoubt::None : digits.doubt;
}

}  // namespace

std::string writeEdtf(const Edtf& edtf)
{
    std::string text;
    if (edtf.kind == Edtf::Kind::Date || edtf.kind == Edtf::Kind::Interval) {
        const EdtfMember& member = edtf.members.at(0);
        addEnd(text, member.from);
        if (member.to) {
            text += '/';
            addEnd(text, *member.to);
        }
        return text;
    }
    const bool one_of = edtf.kind == Edtf::Kind::OneOf;
    text += one_of ? '[' : '{';
    for (const EdtfMember& member : edtf.members) {
        if (text.size() > 1)
            text += ',';
        addRunEnd(text, member.from);
        if (member.to) {
            text += "..";
            addRunEnd(text, *member.to);
        }
    }
    text += one_of ? ']' : '}';
    return text;
}

int edtfLevel(const Edtf& edtf)
{
    if (edtf.kind == Edtf::Kind::OneOf || edtf.kind == Edtf::Kind::AllOf)
        return 2;
    const EdtfMember& member = edtf.members.at(0);
    if (!member.to)
        return levelOfDate(member.from.date);
    return std::max(levelOfEnd(member.from), levelOfEnd(*member.to));
}

EdtfDoubts doubtsOf(const EdtfDate& date)
{
    EdtfDoubts doubts{.year = date.year.doubt};
    if (date.month) {
        doubts.month = date.month->doubt;
        doubts.year = doubts.year | backwards(*date.month);
    }
    if (date.day) {
        doubts.day = date.day->doubt;
        doubts.month = doubts.month | backwards(*date.day);
        doubts.year = doubts.year | backwards(*date.day);
    }
    return doubts;
}

}  // namespace models
