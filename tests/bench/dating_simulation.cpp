// How well dating tells the year, and which of its pieces misleads, in a made-up world (see
// made_world.h). dating_simulation [--items N] [--seed S] prints the bars, one block each.
#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <map>
#include <string>
#include <vector>

#include "models/dating_words.h"
#include "models/item_dating.h"
#include "tests/bench/made_world.h"

namespace {

using bench::MadeItem;
using bench::Planted;

constexpr int items_a_register = 100;
constexpr int widest_gap = 10;

struct Settings {
    int items = 2000;
    std::uint32_t seed = 1;
};

// What became of some items.
struct Tally {
    int items = 0, held = 0, held_by_mark = 0, with_mark = 0;
    double set = 0, set_with_mark = 0, mark_set = 0;
    int alarms = 0, first = 0, among_two = 0, digit_named = 0, misreads = 0;
    std::array<int, 10> pit{}, pit_told{};  // of all, of those with a contradiction told
};

// The dating by the stamps' dates alone.
std::optional<models::Dating> byMarkAlone(const models::PartDating& part)
{
    std::vector<models::DateEvidence> marks;
    for (const models::DateEvidence& piece : part.evidence)
        if (piece.printed_year)
            marks.push_back(piece);
    if (marks.empty())
        return std::nullopt;
    return models::dateFrom(marks, part.dating.range);
}

bool holds(const models::Dating& dating, int year)
{
    return std::binary_search(dating.set.begin(), dating.set.end(), year);
}

void tallyCulprits(Tally& tally, const MadeItem& made, const models::PartDating& part)
{
    const std::vector<models::Culprit>& named = part.dating.culprits;
    for (std::size_t i = 0; i < named.size() && i < 2; ++i) {
        if (part.evidence[named[i].evidence].source.rfind(made.culprit, 0) != 0)
            continue;
        tally.first += i == 0 ? 1 : 0;
        ++tally.among_two;
        if (made.planted == Planted::MisreadDigit)
            tally.digit_named += named[i].printed == made.printed_year ? 1 : 0;
        break;
    }
    tally.misreads += made.planted == Planted::MisreadDigit ? 1 : 0;
}

void tallyItem(Tally& tally, const MadeItem& made, const models::MakerRegister& known, Dice& dice)
{
    const models::PartDating part = models::dateItem(made.item, known).front();
    const models::Dating& dating = part.dating;
    ++tally.items;
    tally.held += holds(dating, made.year) ? 1 : 0;
    tally.set += static_cast<double>(dating.set.size());
    if (const auto mark = byMarkAlone(part)) {
        ++tally.with_mark;
        tally.held_by_mark += holds(*mark, made.year) ? 1 : 0;
        tally.mark_set += static_cast<double>(mark->set.size());
        tally.set_with_mark += static_cast<double>(dating.set.size());
    }
    double below = 0;  // randomised, as years are whole
    const auto index = static_cast<std::size_t>(made.year - dating.range.first);
    for (std::size_t y = 0; y < index; ++y)
        below += dating.years[y];
    const double pit = below + dice.between(0, 1) * dating.years[index];
    const auto tenth = static_cast<std::size_t>(std::clamp(pit * 10, 0.0, 9.0));
    ++tally.pit[tenth];
    if (dating.is_contradiction) {
        ++tally.alarms;
        ++tally.pit_told[tenth];
        tallyCulprits(tally, made, part);
    }
}

double percent(int part, int whole)
{
    return whole > 0 ? 100.0 * part / whole : 0;
}

void printCoverage(const char* name, const Tally& tally)
{
    std::printf(
        "%-28s %5d items  true year in the 95 %% set %5.1f %% (mark alone %5.1f %%)  mean "
        "set %5.2f years (mark alone %5.2f)\n",
        name, tally.items, percent(tally.held, tally.items),
        percent(tally.held_by_mark, tally.with_mark), tally.set_with_mark / tally.with_mark,
        tally.mark_set / tally.with_mark);
}

// Years told with their probabilities owe an even spread over items as they come, and over those of
// them that have a contradiction told. Not over items chosen because a piece misleads: a digit
// misread by a year, which nothing contradicts, must be believed.
void printPit(const char* of, const std::array<int, 10>& tenths, int items)
{
    double chi = 0;
    std::printf("  PIT of %s in tenths:", of);
    for (const int tenth : tenths) {
        const double expected = items / 10.0;
        chi += (tenth - expected) * (tenth - expected) / expected;
        std::printf(" %.3f", static_cast<double>(tenth) / items);
    }
    // 9 degrees of freedom: 95 % lie below 16.9, 99.9 % below 27.9.
    std::printf("  chi square %.1f (16.9 at 5 %%, 27.9 at 0.1 %%)\n", chi);
}

// Items as they come: about one piece in a hundred misleads.
Tally runField(const Settings& settings, double faulty, std::uint32_t seed)
{
    Dice dice(seed);
    Tally tally;
    models::MakerRegister known;
    for (int i = 0; i < settings.items; ++i) {
        if (i % items_a_register == 0)
            known = bench::madeRegister(dice);
        Planted planted = Planted::Nothing;
        if (dice.between(0, 1) < faulty)
            planted = dice.among(
                std::vector<Planted>{Planted::MisreadDigit, Planted::WrongPart, Planted::Repair});
        tallyItem(tally, bench::makeItem(known, dice, {}, planted), known, dice);
    }
    return tally;
}

// As many planted contradictions of every gap from 1 to 10 years, of the three kinds in turn.
std::map<int, std::map<Planted, Tally>> runPlanted(const Settings& settings, std::uint32_t seed)
{
    Dice dice(seed);
    std::map<int, std::map<Planted, Tally>> tallies;
    const std::vector<Planted> kinds = {Planted::MisreadDigit, Planted::WrongPart, Planted::Repair};
    const int a_cell = std::max(1, settings.items / (widest_gap * static_cast<int>(kinds.size())));
    long tries = 0;
    int left = widest_gap * static_cast<int>(kinds.size());
    models::MakerRegister known;
    for (; left > 0 && tries < 4000000; ++tries) {
        if (tries % items_a_register == 0)
            known = bench::madeRegister(dice);
        const Planted kind = kinds[static_cast<std::size_t>(tries) % kinds.size()];
        const MadeItem made = bench::makeItem(known, dice, {}, kind);
        if (made.gap < 1 || made.gap > widest_gap || tallies[made.gap][kind].items >= a_cell)
            continue;
        tallyItem(tallies[made.gap][kind], made, known, dice);
        left -= tallies[made.gap][kind].items == a_cell ? 1 : 0;
    }
    return tallies;
}

void join(Tally& into, const Tally& from)
{
    into.items += from.items;
    into.held += from.held;
    into.held_by_mark += from.held_by_mark;
    into.with_mark += from.with_mark;
    into.set += from.set;
    into.set_with_mark += from.set_with_mark;
    into.mark_set += from.mark_set;
    into.alarms += from.alarms;
    into.first += from.first;
    into.among_two += from.among_two;
    into.digit_named += from.digit_named;
    into.misreads += from.misreads;
    for (std::size_t i = 0; i < into.pit.size(); ++i)
        into.pit[i] += from.pit[i];
}

void printFound(const std::string& name, const Tally& tally)
{
    std::printf(
        "%-20s %5d items  found %5.1f %%  of these the planted piece first %5.1f %%, among "
        "two %5.1f %%",
        name.c_str(), tally.items, percent(tally.alarms, tally.items),
        percent(tally.first, tally.alarms), percent(tally.among_two, tally.alarms));
    if (tally.misreads > 0)
        std::printf("; misread digits found and given right %5.1f %%",
                    percent(tally.digit_named, tally.misreads));
    std::printf("\n");
}

void printPlanted(const std::map<int, std::map<Planted, Tally>>& tallies)
{
    Tally all, wide;
    std::map<Planted, Tally> wide_by_kind;
    for (const auto& [gap, kinds] : tallies) {
        Tally of_gap;
        for (const auto& [kind, tally] : kinds) {
            join(of_gap, tally);
            if (gap >= 5)
                join(wide_by_kind[kind], tally);
        }
        printFound(std::to_string(gap) + " years off", of_gap);
        join(all, of_gap);
        if (gap >= 5)
            join(wide, of_gap);
    }
    for (const auto& [kind, tally] : wide_by_kind)
        printFound(std::string("5 or more, ") + bench::nameOf(kind), tally);
    printFound("5 years or more", wide);
    printCoverage("with a planted contradiction", all);
}

// One item with ten pieces of evidence, in milliseconds of the processor.
void printTime(std::uint32_t seed)
{
    Dice dice(seed);
    const models::MakerRegister known = bench::madeRegister(dice);
    std::vector<models::DatedItem> items;
    while (items.size() < 50) {
        models::DatedItem item = bench::makeItem(known, dice, {}, Planted::Nothing).item;
        for (std::size_t f = 0; f < known.features.size() && item.features.size() < 12; ++f)
            item.features.push_back({known.features[f].feature_id, models::FeatureSeen::Absent});
        if (models::dateItem(item, known).front().evidence.size() >= 10)
            items.push_back(item);
    }
    const std::clock_t begin = std::clock();
    std::size_t pieces = 0;
    for (const models::DatedItem& item : items)
        pieces += models::dateItem(item, known).front().evidence.size();
    const double took = 1000.0 * static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC;
    std::printf("one item with %.1f pieces of evidence: %.2f ms of the processor\n",
                static_cast<double>(pieces) / 50, took / 50);
}

}  // namespace

int main(int count, char** arguments)
{
    Settings settings;
    for (int i = 1; i + 1 < count; i += 2) {
        const std::string option = arguments[i];
        if (option == "--items")
            settings.items = std::atoi(arguments[i + 1]);
        else if (option == "--seed")
            settings.seed = static_cast<std::uint32_t>(std::atoi(arguments[i + 1]));
    }
    const Tally clean = runField(settings, 0, settings.seed);
    printCoverage("nothing planted", clean);
    printPit("all", clean.pit, clean.items);
    std::printf("  false alarms %.2f %%\n", percent(clean.alarms, clean.items));
    const Tally field = runField(settings, 1.0 / 12, settings.seed + 1);
    printCoverage("one item in twelve faulty", field);
    printPit("all", field.pit, field.items);
    printPit("those with a contradiction told", field.pit_told, field.alarms);
    printPlanted(runPlanted(settings, settings.seed + 2));
    printTime(settings.seed + 3);
    return 0;
}
