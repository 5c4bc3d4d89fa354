#include "models/date_months.h"

#include <algorithm>
#include <string_view>

namespace models {

namespace {

using MonthOdds = std::array<double, 13>;

struct MonthName {
    std::string_view text;
    int month;
    MonthForm form;
};

constexpr MonthName month_names[] = {
    {"JAN", 1, MonthForm::Name},       {"JANUARY", 1, MonthForm::Name},
    {"FEB", 2, MonthForm::Name},       {"FEBRUARY", 2, MonthForm::Name},
    {"MAR", 3, MonthForm::Name},       {"MCH", 3, MonthForm::Name},
    {"MARCH", 3, MonthForm::Name},     {"APR", 4, MonthForm::Name},
    {"APRIL", 4, MonthForm::Name},     {"MAY", 5, MonthForm::Name},
    {"JUN", 6, MonthForm::Name},       {"JUNE", 6, MonthForm::Name},
    {"JUL", 7, MonthForm::Name},       {"JLY", 7, MonthForm::Name},
    {"JULY", 7, MonthForm::Name},      {"AUG", 8, MonthForm::Name},
    {"AUGUST", 8, MonthForm::Name},    {"SEP", 9, MonthForm::Name},
    {"SEPT", 9, MonthForm::Name},      {"SEPTEMBER", 9, MonthForm::Name},
    {"OCT", 10, MonthForm::Name},      {"OCTOBER", 10, MonthForm::Name},
    {"NOV", 11, MonthForm::Name},      {"NOVEMBER", 11, MonthForm::Name},
    {"DEC", 12, MonthForm::Name},      {"DECEMBER", 12, MonthForm::Name},
    {"I", 1, MonthForm::Roman},        {"II", 2, MonthForm::Roman},
    {"III", 3, MonthForm::Roman},      {"IV", 4, MonthForm::Roman},
    {"V", 5, MonthForm::Roman},        {"VI", 6, MonthForm::Roman},
    {"VII", 7, MonthForm::Roman},      {"VIII", 8, MonthForm::Roman},
    {"IX", 9, MonthForm::Roman},       {"X", 10, MonthForm::Roman},
    {"XI", 11, MonthForm::Roman},      {"XII", 12, MonthForm::Roman},
    {"IIII", 4, MonthForm::LongRoman}, {"VIIII", 9, MonthForm::LongRoman},
};

// Walks over the names at one glyph.
class MonthNames {
public:
    MonthNames(const DateLine& line, const std::vector<DateGlyph>& glyphs, std::size_t at)
        : line_(line), glyphs_(glyphs), at_(at)
    {
    }

    void tryName(const MonthName& name);

    std::vector<MonthsThere> found;

private:
    bool isTold(const MonthName& name) const;
    bool fits(const MonthName& name) const;
    bool hasGap(const MonthName& name) const;

    const DateLine& line_;
    const std::vector<DateGlyph>& glyphs_;
    std::size_t at_;
    std::vector<bool> is_open_;  // by what was found: its letters fit as far as they were read
};

// A name of whose letters half were not read is any month; of a Roman number one stroke tells that
// it is one.
bool MonthNames::isTold(const MonthName& name) const
{
    const auto first = glyphs_.begin() + static_cast<std::ptrdiff_t>(at_);
    const auto read = static_cast<std::size_t>(
        std::count_if(first, first + static_cast<std::ptrdiff_t>(name.text.size()),
                      [](const DateGlyph& glyph) { return !glyph.unread; }));
    return name.form == MonthForm::Name ? 2 * read >= name.text.size() : read > 0;
}

bool MonthNames::fits(const MonthName& name) const
{
    for (std::size_t i = 0; i < name.text.size(); ++i)
        if (!line_.canBe(glyphs_[at_ + i], name.text[i]))
            return false;
    return true;
}

// A full stop or a space where the name has a letter: NO. 1940 is no November, I.I. no III.
bool MonthNames::hasGap(const MonthName& name) const
{
    for (std::size_t i = 0; i < name.text.size(); ++i) {
        const DateGlyph& glyph = glyphs_[at_ + i];
        const bool is_gap = line_.canBe(glyph, '.') || line_.canBe(glyph, ' ');
        if (is_gap && name.text[i] != '.' && name.text[i] != ' ' &&
            !line_.canBe(glyph, name.text[i]))
            return true;
    }
    return false;
}

void MonthNames::tryName(const MonthName& name)
{
    const double odds = line_.odds(glyphs_, at_, name.text);
    if (odds < 1 || !isTold(name) || hasGap(name))
        return;
    const bool is_open = fits(name);
    const auto month = static_cast<std::size_t>(name.month);
    for (std::size_t i = 0; i < found.size() && is_open; ++i)
        if (is_open_[i] && found[i].form == name.form && found[i].length == name.text.size()) {
            found[i].odds[month] += odds;
            return;
        }
    found.push_back({name.form, name.text.size(), {}});
    found.back().odds[month] = odds;
    is_open_.push_back(is_open);
}

// P(seen | month) / P(seen | other text) by month, of one or two digits; all 0 for no digits. A
// single figure is likelier without a zero in front.
MonthOdds monthsInFigures(const std::vector<DateGlyph>& glyphs, std::size_t at, std::size_t digits)
{
    constexpr double without_zero = 0.8, with_zero = 0.2;
    MonthOdds odds{};
    for (std::size_t month = 1; month <= 9 && digits == 1; ++month)
        odds[month] = without_zero * glyphs[at].digit_odds[month];
    for (std::size_t month = 1; month <= 12 && digits == 2; ++month)
        odds[month] = (month < 10 ? with_zero : 1) * glyphs[at].digit_odds[month / 10] *
                      glyphs[at + 1].digit_odds[month % 10];
    return odds;
}

}  // namespace

DateInstance withMonthInFigures(DateInstance instance, const std::vector<DateGlyph>& glyphs,
                                std::size_t at, std::size_t digits)
{
    const auto fits = [](const MonthOdds& odds) {
        return *std::max_element(odds.begin(), odds.end()) >= 1;
    };
    const MonthOdds first = monthsInFigures(glyphs, instance.day_glyph, instance.day_digits);
    instance.month_form = MonthForm::Numeric;
    instance.month_glyph = at;
    instance.month_digits = digits;
    instance.month_odds = monthsInFigures(glyphs, at, digits);
    if (fits(instance.month_odds) || !fits(first))
        return instance;
    instance.base_odds *= bestDigitOdds(glyphs, at, digits) /
                          bestDigitOdds(glyphs, instance.day_glyph, instance.day_digits);
    std::swap(instance.day_glyph, instance.month_glyph);
    std::swap(instance.day_digits, instance.month_digits);
    instance.month_odds = first;
    return instance;
}

std::vector<MonthsThere> monthsNamedAt(const DateLine& line, const std::vector<DateGlyph>& glyphs,
                                       std::size_t at, const std::vector<QuarterName>& quarters)
{
    MonthNames names(line, glyphs, at);
    for (const MonthName& name : month_names)
        names.tryName(name);
    for (const QuarterName& quarter : quarters)
        if (!quarter.text.empty() && isDateText(quarter.text))
            names.tryName({quarter.text, quarter.quarter, MonthForm::Quarter});
    return std::move(names.found);
}

}  // namespace models
