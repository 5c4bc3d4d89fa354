#include "models/edtf_set.h"

#include <algorithm>

namespace models {

namespace {

CalendarDay dayAfter(const CalendarDay& day)
{
    if (day.day < daysOfMonth(day.year, day.month))
        return {day.year, day.month, day.day + 1};
    if (day.month < 12)
        return {day.year, day.month + 1, 1};
    return {day.year + 1, 1, 1};
}

bool touches(const DayRun& run, const DayRun& next)
{
    return run.last == no_last_day || next.first <= dayAfter(run.last);
}

// The days of one month that fit, as runs.
void addMonth(std::vector<DayRun>& runs, const EdtfDate& date, std::int64_t year, int month)
{
    if (date.month && !fitsDigits(*date.month, month))
        return;
    const int days = daysOfMonth(year, month);
    if (!date.day) {
        runs.push_back({{year, month, 1}, {year, month, days}});
        return;
    }
    for (int day = 1; day <= days; ++day)
        if (fitsDigits(*date.day, day))
            runs.push_back({{year, month, day}, {year, month, day}});
}

void addYear(std::vector<DayRun>& runs, const EdtfDate& date, std::int64_t year)
{
    if (!date.month) {
        runs.push_back({{year, 1, 1}, {year, 12, 31}});
    } else if (date.isPartOfYear()) {
        const int part = static_cast<int>(date.month->number);
        runs.push_back({firstDayOfPart(year, part), lastDayOfPart(year, part)});
    } else {
        for (int month = 1; month <= 12; ++month)
            addMonth(runs, date, year, month);
    }
}

void addDate(std::vector<DayRun>& runs, const EdtfDate& date)
{
    if (date.year.unread != 0) {
        const int years = numberOfYears(date.year);
        for (int i = 0; i < years; ++i)
            addYear(runs, date, yearAt(date.year, i));
    } else if (!date.month) {
        runs.push_back({{firstYearOf(date.year), 1, 1}, {lastYearOf(date.year), 12, 31}});
    } else {
        addYear(runs, date, firstYearOf(date.year));
    }
}

void addMember(std::vector<DayRun>& runs, const EdtfMember& member)
{
    if (!member.to) {
        addDate(runs, member.from.date);
        return;
    }
    DayRun run{no_first_day, no_last_day};
    if (member.from.kind == EdtfEnd::Kind::Date)
        run.first = firstDayOf(member.from.date).value_or(no_first_day);
    if (member.to->kind == EdtfEnd::Kind::Date)
        run.last = lastDayOf(member.to->date).value_or(no_last_day);
    runs.push_back(run);
}

}  // namespace

bool DaySet::contains(const CalendarDay& day) const
{
    const auto after = std::upper_bound(
        runs.begin(), runs.end(), day,
        [](const CalendarDay& wanted, const DayRun& run) { return wanted < run.first; });
    return after != runs.begin() && day <= std::prev(after)->last;
}

DaySet setOfRuns(std::vector<DayRun> runs)
{
    std::sort(runs.begin(), runs.end(),
              [](const DayRun& a, const DayRun& b) { return a.first < b.first; });
    DaySet set;
    for (const DayRun& run : runs) {
        if (run.last < run.first)
            continue;
        if (!set.runs.empty() && touches(set.runs.back(), run))
            set.runs.back().last = std::max(set.runs.back().last, run.last);
        else
            set.runs.push_back(run);
    }
    return set;
}

DaySet setOfYears(const std::vector<std::int64_t>& years)
{
    std::vector<DayRun> runs;
    for (const std::int64_t year : years)
        runs.push_back({{year, 1, 1}, {year, 12, 31}});
    return setOfRuns(std::move(runs));
}

DaySet setOf(const Edtf& edtf)
{
    std::vector<DayRun> runs;
    for (const EdtfMember& member : edtf.members)
        addMember(runs, member);
    return setOfRuns(std::move(runs));
}

DaySet intersectionOf(const DaySet& a, const DaySet& b)
{
    DaySet both;
    for (std::size_t i = 0, j = 0; i < a.runs.size() && j < b.runs.size();) {
        const DayRun common{std::max(a.runs[i].first, b.runs[j].first),
                            std::min(a.runs[i].last, b.runs[j].last)};
        if (common.first <= common.last)
            both.runs.push_back(common);
        if (a.runs[i].last < b.runs[j].last)
            ++i;
        else
            ++j;
    }
    return both;
}

DaySet unionOf(const DaySet& a, const DaySet& b)
{
    std::vector<DayRun> runs = a.runs;
    runs.insert(runs.end(), b.runs.begin(), b.runs.end());
    return setOfRuns(std::move(runs));
}

}  // namespace models
