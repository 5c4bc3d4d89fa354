#include "models/date_mark.h"

#include <algorithm>
#include <iterator>
#include <set>
#include <stdexcept>

#include "models/coded_dates.h"
#include "models/date_forms.h"
#include "models/date_writing.h"
#include "models/edtf.h"
#include "models/edtf_days.h"
#include "models/text_match.h"
#include "models/typed_notation.h"

namespace models {

namespace {

// Odds, before looking, that a date begins at a certain place of a line and not other text.
constexpr double date_prior_odds = 0.03;
constexpr double whole_line_odds = 0.2;  // and that a whole line is one
// Of dates struck over others, second dates; the rest corrects a wrong one. No source.
constexpr double both_count = 0.6;
constexpr double least_probability = 0.02;
constexpr std::size_t most_meanings = 12;

struct Weighed {
    DateMeaning meaning;
    double odds = 0;  // that this stretch is a date of this meaning, against other text
    TextLayer layer = TextLayer::Later;
};

double priorOdds(const DateMeaning& meaning, std::size_t cells)
{
    const bool whole_line = meaning.first_cell == 0 && meaning.end_cell == cells;
    return whole_line ? whole_line_odds : date_prior_odds;
}

std::size_t yearCount(const DateContext& context)
{
    return static_cast<std::size_t>(context.latest_year - context.earliest_year + 1);
}

std::string printed(const Line& line, const DateMeaning& meaning)
{
    Line stretch;
    stretch.cells.assign(line.cells.begin() + static_cast<std::ptrdiff_t>(meaning.first_cell),
                         line.cells.begin() + static_cast<std::ptrdiff_t>(meaning.end_cell));
    return writeTyped(stretch);
}

bool overlap(const DateMeaning& a, const DateMeaning& b)
{
    return a.first_cell < b.end_cell && b.first_cell < a.end_cell;
}

// Texts of two layers stand in one place, or the later was struck over the earlier's end.
bool meet(const DateMeaning& a, const DateMeaning& b)
{
    return a.first_cell <= b.end_cell && b.first_cell <= a.end_cell;
}

// Collects the meanings of one line, each with the odds of all the ways to come by it.
class MeaningsOfLine {
public:
    MeaningsOfLine(const Line& line, const DateContext& context) : line_(line), context_(context) {}

    void addFigures();
    void addCodes();
    void joinStruckOver();

    std::vector<Weighed> all;

private:
    void add(Weighed weighed);
    std::vector<int> yearsOf(const Edtf& edtf) const;

