#include "models/date_forms.h"

#include <algorithm>
#include <optional>
#include <string_view>

#include "models/date_months.h"

namespace models {

namespace {

// How often a date is printed in each form. Common practice, no source.
constexpr double four_digits = 0.45, two_digits = 0.2, after_apostrophe = 0.05,
                 long_roman_month = 0.003;
constexpr double numeric_month = 0.17, named_month = 0.12, roman_month = 0.03, quarter = 0.02;
constexpr double with_day = 0.3;          // of the dates with a month, those that print the day
constexpr double day_left_out = 0.05;     // a figure right before a month is its day
constexpr double month_apostrophe = 0.1;  // of the years behind a month, those with an apostrophe
constexpr double beside_unread = 0.5;     // a year of two digits beside an unread character
constexpr double least_odds = 0.01;       // a glyph that fits a letter worse is not that letter

// What stands between the parts of a date, with how often.
struct Separator {
    std::string_view text;
    double share;
};
constexpr Separator number_separators[] = {{"/", 0.5}, {".", 0.25}, {"-", 0.1}, {" ", 0.15}};
constexpr Separator day_separators[] = {
    {"/", 0.45}, {".", 0.25}, {"-", 0.1}, {" ", 0.15}, {"", 0.05}};  // nothing: before a name
constexpr Separator name_separators[] = {
    {" ", 0.6}, {".", 0.15}, {"", 0.1}, {". ", 0.1}, {"/", 0.05}};

double shareOf(MonthForm form)
{
    switch (form) {
        case MonthForm::Name:
            return named_month;
        case MonthForm::Roman:
            return roman_month;
        case MonthForm::LongRoman:
            return long_roman_month;
        case MonthForm::Quarter:
            return quarter;
        case MonthForm::Numeric:
            return numeric_month;
        case MonthForm::None:
            break;
    }
    return 1;
}

// Walks over one sequence of glyphs and collects the instances that begin at each.
class DateScanner {
public:
    DateScanner(const DateLine& line, const std::vector<DateGlyph>& glyphs,
                const std::vector<QuarterName>& quarters)
        : line_(line), glyphs_(glyphs), quarters_(quarters)
    {
    }

    std::vector<DateInstance> scan();

private:
    bool isDigitAt(std::size_t at) const { return at < glyphs_.size() && glyphs_[at].is_digit; }
    double textOdds(std::size_t at, std::string_view text) const
    {
        return line_.odds(glyphs_, at, text);
    }
    std::size_t readAmong(std::size_t at, std::size_t count) const;
    double bestDigitOdds(std::size_t at, std::size_t count) const
    {
        return models::bestDigitOdds(glyphs_, at, count);
    }

    void bareYears(std::size_t at);
    void monthsAt(std::size_t begin, std::size_t at, const DateInstance& so_far);
    void numericMonths(std::size_t begin, std::size_t at, const DateInstance& so_far);
    void namedMonths(std::size_t begin, std::size_t at, const DateInstance& so_far);
    void daysAt(std::size_t begin);
    bool isDayBefore(std::size_t at) const;
    void yearsAt(std::size_t begin, std::size_t at, const DateInstance& so_far);
    void keep(std::size_t begin, std::size_t end, DateInstance instance);

