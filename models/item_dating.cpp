#include "models/item_dating.h"

#include <algorithm>
#include <set>
#include <stdexcept>

#include "models/date_mark.h"
#include "models/edtf.h"

namespace models {

namespace {

// How often a maker that somebody concluded is the right one. Common practice, no source.
double shareOf(Certainty certainty)
{
    switch (certainty) {
        case Certainty::Certain:
            return 0.98;
        case Certainty::Probable:
            return 0.85;
        case Certainty::Possible:
            break;
    }
    return 0.6;
}

constexpr int earliest_dated = 1801, latest_dated = 2000;  // as readDates has it

void reach(YearRange& range, int year)
{
    range.first = std::min(range.first, year);
    range.last = std::max(range.last, year);
}

bool holdsFourDigits(const Line& line)
{
    int run = 0;
    for (const Cell& cell : line.cells) {
        const std::string letter = cell.alternatives.empty() ? "" : cell.alternatives.front().text;
        run = letter.size() == 1 && letter[0] >= '0' && letter[0] <= '9' ? run + 1 : 0;
        if (run == 4)
            return true;
    }
    return false;
}

// A year in four digits that no other one could be.
void reachPrintedYears(YearRange& range, const StampSeen& stamp)
{
    const DateContext wide = {std::min(range.first, earliest_dated),
                              std::max(range.last, latest_dated),
                              DayOrder::Unknown,
                              {}};
    for (const Line& line : stamp.lines) {
        if (!holdsFourDigits(line))
            continue;
        for (const DateMeaning& meaning : readDates(line, wide))
            if (meaning.probability > 0.5 && meaning.years.size() == 1)
                reach(range, meaning.years.front());
    }
}

bool speaksForItem(StampPart part)
{
    return part == StampPart::Body || part == StampPart::Unknown;
}

const char* wordOf(StampPart part)
{
    switch (part) {
        case StampPart::Fitting:
            return "fitting";
        case StampPart::Lining:
            return "lining";
        case StampPart::Replacement:
            return "replaced part";
        case StampPart::Body:
        case StampPart::Unknown:
            break;
    }
    return "item";
}

class ItemDater {
public:
    ItemDater(const DatedItem& item, const MakerRegister& known, const DateItemOptions& options)
        : item_(item),
          known_(known),
          options_(options),
          range_(datingRange(item, known)),
          roles_(roleContextOf(known, item.type_id))
    {
        for (const ItemEvent& event : item.events)
            if (event.stamp && event.bound != DateBound::None)
                told_.insert(*event.stamp);
    }

    std::vector<PartDating> date() const;

private:
    PartDating dateBody() const;
    PartDating datePart(std::size_t stamp) const;
    void addStamps(PartDating& part, const std::vector<std::size_t>& stamps) const;
    void addEvents(PartDating& part, const std::vector<std::size_t>& stamps, bool is_item) const;
    void addFeatures(PartDating& part) const;
    void addLetters(PartDating& part, const std::vector<std::size_t>& stamps) const;
    void addConcluded(PartDating& part) const;
    static void add(PartDating& part, std::optional<DateEvidence> piece, const std::string& name,
                    const char* why_not);
    void finish(PartDating& part) const
    {
        part.dating = dateFrom(part.evidence, range_, options_.dating);
    }

