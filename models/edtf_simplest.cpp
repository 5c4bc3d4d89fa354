#include <algorithm>
#include <string>

#include "models/edtf_set.h"

namespace models {

namespace {

std::string padded(std::int64_t number, std::size_t length)
{
    std::string text = std::to_string(number);
    if (text.size() < length)
        text.insert(0, length - text.size(), '0');
    return text;
}

std::string yearText(std::int64_t year)
{
    if (year > 9999 || year < -9999)
        return std::to_string(year).insert(0, 1, 'Y');
    return year < 0 ? padded(-year, 4).insert(0, 1, '-') : padded(year, 4);
}

bool endsMonth(const CalendarDay& day)
{
    return day.day == daysOfMonth(day.year, day.month);
}

bool isWholeYears(const DayRun& run)
{
    return run.first.month == 1 && run.first.day == 1 && run.last.month == 12 && run.last.day == 31;
}

// Only a year of four digits is divided: a longer one has neither months nor days.
bool canBeWritten(const DayRun& run)
{
    const auto divides = [](const CalendarDay& day) {
        return day != no_first_day && day != no_last_day && (day.year > 9999 || day.year < -9999);
    };
    return isWholeYears(run) || !(divides(run.first) || divides(run.last));
}

// A run as it is written: by years, months or days; an open side has no text.
struct WrittenRun {
    std::string first, last;
    bool next_to = false;  // the last year, month or day is the one after the first
};

// The day to the coarsest part that `parts` (1 to 3) allows.
std::string dayText(const CalendarDay& day, int parts)
{
    if (day == no_first_day || day == no_last_day)
        return {};
    std::string text = yearText(day.year);
    if (parts > 1)
        text.append("-").append(padded(day.month, 2));
    if (parts > 2)
        text.append("-").append(padded(day.day, 2));
    return text;
}

WrittenRun written(const DayRun& run)
{
    const int parts = isWholeYears(run) ? 1 : run.first.day == 1 && endsMonth(run.last) ? 2 : 3;
    WrittenRun text{dayText(run.first, parts), dayText(run.last, parts)};
    if (parts == 1 && !text.first.empty() && !text.last.empty())
        text.next_to = run.last.year == run.first.year + 1;
    if (parts == 2 && run.first != no_first_day && run.last != no_last_day)
        text.next_to = run.first.year == run.last.year && run.last.month == run.first.month + 1;
    if (parts == 3 && run.first != no_first_day && run.last != no_last_day)
        text.next_to = run.first.month == run.last.month && run.first.year == run.last.year &&
                       run.last.day == run.first.day + 1;
    return text;
}

bool isDate(const DayRun& run)
{
    const WrittenRun text = written(run);
    return !text.first.empty() && text.first == text.last;
}

std::string intervalText(const DayRun& run)
{
    const WrittenRun text = written(run);
    if (isDate(run))
        return text.first;
    return (text.first.empty() ? ".." : text.first) + "/" + (text.last.empty() ? ".." : text.last);
}

std::string memberText(const DayRun& run)
{
    const WrittenRun text = written(run);
    if (isDate(run))
        return text.first;
    return text.first + (text.next_to ? "," : "..") + text.last;
}

// The mask that stands for just these years: 194X, 19X0; empty when there is none.
std::string maskText(const DaySet& days)
{
    std::vector<std::string> years;
    for (const DayRun& run : days.runs) {
        const bool short_years = run.first.year >= 0 && run.last.year <= 9999;
        if (!short_years || !isWholeYears(run))
            return {};
        for (std::int64_t year = run.first.year; year <= run.last.year; ++year)
            years.push_back(padded(year, 4));
    }
    std::string mask = years.front();
    for (const std::string& year : years)
        for (std::size_t i = 0; i < mask.size(); ++i)
            mask[i] = mask[i] == year[i] ? mask[i] : 'X';
    std::size_t fitting = 1;
    for (const char c : mask)
        fitting *= c == 'X' ? 10 : 1;
    return fitting == years.size() ? mask : std::string();
}

}  // namespace

std::optional<std::string> simplestForm(const DaySet& days, RunMeans run_means)
{
    if (days.empty() || !std::all_of(days.runs.begin(), days.runs.end(), canBeWritten))
        return std::nullopt;
    const std::string mask = maskText(days);
    if (!mask.empty())
        return mask;
    const bool any_day = days.runs.front() == DayRun{no_first_day, no_last_day};  // ../..
    if (days.runs.size() == 1 &&
        (run_means == RunMeans::Interval || any_day || isDate(days.runs.front())))
        return intervalText(days.runs.front());
    std::string members;
    for (const DayRun& run : days.runs)
        members.append(members.empty() ? "" : ",").append(memberText(run));
    members.insert(members.begin(), '[');
    return members += ']';
}

}  // namespace models
