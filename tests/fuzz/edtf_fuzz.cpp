// Any text as EDTF: it is refused with a place and a reason, or it comes back as it was written,
// with the same days, and agrees with itself as a set of days.
#include "models/edtf.h"
#include "models/edtf_set.h"
#include "tests/fuzz/fuzz_driver.h"

namespace {

using models::CalendarDay;
using models::EdtfEnd;

void promise(bool holds, const char* what)
{
    if (!holds)
        fuzz::failed(what);
}

void checkFault(const models::EdtfFault& fault, std::string_view text)
{
    promise(fault.position <= text.size(), "a fault lies in the text or at its end");
    promise(!fault.expected.empty(), "a fault says what was expected");
}

void checkDays(const models::Edtf& edtf)
{
    const models::EdtfDays days = models::daysOf(edtf);
    const bool begins = days.first.kind == EdtfEnd::Kind::Date;
    const bool ends = days.last.kind == EdtfEnd::Kind::Date;
    if (begins) {
        promise(models::exists(days.first.day), "the first day is in the calendar");
        promise(models::couldBe(edtf, days.first.day), "the first day is one of the days");
        promise(models::couldBeIn(edtf, days.first.day.year), "its year is one of the years");
    }
    if (ends) {
        promise(models::exists(days.last.day), "the last day is in the calendar");
        promise(models::couldBe(edtf, days.last.day), "the last day is one of the days");
    }
    promise(!begins || !ends || days.first.day <= days.last.day, "the last day is not the earlier");
    for (const CalendarDay& day : {CalendarDay{1940, 2, 29}, CalendarDay{-1, 12, 31}})
        promise(!models::couldBe(edtf, day) || models::couldBeIn(edtf, day.year),
                "a year has the days it could be");
}

// Sets of every single day of ten thousand years are slow to make, and tell nothing more.
bool isLarge(const models::Edtf& edtf)
{
    std::int64_t years = 0;
    for (const models::EdtfMember& member : edtf.members)
        if (!member.to && member.from.date.month)
            years += models::numberOfYears(member.from.date.year);
    return years > 200;
}

void checkSet(const models::Edtf& edtf)
{
    const models::DaySet days = models::setOf(edtf);
    const models::EdtfDays hull = models::daysOf(edtf);
    promise(!days.empty(), "a date has a day");
    promise(days.runs.front().first ==
                (hull.first.kind == EdtfEnd::Kind::Date ? hull.first.day : models::no_first_day),
            "the set begins with the first day");
    promise(days.runs.back().last ==
                (hull.last.kind == EdtfEnd::Kind::Date ? hull.last.day : models::no_last_day),
            "the set ends with the last day");
    promise(models::unionOf(days, days) == days, "a set joined with itself is itself");
    promise(models::intersectionOf(days, days) == days, "a set met with itself is itself");
    for (const CalendarDay& day : {CalendarDay{1940, 2, 29}, CalendarDay{1941, 3, 5}})
        promise(days.contains(day) == models::couldBe(edtf, day), "the set has the days");
    for (const models::RunMeans run : {models::RunMeans::Interval, models::RunMeans::OneDate}) {
        const auto simple = models::simplestForm(days, run);
        if (!simple)
            return;
        const auto again = models::parseEdtf(*simple);
        promise(std::holds_alternative<models::Edtf>(again), "the simplest form is EDTF");
        promise(models::setOf(std::get<models::Edtf>(again)) == days, "it is the same days");
    }
}

}  // namespace

bool fuzzOne(std::string_view text)
{
    const auto parsed = models::parseEdtf(text);
    if (const auto* fault = std::get_if<models::EdtfFault>(&parsed)) {
        checkFault(*fault, text);
        return false;
    }
    const models::Edtf& edtf = std::get<models::Edtf>(parsed);
    const std::string written = models::writeEdtf(edtf);
    promise(written == text, "what is written is what was parsed");
    const auto again = models::parseEdtf(written);
    promise(std::holds_alternative<models::Edtf>(again), "what is written is EDTF");
    promise(std::get<models::Edtf>(again) == edtf, "it is the same value");
    promise(models::daysOf(std::get<models::Edtf>(again)) == models::daysOf(edtf),
            "it has the same days");
    const int level = models::edtfLevel(edtf);
    promise(level >= 0 && level <= 2, "a level is 0, 1 or 2");
    checkDays(edtf);
    if (!isLarge(edtf))
        checkSet(edtf);
    const auto years = models::edtfYearBounds(std::string(text));
    promise(!years || !years->first || !years->last || *years->first <= *years->last,
            "the last year is not the earlier");
    return true;
}

FuzzSeeds fuzzSeeds()
{
    return {{"1985",
             "1985-04",
             "1985-04-12",
             "1985-04-12T23:20:30",
             "1985-04-12T23:20:30Z",
             "1985-04-12T23:20:30-04",
             "1985-04-12T23:20:30+04:30",
             "1964/2008",
             "Y170000002",
             "Y-17E7",
             "1950S2",
             "Y3388E2S3",
             "2001-21",
             "2001-34",
             "1984?",
             "2004-06~",
             "2004-06-11%",
             "201X",
             "19X0-02-29",
             "1985-04-XX",
             "1940-1X",
             "1985-04-12/..",
             "../1985",
             "1985/",
             "/1985-04",
             "-1985",
             "-198X-XX",
             "[1667,1668,1670..1672]",
             "[..1760-12-03]",
             "{1760-12..}",
             "{1960,1961-12}",
             "2004?-06-11",
             "?2004-06-~11",
             "1940-28",
             "XXXX-12-XX",
             "../..",
             "2004-06-~01/2004-06-~20"},
            {"1940",      "194X", "-",      "03",  "-1X", "-29",  "-XX",  "?", "~",        "%",
             "/",         "..",   "[",      "]",   "{",   "}",    ",",    "Y", "E7",       "S2",
             "T10:00:00", "Z",    "+01:00", "-21", "-24", "0000", "9999", "X", "999999999"}};
}
