#include "models/mark_evidence.h"

#include <algorithm>
#include <numeric>

#include "models/date_forms.h"
#include "models/date_mark.h"
#include "models/year_spread.h"

namespace models {

namespace {

using Fault = EvidenceFault;
using Odds = std::vector<double>;

// Common practice, no source. A year's stamp is cut or changed a little late or early.
constexpr double next_year = 0.006, year_before = 0.004;
constexpr double put_on_later = 0.008, looks_later = 0.7, later_fading = 0.85;
constexpr double bears_earlier = 0.004, earlier_fading = 0.7;
// How long after its making a thing is inspected, after a contract made, after a pattern made; as
// the ranking of candidates has it.
constexpr double inspected_fading = 0.6, contract_fading = 0.6, pattern_fading = 0.9;
constexpr double least_date = 0.1;  // a stretch less likely a date says nothing
constexpr double is_date = 0.5;     // one likelier is taken out before a maker is looked for
// What the figures may well be besides is an open question and no fault.
constexpr double is_open_from = 0.2;

// A place of a line that can be a date.
struct DateStretch {
    std::size_t first_cell = 0, end_cell = 0;
    std::string printed, edtf;
    double probability = 0;
    Odds as_read, misread;  // by year: odds of the digits as read, and of all others
};

// By what a role says of the making; shares sum to 1.
struct RoleShares {
    double exact = 0, contract = 0, pattern = 0, inspected = 0, nothing = 0;
};

DateContext inRange(const RoleContext& context, const YearRange& range)
{
    DateContext dates = context.dates;
    dates.earliest_year = range.first;
    dates.latest_year = range.last;
    return dates;
}

double sumOfOdds(const Odds& odds)
{
    return std::accumulate(odds.begin(), odds.end(), 0.0);
}

// Are these the digits that were read, or can stand where none was?
bool isAsRead(const DateInstance& date, int year)
{
    int rest = year;
    for (std::size_t i = date.year_digits; i-- > 0; rest /= 10) {
        const std::vector<int>& digits = date.glyphs[date.year_glyph + i].digits;
        if (std::find(digits.begin(), digits.end(), rest % 10) == digits.end())
            return false;
    }
    return true;
}

void addFiguresTo(DateStretch& stretch, const Line& line, const YearRange& range)
{
    for (const DateInstance& date : findDates(line)) {
        if (date.first_cell < stretch.first_cell || date.end_cell > stretch.end_cell)
            continue;
        for (std::size_t y = 0; y < range.size(); ++y) {
            const int year = range.first + static_cast<int>(y);
            (isAsRead(date, year) ? stretch.as_read : stretch.misread)[y] += date.odds(year);
        }
    }
}

// Where the meanings come from no figures: a code for a year, a quarter by its code.
void addMeaningsTo(DateStretch& stretch, const std::vector<DateMeaning>& meanings,
                   const YearRange& range)
{
    for (const DateMeaning& meaning : meanings)
        if (meaning.first_cell < stretch.end_cell && stretch.first_cell < meaning.end_cell)
            for (const int year : meaning.years)
                stretch.as_read[static_cast<std::size_t>(year - range.first)] +=
                    meaning.probability / static_cast<double>(meaning.years.size());
}

std::vector<DateStretch> dateStretches(const Line& line, const DateContext& dates,
                                       const YearRange& range)
{
    std::vector<DateStretch> stretches;
    const std::vector<DateMeaning> meanings = readDates(line, dates);
    for (const DateMeaning& meaning : meanings) {
        const auto overlaps = [&](const DateStretch& other) {
            return meaning.first_cell < other.end_cell && other.first_cell < meaning.end_cell;
        };
        const auto same = std::find_if(stretches.begin(), stretches.end(), overlaps);
        if (same != stretches.end()) {
            same->probability = std::min(1.0, same->probability + meaning.probability);
            continue;
        }
        DateStretch stretch{meaning.first_cell,   meaning.end_cell,    meaning.printed,
                            meaning.edtf,         meaning.probability, Odds(range.size(), 0),
                            Odds(range.size(), 0)};
        addFiguresTo(stretch, line, range);
        if (sumOfOdds(stretch.as_read) <= 0)
            addMeaningsTo(stretch, meanings, range);
        stretches.push_back(std::move(stretch));
    }
    std::erase_if(stretches, [](const DateStretch& stretch) {
        return stretch.probability < least_date || sumOfOdds(stretch.as_read) <= 0;
    });
    return stretches;
}

RoleShares roleSharesOf(const DateStretch& stretch, const std::vector<RoleSpan>& spans)
{
    RoleShares shares;
    double sum = 0;
    for (const RoleSpan& span : spans) {
        if (span.first_cell >= stretch.end_cell || stretch.end_cell > span.end_cell)
            continue;
        sum += span.probability;
        switch (boundOf(span.role)) {
            case DateBound::Exact:
                shares.exact += span.probability;
                break;
            case DateBound::NotAfter:
                shares.inspected += span.probability;
                break;
            case DateBound::NotBefore:
                (span.role == LineRole::Pattern ? shares.pattern : shares.contract) +=
                    span.probability;
                break;
            case DateBound::None:
                shares.nothing += span.probability;
                break;
        }
    }
    if (sum <= 0)
        return {stretch.probability, 0, 0, 0, 1 - stretch.probability};
    for (double* share :
         {&shares.exact, &shares.contract, &shares.pattern, &shares.inspected, &shares.nothing})
        *share /= sum;
    return shares;
}

// The year of making from the printed year, where that is the making's.
Odds madeIn(const Odds& printed)
{
    Odds made(printed.size(), 0);
    for (std::size_t y = 0; y < made.size(); ++y) {
        made[y] += (1 - next_year - year_before) * printed[y];
        if (y > 0)
            made[y] += year_before * printed[y - 1];
        if (y + 1 < made.size())
            made[y] += next_year * printed[y + 1];
    }
    return made;
}

// What one role would say of the making, from the years that may be printed.
struct RoleSays {
    double share = 0;
    Odds (*of_printed)(const Odds&) = nullptr;
    const char* meaning = "";  // before the date
    const char* if_wrong = "";
};

Odds inspectedBefore(const Odds& printed)
{
    return yearsBefore(printed, inspected_fading);
}

Odds contractedAfter(const Odds& printed)
{
    return yearsAfter(printed, contract_fading);
}

Odds patternedAfter(const Odds& printed)
{
    return yearsAfter(printed, pattern_fading);
}

// Likeliest first.
std::vector<RoleSays> rolesThatSay(const RoleShares& shares)
{
    std::vector<RoleSays> roles = {
        {shares.exact, madeIn, "made in ", "it is the year of making"},
        {shares.inspected, inspectedBefore, "inspected, repaired or issued, so made not after ",
         "it is an inspection's"},
        {shares.contract, contractedAfter, "contract, so made not before ", "it is a contract's"},
        {shares.pattern, patternedAfter, "pattern, so made not before ", "it is a pattern's"}};
    std::stable_sort(roles.begin(), roles.end(),
                     [](const RoleSays& a, const RoleSays& b) { return a.share > b.share; });
    return roles;
}

int yearHighest(const Odds& odds, const YearRange& range)
{
    return range.first +
           static_cast<int>(std::max_element(odds.begin(), odds.end()) - odds.begin());
}

// The cases beside the sound one that a date as the making's has.
void addMarkFaults(DateEvidence& piece, const Odds& printed, double share, bool later_added)
{
    const double later = later_added ? looks_later : put_on_later;
    Odds before = yearsBefore(printed, later_fading), after = yearsAfter(printed, earlier_fading);
    piece.cases.push_back({Fault::LaterMark, share * later, std::move(before),
                           "the mark was put on after the making"});
    piece.cases.push_back(
        {Fault::EarlierMark, share * bears_earlier, std::move(after),
         "the mark bears an earlier year, of a contract, a pattern or old stock"});
    piece.cases.front().prior -= share * (later + bears_earlier);
}

DateEvidence pieceOf(const std::string& stamp_name, const DateStretch& stretch,
                     const RoleShares& shares, bool later_added, const YearRange& range)
{
    const std::vector<RoleSays> roles = rolesThatSay(shares);
    const RoleSays& main = roles.front();
    const Odds printed = summingToOne(stretch.as_read);
    const double wrong_odds = sumOfOdds(stretch.misread);
    const double misread = wrong_odds / (wrong_odds + sumOfOdds(stretch.as_read));
    DateEvidence piece;
    piece.source = stamp_name + ", " + stretch.printed;
    piece.meaning = main.meaning + stretch.edtf;
    piece.printed_year = yearHighest(stretch.as_read, range);
    piece.cases = {{std::nullopt, main.share * (1 - misread), main.of_printed(printed), {}}};
    if (misread > 0)
        piece.cases.push_back({Fault::Misread, main.share * misread,
                               main.of_printed(summingToOne(stretch.misread)),
                               "a digit was misread"});
    if (main.of_printed == madeIn)
        addMarkFaults(piece, printed, main.share * (1 - misread), later_added);
    for (std::size_t r = 1; r < roles.size(); ++r)
        if (roles[r].share > 0)
            piece.cases.push_back({Fault::OtherRole, roles[r].share, roles[r].of_printed(printed),
                                   roles[r].if_wrong, roles[r].share >= is_open_from});
    if (shares.nothing > 0)
        piece.cases.push_back({Fault::OtherRole, shares.nothing, anyYear(range),
                               "the figures are no date of its making",
                               shares.nothing >= is_open_from});
    return piece;
}

}  // namespace

std::vector<DateEvidence> markEvidence(const StampSeen& stamp, const RoleContext& context,
                                       const YearRange& range)
{
    std::vector<DateEvidence> pieces;
    RoleContext within = context;
    within.dates = inRange(context, range);
    const auto roles = guessRoles(stamp.lines, within);
    for (std::size_t l = 0; l < stamp.lines.size(); ++l)
        for (const DateStretch& stretch : dateStretches(stamp.lines[l], within.dates, range)) {
            const RoleShares shares = roleSharesOf(stretch, roles[l]);
            if (shares.nothing < 1 - least_date)
                pieces.push_back(pieceOf(stamp.name, stretch, shares, stamp.later_added, range));
        }
    return pieces;
}

std::vector<Line> linesWithoutDates(const std::vector<Line>& lines, const RoleContext& context,
                                    const YearRange& range)
{
    std::vector<Line> left;
    for (const Line& line : lines) {
        Line rest = line;
        rest.spans.clear();
        std::vector<DateStretch> dates = dateStretches(line, inRange(context, range), range);
        std::erase_if(dates, [](const DateStretch& date) { return date.probability < is_date; });
        std::sort(dates.begin(), dates.end(), [](const DateStretch& a, const DateStretch& b) {
            return a.first_cell > b.first_cell;
        });
        for (const DateStretch& date : dates)
            rest.cells.erase(rest.cells.begin() + static_cast<std::ptrdiff_t>(date.first_cell),
                             rest.cells.begin() + static_cast<std::ptrdiff_t>(date.end_cell));
        const bool holds_letters =
            std::any_of(rest.cells.begin(), rest.cells.end(), [](const Cell& cell) {
                return !cell.alternatives.empty() && cell.alternatives.front().text != " ";
            });
        if (holds_letters)
            left.push_back(std::move(rest));
    }
    return left;
}

}  // namespace models