    const DateLine& line_;
    const std::vector<DateGlyph>& glyphs_;
    const std::vector<QuarterName>& quarters_;
    std::vector<DateInstance> found_;
};

std::vector<DateInstance> DateScanner::scan()
{
    for (std::size_t begin = 0; begin < glyphs_.size(); ++begin) {
        bareYears(begin);
        monthsAt(begin, begin, {});
        daysAt(begin);
    }
    return std::move(found_);
}

std::size_t DateScanner::readAmong(std::size_t at, std::size_t count) const
{
    return static_cast<std::size_t>(
        std::count_if(glyphs_.begin() + static_cast<long>(std::min(at, glyphs_.size())),
                      glyphs_.begin() + static_cast<long>(std::min(at + count, glyphs_.size())),
                      [](const DateGlyph& glyph) { return !glyph.unread; }));
}

void DateScanner::bareYears(std::size_t at)
{
    if (at > 0 && isDigitAt(at - 1))
        return;
    DateInstance instance;
    if (bestDigitOdds(at, 4) > 0 && !isDigitAt(at + 4)) {
        instance.base_odds = four_digits;
        instance.year_digits = 4;
        instance.year_glyph = at;
        keep(at, at + 4, instance);
    }
    instance.year_digits = 2;
    if (bestDigitOdds(at, 2) > 0 && !isDigitAt(at + 2)) {
        const bool unread_beside = (at > 0 && glyphs_[at - 1].unread) ||
                                   (at + 2 < glyphs_.size() && glyphs_[at + 2].unread);
        instance.base_odds = two_digits * (unread_beside ? beside_unread : 1);
        instance.year_glyph = at;
        keep(at, at + 2, instance);
    }
    const double apostrophe = textOdds(at, "'");
    if (apostrophe > least_odds && bestDigitOdds(at + 1, 2) > 0 && !isDigitAt(at + 3)) {
        instance.base_odds = after_apostrophe * apostrophe;
        instance.year_glyph = at + 1;
        keep(at, at + 3, instance);
    }
}

void DateScanner::monthsAt(std::size_t begin, std::size_t at, const DateInstance& so_far)
{
    DateInstance behind_all = so_far;
    if (begin == at && isDayBefore(at))
        behind_all.base_odds *= day_left_out;
    numericMonths(begin, at, behind_all);
    namedMonths(begin, at, behind_all);
}

// A figure by itself and a separator: the I. of I.I.40.
bool DateScanner::isDayBefore(std::size_t at) const
{
    if (at < 2 || bestDigitOdds(at - 2, 1) <= 1 || glyphs_[at - 2].unread ||
        (at > 2 && (line_.isLetter(glyphs_[at - 3]) || isDigitAt(at - 3))))
        return false;
    return line_.canBe(glyphs_[at - 1], '.') || line_.canBe(glyphs_[at - 1], '/') ||
           line_.canBe(glyphs_[at - 1], '-');
}

void DateScanner::numericMonths(std::size_t begin, std::size_t at, const DateInstance& so_far)
{
    if (at > 0 && isDigitAt(at - 1))
        return;
    for (const std::size_t digits : {1U, 2U}) {
        if (bestDigitOdds(at, digits) <= 0)
            continue;
        const DateInstance month = withMonthInFigures(so_far, glyphs_, at, digits);
        for (const Separator& separator : number_separators) {
            const double odds = separator.share * textOdds(at + digits, separator.text);
            if (odds <= separator.share * least_odds)
                continue;
            const std::size_t behind = at + digits + separator.text.size();
            DateInstance instance = month;
            instance.base_odds = month.base_odds * numeric_month * odds;
            yearsAt(begin, behind, instance);
            if (digits == 1 && so_far.day_digits == 0 && readAmong(at, 1) > 0) {
                instance.month_form = MonthForm::Quarter;
                instance.base_odds = month.base_odds * quarter * odds;
                yearsAt(begin, behind, instance);
            }
        }
    }
}

void DateScanner::namedMonths(std::size_t begin, std::size_t at, const DateInstance& so_far)
{
    // A name within a longer word is no month: CONTRACT 1938 holds no OCT.
    if (at > 0 && line_.isLetter(glyphs_[at - 1]))
        return;
    for (const MonthsThere& months : monthsNamedAt(line_, glyphs_, at, quarters_)) {
        if (months.form == MonthForm::Quarter && so_far.day_digits > 0)
            continue;
        DateInstance instance = so_far;
        instance.month_form = months.form;
        instance.month_digits = 0;
        instance.month_odds = months.odds;
        double share = shareOf(months.form);
        if (begin == at && at > 0 && isDigitAt(at - 1))
            share *= day_left_out;
        for (const Separator& separator : name_separators) {
            if (months.form != MonthForm::Name && separator.text.empty())
                continue;
            const std::size_t behind = at + months.length;
            const double odds = textOdds(behind, separator.text);
            if (odds <= least_odds)
                continue;
            instance.base_odds = so_far.base_odds * share * separator.share * odds;
            yearsAt(begin, behind + separator.text.size(), instance);
        }
    }
}

void DateScanner::daysAt(std::size_t begin)
{
    if (begin > 0 && isDigitAt(begin - 1))
        return;
    for (const std::size_t digits : {1U, 2U}) {
        if (bestDigitOdds(begin, digits) <= 1)
            continue;
        DateInstance instance;
        instance.day_glyph = begin;
        instance.day_digits = digits;
        for (const Separator& separator : day_separators) {
            const double odds = textOdds(begin + digits, separator.text);
            if (odds <= least_odds || readAmong(begin + digits, 1) == 0)
                continue;
            // A day is one of 31 and its digits say which: their odds are shared by so many.
            instance.base_odds =
                with_day * separator.share * odds * bestDigitOdds(begin, digits) / 31;
            monthsAt(begin, begin + digits + separator.text.size(), instance);
        }
    }
}

void DateScanner::yearsAt(std::size_t begin, std::size_t at, const DateInstance& so_far)
{
    DateInstance instance = so_far;
    instance.year_glyph = at;
    for (const std::size_t digits : {2U, 4U}) {
        if (bestDigitOdds(at, digits) <= 0 || isDigitAt(at + digits))
            continue;
        instance.year_digits = digits;
        instance.base_odds = so_far.base_odds * (digits == 2 ? 0.6 : 0.4);
        keep(begin, at + digits, instance);
    }
    const double apostrophe = textOdds(at, "'");
    if (apostrophe <= least_odds || bestDigitOdds(at + 1, 2) <= 0 || isDigitAt(at + 3))
        return;
    instance.year_glyph = at + 1;
    instance.year_digits = 2;
    instance.base_odds = so_far.base_odds * month_apostrophe * apostrophe;
    keep(begin, at + 3, instance);
}

void DateScanner::keep(std::size_t begin, std::size_t end, DateInstance instance)
{
    if (readAmong(instance.year_glyph, instance.year_digits) == 0 ||
        2 * readAmong(begin, end - begin) < end - begin)
        return;
    instance.glyphs.assign(glyphs_.begin() + static_cast<long>(begin),
                           glyphs_.begin() + static_cast<long>(end));
    instance.first_cell = instance.glyphs.front().cell;
    instance.end_cell = instance.glyphs.back().cell + 1;
    instance.year_glyph -= begin;
    instance.month_glyph -= instance.month_digits > 0 ? begin : 0;
    instance.day_glyph -= instance.day_digits > 0 ? begin : 0;
    found_.push_back(std::move(instance));
}

}  // namespace

double DateInstance::odds(int year) const
{
    double odds = base_odds;
    int rest = year;
    for (std::size_t i = year_digits; i-- > 0; rest /= 10)
        odds *= glyphs[year_glyph + i].digit_odds[static_cast<std::size_t>(rest % 10)];
    if (month_form == MonthForm::None)
        return odds;
    double months = 0;
    for (const double month : month_odds)
        months += month;
    return odds * months / (month_form == MonthForm::Quarter ? 4 : 12);
}

std::vector<DateInstance> findDates(const Line& line, const std::vector<QuarterName>& quarters)
{
    std::vector<DateInstance> all;
    const DateLine date_line(line);
    std::vector<TextLayer> layers = {TextLayer::Later};
    if (date_line.isStruckOver())
        layers.push_back(TextLayer::Earlier);
    for (const TextLayer layer : layers) {
        const std::vector<std::vector<DateGlyph>> ways = date_line.waysToCount(layer);
        for (const std::vector<DateGlyph>& glyphs : ways)
            for (DateInstance& instance : DateScanner(date_line, glyphs, quarters).scan()) {
                instance.base_odds /= static_cast<double>(ways.size() * layers.size());
                instance.layer = layer;
                all.push_back(std::move(instance));
            }
    }
    return all;
}

}  // namespace models