    const Line& line_;
    const DateContext& context_;
};

void MeaningsOfLine::add(Weighed weighed)
{
    const auto same = std::find_if(all.begin(), all.end(), [&](const Weighed& other) {
        return other.meaning.first_cell == weighed.meaning.first_cell &&
               other.meaning.end_cell == weighed.meaning.end_cell &&
               other.meaning.edtf == weighed.meaning.edtf && other.layer == weighed.layer;
    });
    if (same != all.end())
        same->odds += weighed.odds;
    else
        all.push_back(std::move(weighed));
}

void MeaningsOfLine::addFigures()
{
    std::vector<QuarterName> quarters;
    for (const Code& code : context_.codes)
        if (code.stands_for == CodeMeaning::Quarter && code.value.size() == 1 &&
            code.value >= "1" && code.value <= "4")
            quarters.push_back({code.code, code.value.front() - '0'});
    for (const DateInstance& instance : findDates(line_, quarters)) {
        const WrittenDate date = writeDate(instance, context_);
        if (date.years.empty())
            continue;
        DateMeaning meaning{{}, date.edtf, date.years, 0, instance.first_cell, instance.end_cell};
        double sum = 0;
        for (int year = context_.earliest_year; year <= context_.latest_year; ++year)
            sum += instance.odds(year);
        const double odds =
            priorOdds(meaning, line_.cells.size()) * sum / static_cast<double>(yearCount(context_));
        add({std::move(meaning), odds, instance.layer});
    }
}

std::vector<int> MeaningsOfLine::yearsOf(const Edtf& edtf) const
{
    std::vector<int> years;
    for (int year = context_.earliest_year; year <= context_.latest_year; ++year)
        if (couldBeIn(edtf, year))
            years.push_back(year);
    return years;
}

void MeaningsOfLine::addCodes()
{
    LetterIds ids;
    std::vector<std::pair<const Code*, MatchText>> codes;
    for (const Code& code : context_.codes)
        if (code.stands_for == CodeMeaning::Year && !code.code.empty())
            codes.emplace_back(&code, makeMatchText(code.code, ids, MatchOptions{}.skip_rate));
    if (codes.empty())
        return;
    const auto weights = weighCells(line_.cells, ids, ReadingErrors{});
    const auto cells = cellsAsOdds(weights, GapRates(MatchOptions{}.insert_rate));
    for (const CodeWord& word : codeWords(line_, cells))
        for (const auto& [code, text] : codes) {
            const double odds = codeOdds(word, text);
            const auto parsed = parseEdtf(code->value);
            if (odds <= 0 || !std::holds_alternative<Edtf>(parsed))
                continue;
            DateMeaning meaning{{}, code->value,     yearsOf(std::get<Edtf>(parsed)),
                                0,  word.first_cell, word.end_cell};
            const double share = static_cast<double>(meaning.years.size()) /
                                 static_cast<double>(yearCount(context_));
            const double prior = priorOdds(meaning, line_.cells.size());
            if (!meaning.years.empty())
                add({std::move(meaning), prior * odds * share, TextLayer::Later});
        }
}

// A date over another: the later one alone (the earlier was wrong), or both.
void MeaningsOfLine::joinStruckOver()
{
    const std::vector<Weighed> apart = all;
    for (const Weighed& later : apart)
        for (const Weighed& earlier : apart) {
            const DateMeaning &a = earlier.meaning, &b = later.meaning;
            if (later.layer != TextLayer::Later || earlier.layer != TextLayer::Earlier ||
                a.edtf == b.edtf || !meet(a, b))
                continue;
            const double odds = later.odds * earlier.odds;
            const std::string both = std::string("{").append(std::min(a.edtf, b.edtf)).append(",") +
                                     std::max(a.edtf, b.edtf) + "}";
            if (std::holds_alternative<EdtfFault>(parseEdtf(both)))
                continue;
            std::set<int> years(a.years.begin(), a.years.end());
            years.insert(b.years.begin(), b.years.end());
            DateMeaning meaning{{},
                                both,
                                {years.begin(), years.end()},
                                0,
                                std::min(a.first_cell, b.first_cell),
                                std::max(a.end_cell, b.end_cell)};
            add({std::move(meaning), both_count * odds, TextLayer::Later});
            add({b, (1 - both_count) * odds, TextLayer::Later});
        }
}

}  // namespace

std::vector<DateMeaning> readDates(const Line& line, const DateContext& context)
{
    if (context.earliest_year > context.latest_year)
        throw std::invalid_argument("DateContext: earliest_year must not be after latest_year");
    if (context.earliest_year < 0 || context.latest_year > 9999)
        throw std::invalid_argument(
            "DateContext: earliest_year and latest_year must lie within 0 to 9999");
    MeaningsOfLine found(line, context);
    found.addFigures();
    found.addCodes();
    found.joinStruckOver();
    std::vector<DateMeaning> meanings;
    for (const Weighed& one : found.all) {
        double rivals = 1;  // that it is other text
        for (const Weighed& other : found.all)
            if (overlap(one.meaning, other.meaning))
                rivals += other.odds;
        DateMeaning meaning = one.meaning;
        meaning.printed = printed(line, meaning);
        meaning.probability = one.odds / rivals;
        if (meaning.probability >= least_probability)
            meanings.push_back(std::move(meaning));
    }
    std::stable_sort(
        meanings.begin(), meanings.end(),
        [](const DateMeaning& a, const DateMeaning& b) { return a.probability > b.probability; });
    if (meanings.size() > most_meanings)
        meanings.resize(most_meanings);
    return meanings;
}

}  // namespace models