    const DatedItem& item_;
    const MakerRegister& known_;
    const DateItemOptions& options_;
    YearRange range_;
    RoleContext roles_;
    std::set<std::size_t> told_;  // stamps of which a dated event tells the date
};

void ItemDater::add(PartDating& part, std::optional<DateEvidence> piece, const std::string& name,
                    const char* why_not)
{
    if (piece)
        part.evidence.push_back(std::move(*piece));
    else
        part.silent.push_back(name + ": " + why_not);
}

void ItemDater::addStamps(PartDating& part, const std::vector<std::size_t>& stamps) const
{
    for (const std::size_t s : stamps) {
        if (told_.contains(s))
            continue;
        std::vector<DateEvidence> pieces = markEvidence(item_.stamps[s], roles_, range_);
        if (pieces.empty())
            part.silent.push_back(item_.stamps[s].name + ": no date was read on it");
        for (DateEvidence& piece : pieces)
            part.evidence.push_back(std::move(piece));
    }
}

void ItemDater::addEvents(PartDating& part, const std::vector<std::size_t>& stamps,
                          bool is_item) const
{
    for (const ItemEvent& event : item_.events) {
        const bool is_here =
            event.stamp ? std::find(stamps.begin(), stamps.end(), *event.stamp) != stamps.end()
                        : is_item;
        if (is_here)
            add(part, eventEvidence(event, range_),
                event.printed.empty() ? event.edtf : event.printed,
                "the event says nothing of the making");
    }
}

void ItemDater::addFeatures(PartDating& part) const
{
    for (const ItemFeature& seen : item_.features) {
        const Feature* feature = known_.feature(seen.feature_id);
        if (!feature) {
            part.silent.push_back(seen.feature_id + ": the register has no such feature");
            continue;
        }
        if (seen.feature_id == options_.without_feature)
            continue;
        // That another maker's or another type's detail is absent tells nothing of the year.
        const bool is_absent = seen.seen == FeatureSeen::Absent;
        const bool is_makers = is_absent && !feature->maker_id.empty();
        const bool is_of_other_type = is_absent && !feature->type_id.empty() &&
                                      !item_.type_id.empty() && feature->type_id != item_.type_id;
        add(part,
            is_makers || is_of_other_type ? std::nullopt
                                          : featureEvidence(*feature, seen.seen, range_),
            feature->name,
            seen.seen == FeatureSeen::CannotBeSeen ? "it cannot be seen"
            : is_makers        ? "only one maker has it, its absence dates nothing"
            : is_of_other_type ? "other item types have it, its absence dates nothing"
                               : "the register gives it no years");
    }
}

void ItemDater::addConcluded(PartDating& part) const
{
    std::vector<MakerShare> shares;
    double left = 1;  // rivals share what the surer ones leave
    for (const Certainty certainty :
         {Certainty::Certain, Certainty::Probable, Certainty::Possible}) {
        std::vector<const MakerConcluded*> rivals;
        for (const MakerConcluded& maker : item_.makers)
            if (maker.certainty == certainty)
                rivals.push_back(&maker);
        const double each =
            rivals.empty() ? 0 : left * shareOf(certainty) / static_cast<double>(rivals.size());
        for (const MakerConcluded* maker : rivals) {
            shares.push_back({maker->maker_id, maker->mark, each});
            left -= each;
        }
    }
    add(part, makerEvidence("maker, as concluded", shares, known_, range_), "maker",
        "the register does not have the one that was concluded");
    part.makers = std::move(shares);
}

void ItemDater::addLetters(PartDating& part, const std::vector<std::size_t>& stamps) const
{
    ItemEvidence letters;
    for (const std::size_t s : stamps) {
        Reading reading;
        reading.lines = linesWithoutDates(item_.stamps[s].lines, roles_, range_);
        if (!reading.lines.empty())
            letters.stamps.push_back(std::move(reading));
    }
    if (letters.stamps.empty() || known_.makers.empty())
        return;
    const CandidateList ranked =
        options_.rank_letters ? options_.rank_letters(letters) : rankCandidates(letters, known_);
    std::vector<MakerShare> shares;
    for (const Candidate& one : ranked.candidates)
        shares.push_back({one.maker_id, one.mark, one.probability});
    add(part, makerEvidence("maker, by the letters", shares, known_, range_), "letters",
        "they name no maker");
    part.makers = std::move(shares);
}

PartDating ItemDater::dateBody() const
{
    PartDating part;
    part.name = "the item";
    std::vector<std::size_t> stamps;
    for (std::size_t s = 0; s < item_.stamps.size(); ++s)
        if (speaksForItem(item_.stamps[s].part))
            stamps.push_back(s);
    addStamps(part, stamps);
    addEvents(part, stamps, true);
    if (item_.makers.empty())
        addLetters(part, stamps);
    else
        addConcluded(part);
    if (const ItemType* type = known_.itemType(item_.type_id))
        add(part, typeEvidence(*type, range_), type->name, "the register gives it no years");
    addFeatures(part);
    finish(part);
    return part;
}

PartDating ItemDater::datePart(std::size_t stamp) const
{
    PartDating part;
    part.is_item = false;
    part.name = item_.stamps[stamp].name + ", on a " + wordOf(item_.stamps[stamp].part);
    addStamps(part, {stamp});
    addEvents(part, {stamp}, false);
    addLetters(part, {stamp});
    finish(part);
    return part;
}

std::vector<PartDating> ItemDater::date() const
{
    std::vector<PartDating> parts = {dateBody()};
    for (std::size_t s = 0; s < item_.stamps.size(); ++s)
        if (!speaksForItem(item_.stamps[s].part))
            parts.push_back(datePart(s));
    return parts;
}

}  // namespace

YearRange datingRange(const DatedItem& item, const MakerRegister& known)
{
    YearRange range = yearsOf(known);
    for (const ItemEvent& event : item.events) {
        const auto bounds = edtfYearBounds(event.edtf);
        for (const std::optional<int>& year :
             {bounds ? bounds->first : std::nullopt, bounds ? bounds->last : std::nullopt})
            if (year && *year >= 1500 && *year <= 2200)
                reach(range, *year);
    }
    for (const ItemStamp& stamp : item.stamps)
        reachPrintedYears(range, stamp);
    return range;
}

std::vector<PartDating> dateItem(const DatedItem& item, const MakerRegister& known,
                                 const DateItemOptions& options)
{
    if (!item.type_id.empty() && !known.itemType(item.type_id))
        throw std::invalid_argument("the item type '" + item.type_id + "' is not in the register");
    return ItemDater(item, known, options).date();
}

}  // namespace models
