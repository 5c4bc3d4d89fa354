#include "tests/bench/made_world.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "models/confusion.h"
#include "models/edtf.h"
#include "models/typed_notation.h"

namespace bench {

namespace {

constexpr int earliest = 1895, latest = 1980;

bool falls(Dice& dice, double probability)
{
    return dice.between(0, 1) < probability;
}

// Years that a piece allows as it stands, without softness.
using Years = std::set<int>;

Years span(int from, int to)
{
    Years years;
    for (int year = std::max(from, earliest); year <= std::min(to, latest); ++year)
        years.insert(year);
    return years;
}

int yearIn(const std::string& edtf)
{
    return models::edtfYearBounds(edtf).value().first.value();
}

Years meet(const Years& a, const Years& b)
{
    Years both;
    std::set_intersection(a.begin(), a.end(), b.begin(), b.end(), std::inserter(both, both.end()));
    return both;
}

int distance(const Years& a, const Years& b)
{
    int least = 0;
    bool any = false;
    for (const int x : a)
        for (const int y : b)
            if (!any || std::abs(x - y) < least) {
                least = std::abs(x - y);
                any = true;
            }
    return least;
}

// Letters of digits as a person reads them; `as_read` gathers what stands at each place.
std::string typedDigit(char digit, Dice& dice, const WorldOptions& options, std::string& as_read)
{
    const auto look_alike = [&](char truth) {
        std::vector<double> weights;
        double sum = 0;
        for (char other = '0'; other <= '9'; ++other) {
            weights.push_back(other == truth ? 0
                                             : models::ConfusionTable::published().probability(
                                                   std::string(1, truth), std::string(1, other)));
            sum += weights.back();
        }
        double lot = dice.between(0, sum);
        for (std::size_t i = 0; i < weights.size(); ++i)
            if ((lot -= weights[i]) < 0)
                return static_cast<char>('0' + i);
        return truth;
    };
    const double lot = dice.between(0, 1);
    if (lot < options.unread_digit) {
        as_read = "0123456789";
        return "[.]";
    }
    if (lot < options.unread_digit + options.doubtful_digit) {
        const char other = look_alike(digit);
        const bool right_first = falls(dice, 0.625);  // the first of two has 0.6 of it
        as_read = std::string{digit, other};
        return std::string("(") + (right_first ? digit : other) + "|" +
               (right_first ? other : digit) + ")";
    }
    const char seen = falls(dice, options.misread_digit) ? look_alike(digit) : digit;
    as_read = std::string(1, seen);
    return as_read;
}

struct TypedYear {
    std::string typed;
    Years as_read;
};

TypedYear typedYear(int year, bool four_digits, Dice& dice, const WorldOptions& options)
{
    const std::string digits = std::to_string(year);
    std::vector<std::string> as_read(4);
    TypedYear result;
    for (std::size_t i = 0; i < 4; ++i) {
        if (i < 2 && !four_digits) {
            as_read[i] = digits.substr(i, 1);
            continue;
        }
        if (i < 2) {  // nobody takes the century for another
            as_read[i] = digits.substr(i, 1);
            result.typed += as_read[i];
            continue;
        }
        result.typed += typedDigit(digits[i], dice, options, as_read[i]);
    }
    for (const char tens : as_read[2])
        for (const char ones : as_read[3])
            result.as_read.insert((year / 100) * 100 + (tens - '0') * 10 + (ones - '0'));
    return result;
}

class ItemMaker {
public:
    ItemMaker(const models::MakerRegister& known, Dice& dice, const WorldOptions& options)
        : known_(known), dice_(dice), options_(options)
    {
    }

    MadeItem make(Planted planted);

private:
    void chooseTypeAndMaker();
    TypedYear stampedYear(Planted planted, int printed);
    void addMark(Planted planted);
    void addInspection();
    void addDetails(int but_chain);
    void plantDetail(Planted planted, int chain);
    const models::Feature* wayOf(int chain, int year) const;
    int ageOfWay(int year);

