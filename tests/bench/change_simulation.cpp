// How often the true time of a change of production lies in the stated interval. Archives of 20, 50
// and 200 items with a known change, drawn by rules that are not the model's own: an S-shaped
// overlap of any length up to 7 years, slips of 0 to 8 %, dates of every sharpness.
// change_simulation [--archives N] [--seed S]
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <vector>

#include "models/production_change.h"
#include "tests/support/dice.h"

namespace {

const models::YearRange range = {1921, 1958};

// The year that an item was made in, and how it is dated.
struct DatedTruth {
    int year = 0;
    std::vector<double> years;
};

std::size_t indexOf(int year)
{
    return static_cast<std::size_t>(year - range.first);
}

// Some years alike, the true one among them.
DatedTruth someYears(Dice& dice, int length)
{
    DatedTruth dated{dice.whole(range.first, range.last), std::vector<double>(range.size(), 0)};
    const int from = std::max(range.first, dated.year - dice.whole(0, length - 1));
    const int to = std::min(range.last, from + length - 1);
    for (int year = from; year <= to; ++year)
        dated.years[indexOf(year)] = 1.0 / (to - from + 1);
    return dated;
}

// An unread last digit.
DatedTruth someDecade(Dice& dice)
{
    DatedTruth dated{dice.whole(range.first, range.last), std::vector<double>(range.size(), 0)};
    const int from = std::max(range.first, dated.year / 10 * 10);
    const int to = std::min(range.last, dated.year / 10 * 10 + 9);
    for (int year = from; year <= to; ++year)
        dated.years[indexOf(year)] = 1.0 / (to - from + 1);
    return dated;
}

// A year that is right in nineteen of twenty, else one of the ten beside it.
DatedTruth nearlySure(Dice& dice)
{
    const int stated = dice.whole(range.first + 5, range.last - 5);
    DatedTruth dated{stated, std::vector<double>(range.size(), 0)};
    for (int year = stated - 5; year <= stated + 5; ++year)
        dated.years[indexOf(year)] = year == stated ? 0.95 : 0.005;
    if (dice.once_in(20))
        while (dated.year == stated)
            dated.year = dice.whole(stated - 5, stated + 5);
    return dated;
}

DatedTruth someItem(Dice& dice)
{
    const double lot = dice.between(0, 1);
    if (lot < 0.4)
        return someYears(dice, 1);
    if (lot < 0.65)
        return nearlySure(dice);
    if (lot < 0.75)
        return someYears(dice, 2);
    return lot < 0.85 ? someYears(dice, 6) : someDecade(dice);
}

// The share of the new at a moment: an S from 0 to 1 in `overlap` years about `middle`.
double newAt(double moment, double middle, double overlap)
{
    const double at = overlap > 0 ? (moment - middle) / overlap + 0.5 : (moment >= middle ? 1 : 0);
    const double within = std::clamp(at, 0.0, 1.0);
    return within * within * (3 - 2 * within);
}

struct Archive {
    std::vector<models::ChangeItem> items;
    double middle = 0;
};

Archive someArchive(Dice& dice, int size)
{
    Archive archive;
    archive.middle = dice.between(range.first + 4, range.last - 3);
    const double overlap = dice.between(0, 7), slips = dice.between(0, 0.08);
    const bool comes_in = dice.whole(0, 1) == 0;
    for (int i = 0; i < size; ++i) {
        const DatedTruth dated = someItem(dice);
        bool is_new =
            dice.between(0, 1) < newAt(dated.year + dice.between(0, 1), archive.middle, overlap);
        if (dice.between(0, 1) < slips)
            is_new = !is_new;
        models::ChangeItem item;
        item.name = std::to_string(i);
        item.has_detail = is_new == comes_in;
        item.years = dated.years;
        archive.items.push_back(std::move(item));
    }
    return archive;
}

void run(int size, int archives, std::uint32_t seed)
{
    Dice dice(seed);
    int inside = 0, said = 0, inside_said = 0;
    double width = 0;
    for (int a = 0; a < archives; ++a) {
        const Archive archive = someArchive(dice, size);
        const models::ChangePosterior found =
            models::findProductionChange(archive.items, range).pooled;
        const bool is_inside = archive.middle >= found.from && archive.middle <= found.to;
        inside += is_inside ? 1 : 0;
        width += found.to - found.from;
        said += found.can_say ? 1 : 0;
        inside_said += found.can_say && is_inside ? 1 : 0;
    }
    std::printf(
        "%3d items, %d archives: true change in the 90 %% interval %.1f %%, mean length "
        "%.2f years; it says when in %.1f %%, right in %.1f %% of these\n",
        size, archives, 100.0 * inside / archives, width / archives, 100.0 * said / archives,
        said > 0 ? 100.0 * inside_said / said : 0);
    std::fflush(stdout);
}

}  // namespace

int main(int count, char** arguments)
{
    int archives = 500;
    std::uint32_t seed = 1;
    for (int i = 1; i + 1 < count; i += 2) {
        const std::string option = arguments[i];
        if (option == "--archives")
            archives = std::atoi(arguments[i + 1]);
        else if (option == "--seed")
            seed = static_cast<std::uint32_t>(std::atoi(arguments[i + 1]));
    }
    for (const int size : {20, 50, 200})
        run(size, archives, seed + static_cast<std::uint32_t>(size));
    return 0;
}
