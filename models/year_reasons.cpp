#include "models/year_reasons.h"

#include <algorithm>
#include <cmath>

#include "models/year_weights.h"

namespace models {

namespace {

constexpr double least_share = 0.1;  // of a year that is named
constexpr double nearly_all = 0.85, hardly_any = 0.15;
constexpr std::size_t most_years_named = 4;

// The years that the dates leave, as one says them.
struct YearsRead {
    std::string text;  // empty when they are many
    bool several = false;
};

YearsRead yearsRead(const Posterior& posterior, const YearRange& range)
{
    std::vector<int> years;
    YearsRead read;
    for (std::size_t y = 0; y < posterior.date_shares.size(); ++y)
        if (posterior.date_shares[y] >= least_share)
            years.push_back(range.first + static_cast<int>(y));
    read.several = years.size() > 1;
    if (years.empty())
        return read;
    const bool run = static_cast<std::size_t>(years.back() - years.front()) + 1 == years.size();
    if (years.size() == 1) {
        read.text.append("the year ").append(std::to_string(years.front()));
    } else if (run && years.size() > 2) {
        read.text.append("the years ").append(std::to_string(years.front()));
        read.text.append(" to ").append(std::to_string(years.back()));
    } else {
        read.text = "the years ";
        for (std::size_t i = 0; i < years.size() && i < most_years_named; ++i)
            read.text.append(i == 0                  ? ""
                             : i + 1 == years.size() ? " or "
                                                     : ", ")
                .append(std::to_string(years[i]));
        read.text += years.size() > most_years_named ? ", ..." : "";
    }
    return read;
}

// How much of the dates lies within limits as the register states them; an end that it does not
// state is open.
double shareWithin(const Maker& maker, const Posterior& posterior, const YearRange& range)
{
    double within = 0;
    for (std::size_t y = 0; y < posterior.date_shares.size(); ++y)
        if (liesWithin(range.first + static_cast<int>(y), maker.from, maker.to))
            within += posterior.date_shares[y];
    return within;
}

}  // namespace

std::optional<Reason> yearReason(const MakerPosterior& maker, const Posterior& posterior,
                                 const MakerRegister& known, const CompiledRegister& compiled)
{
    if (posterior.year_beyond)
        return Reason{0, "the year " + std::to_string(*posterior.year_beyond) +
                             " was read, which lies beyond all years that the register knows: it "
                             "says nothing of this maker"};
    const Maker& registered = known.makers[maker.maker];
    const YearsRead read = yearsRead(posterior, compiled.range);
    const std::string own = yearsInWords(registered.from, registered.to);
    if (!posterior.has_dates || read.text.empty() || own.empty() || maker.prior <= 0)
        return std::nullopt;
    const double factor = maker.log_dated - std::log(maker.prior) - posterior.log_all_dated;
    // A plain year is what a person looks for first.
    const std::vector<int>& plain = posterior.plain_years;
    if (std::abs(factor) < worth_telling && plain.empty() && !read.several)
        return std::nullopt;
    const bool disagree = !plain.empty() && plain.front() != plain.back();
    const double within = shareWithin(registered, posterior, compiled.range);
    const std::string verb = within > nearly_all ? (read.several ? " lie within" : " lies within")
                             : within > hardly_any
                                 ? (read.several ? " partly suit" : " partly suits")
                                 : (read.several ? " lie outside" : " lies outside");
    return Reason{factor, read.text + (disagree ? " (the dates disagree)" : "") + verb +
                              " the maker's years (" + own + ")"};
}

std::optional<Reason> markYearReason(const MakerPosterior& maker, const Posterior& posterior,
                                     const CompiledRegister& compiled)
{
    if (!posterior.has_dates || !maker.has_marks || maker.lettersFactor() < worth_telling)
        return std::nullopt;
    const CompiledMark& mark = compiled.marks[maker.best_mark];
    const std::string years = yearsInWords(mark.from, mark.to);
    double use = 0, within = 0;
    const std::vector<double>& used = compiled.yearsOfMark(maker.best_mark);
    for (std::size_t y = 0; y < used.size(); ++y) {
        use += posterior.date_shares[y] * used[y];
        if (liesWithin(compiled.range.first + static_cast<int>(y), mark.from, mark.to))
            within += posterior.date_shares[y];
    }
    if (years.empty() || use > 0.5 || within > 0.5)
        return std::nullopt;
    const YearsRead read = yearsRead(posterior, compiled.range);
    const char* suits = use < 0.05     ? ", not for "
                        : read.several ? ", which suits only some of "
                                       : ", hardly for ";
    return Reason{std::log(std::max(use, 1e-3)), "the mark " + mark.text + " is known only " +
                                                     years + suits +
                                                     (read.text.empty() ? "the date" : read.text)};
}

}  // namespace models