    const models::MakerRegister& known_;
    Dice& dice_;
    const WorldOptions& options_;
    MadeItem made_;
    const models::ItemType* type_ = nullptr;
    const models::Maker* maker_ = nullptr;
    Years others_, planted_;  // what all but the planted piece allow, and what it says
};

void ItemMaker::chooseTypeAndMaker()
{
    std::vector<const models::Maker*> working;
    while (working.empty()) {
        type_ = &known_.item_types[static_cast<std::size_t>(
            dice_.whole(0, static_cast<int>(known_.item_types.size()) - 1))];
        made_.year = dice_.whole(yearIn(type_->introduced), yearIn(type_->withdrawn));
        for (const models::Maker& maker : known_.makers)
            if (made_.year >= yearIn(maker.from) && made_.year <= yearIn(maker.to))
                working.push_back(&maker);
    }
    maker_ = dice_.among(working);
    made_.item.type_id = type_->type_id;
    others_ = meet(span(yearIn(type_->introduced), yearIn(type_->withdrawn)),
                   span(yearIn(maker_->from), yearIn(maker_->to)));
}

// The year as the stamp has it.
TypedYear ItemMaker::stampedYear(Planted planted, int printed)
{
    const double form = dice_.between(0, 1);
    const bool is_lone = planted != Planted::MisreadDigit && form < options_.lone_number;
    const bool with_month = !is_lone && form < options_.lone_number + options_.with_month;
    if (is_lone && falls(dice_, 0.5))
        return {std::to_string(dice_.whole(20, 60)), span(earliest, latest)};
    WorldOptions wear = options_;
    if (planted == Planted::MisreadDigit) {
        wear.unread_digit = wear.doubtful_digit = 0;
        wear.misread_digit = 0.5;
    }
    TypedYear year;
    do
        year = typedYear(printed, !is_lone && !with_month, dice_, wear);
    while (planted == Planted::MisreadDigit && year.as_read.contains(printed));
    if (with_month)
        year.typed = "MAR " + year.typed;
    return year;
}

void ItemMaker::addMark(Planted planted)
{
    int printed = made_.year;
    if (falls(dice_, options_.other_year))
        printed += dice_.whole(0, 1) == 0 ? -1 : 1;
    const TypedYear year = stampedYear(planted, printed);
    if (planted == Planted::MisreadDigit) {
        made_.printed_year = printed;
        made_.culprit = "stamp 1";
        planted_ = year.as_read;
    } else {
        others_ = meet(others_, year.as_read);
    }
    const auto mark =
        std::find_if(known_.marks.begin(), known_.marks.end(),
                     [&](const models::Mark& one) { return one.maker_id == maker_->maker_id; });
    models::ItemStamp stamp;
    stamp.name = "stamp 1";
    stamp.part = models::StampPart::Body;
    stamp.lines = models::parseTyped(mark->text + " / " + year.typed).lines;
    made_.item.stamps.push_back(stamp);
}

void ItemMaker::addInspection()
{
    if (!falls(dice_, 0.3))
        return;
    int year = made_.year;
    while (falls(dice_, 0.5))
        ++year;
    models::ItemEvent event;
    event.kind = models::EventKind::Inspected;
    event.bound = models::DateBound::NotAfter;
    event.edtf = std::to_string(year);
    made_.item.events.push_back(event);
    others_ = meet(others_, span(earliest, year));
}

// The way of a chain in which things were made in a year: the last one begun.
const models::Feature* ItemMaker::wayOf(int chain, int year) const
{
    const std::string begins = type_->type_id + "-" + std::to_string(chain) + "-";
    const models::Feature* way = nullptr;
    for (const models::Feature& feature : known_.features)
        if (feature.feature_id.rfind(begins, 0) == 0 && yearIn(feature.from) <= year &&
            (!way || yearIn(feature.from) > yearIn(way->from)))
            way = &feature;
    return way;
}

// The year of the way that this item was made in: its own, an older one, seldom the next one's.
int ItemMaker::ageOfWay(int year)
{
    if (falls(dice_, options_.early))
        return year + 1;
    if (!falls(dice_, options_.old_stock))
        return year;
    int age = 1;
    while (falls(dice_, options_.old_stock_years))
        ++age;
    return year - age;
}

void ItemMaker::addDetails(int but_chain)
{
    for (int chain = 0; chain < 4; ++chain) {
        if (chain == but_chain)
            continue;
        const models::Feature* way = wayOf(chain, ageOfWay(made_.year));
        if (!way)
            way = wayOf(chain, made_.year);
        const bool is_seen = falls(dice_, 0.75);
        made_.item.features.push_back({way->feature_id, is_seen
                                                            ? models::FeatureSeen::Present
                                                            : models::FeatureSeen::CannotBeSeen});
        if (!is_seen)
            continue;
        others_ = meet(others_, span(yearIn(way->from), yearIn(way->to)));
        const models::Feature* other = wayOf(chain, made_.year - dice_.whole(8, 15));
        if (other && other != way && falls(dice_, 0.3))
            made_.item.features.push_back({other->feature_id, models::FeatureSeen::Absent});
    }
}

// One chain shows another way than the item was made in: an older part, or a later one.
void ItemMaker::plantDetail(Planted planted, int chain)
{
    const int away = planted == Planted::Repair ? dice_.whole(1, 20) : -dice_.whole(1, 20);
    const models::Feature* way = wayOf(chain, made_.year + away);
    if (!way)
        return;
    made_.item.features.push_back({way->feature_id, models::FeatureSeen::Present});
    made_.culprit = way->name + ",";
    planted_ = span(yearIn(way->from), yearIn(way->to));
}

MadeItem ItemMaker::make(Planted planted)
{
    made_.planted = planted;
    chooseTypeAndMaker();
    addMark(planted);
    addInspection();
    const bool in_detail = planted == Planted::WrongPart || planted == Planted::Repair;
    const int chain = in_detail ? dice_.whole(0, 3) : -1;
    addDetails(chain);
    if (in_detail)
        plantDetail(planted, chain);
    if (planted != Planted::Nothing && !planted_.empty() && !others_.empty())
        made_.gap = distance(planted_, others_);
    return std::move(made_);
}

}  // namespace

MadeItem makeItem(const models::MakerRegister& known, Dice& dice, const WorldOptions& options,
                  Planted planted)
{
    return ItemMaker(known, dice, options).make(planted);
}

const char* nameOf(Planted planted)
{
    static constexpr const char* names[] = {"nothing", "misread digit", "wrong part", "repair"};
    return names[static_cast<std::size_t>(planted)];
}

}  // namespace bench
