// Datings of whole items by the demo register.
#include "models/item_dating.h"

#include <algorithm>
#include <catch2/catch.hpp>

#include "models/dating_words.h"
#include "tests/models/demo_ranking.h"

using namespace models;
using Catch::Contains;

namespace {

ItemStamp stampOf(const std::string& typed, StampPart part = StampPart::Body)
{
    static int number = 0;
    ItemStamp stamp;
    stamp.name = "stamp " + std::to_string(++number);
    stamp.lines = readingOf(typed).lines;
    stamp.part = part;
    return stamp;
}

DatedItem itemOf(const std::vector<std::string>& stamps, const std::string& type = "",
                 const std::vector<ItemFeature>& features = {})
{
    DatedItem item;
    item.type_id = type;
    item.features = features;
    for (const std::string& typed : stamps)
        item.stamps.push_back(stampOf(typed));
    return item;
}

Dating dated(const DatedItem& item)
{
    return dateItem(item, demoRegister()).front().dating;
}

double probabilityIn(const Dating& dating, int year)
{
    return dating.years.at(static_cast<std::size_t>(year - dating.range.first));
}

double between(const Dating& dating, int from, int to)
{
    double sum = 0;
    for (int year = from; year <= to; ++year)
        sum += probabilityIn(dating, year);
    return sum;
}

constexpr auto present = FeatureSeen::Present;

}  // namespace

TEST_CASE("A clear year dates an item", "[models][dating]")
{
    const Dating dating = dated(itemOf({"1940"}));
    CHECK(dating.edtf == "1940");
    CHECK(probabilityIn(dating, 1940) > 0.95);
    CHECK_FALSE(dating.is_contradiction);
    CHECK(dated(itemOf({"MAR 40"})).edtf == "1940");  // the register knows no other century
    CHECK(probabilityIn(dated(itemOf({"3/40"})), 1940) > 0.8);  // or a contract's number
    // Two digits alone may be a size or a number: 1940 is likeliest, but no year is shut out.
    const Dating alone = dated(itemOf({"40"}));
    CHECK(alone.set.size() > 5);
    CHECK(probabilityIn(alone, 1940) > 10 * probabilityIn(alone, 1945));
}

TEST_CASE("An unread digit leaves the decade, the maker and the detail narrow it",
          "[models][dating]")
{
    const Dating decade = dated(itemOf({"194[.]"}));
    CHECK(decade.edtf == "194X");
    CHECK(probabilityIn(decade, 1943) == Approx(probabilityIn(decade, 1944)).epsilon(0.01));
    // Holvane worked 1936 to 1943, the tab was left off in 1942.
    const Dating maker = dated(itemOf({"I.H. & CO / 194[.]"}));
    CHECK(between(maker, 1940, 1943) > 0.85);
    const Dating both = dated(itemOf({"I.H. & CO / 194[.]"}, "belt-1937", {{"end-tab", present}}));
    CHECK(between(both, 1940, 1942) > between(maker, 1940, 1942) + 0.1);
    CHECK(both.set.size() < maker.set.size());
}

TEST_CASE("Dates of other roles bound from their side", "[models][dating]")
{
    const Dating inspected = dated(itemOf({"INSP 1943"}));
    CHECK(between(inspected, 1944, inspected.range.last) < 0.03);
    CHECK(between(inspected, 1940, 1943) > 0.7);
    const Dating contract = dated(itemOf({"CONTRACT 1938"}));
    CHECK(between(contract, contract.range.first, 1937) < 0.05);
    CHECK(between(contract, 1938, 1941) > 0.7);
    const Dating made = dated(itemOf({"CONTRACT 1938 / 1939"}));
    CHECK(made.edtf == "1939");
    CHECK_FALSE(made.is_contradiction);
    CHECK(probabilityIn(dated(itemOf({"LOT 1938"})), 1938) < 0.2);
}

TEST_CASE("A misread digit is named with what it was", "[models][dating]")
{
    const DatedItem item = itemOf({"HESPERLOW & PRUDDERN / 1948"}, "belt-1937",
                                  {{"steel-buckle", present}, {"end-tab", present}});
    const PartDating part = dateItem(item, demoRegister()).front();
    REQUIRE(part.dating.is_contradiction);
    const Culprit& first = part.dating.culprits.front();
    CHECK(part.evidence[first.evidence].printed_year == 1948);
    CHECK(first.fault == EvidenceFault::Misread);
    // 0 is the one look-alike of 8 (published list of number plates) that the others allow.
    CHECK(first.printed == 1940);
    CHECK_THAT(first.words, Contains("likeliest a digit was misread") &&
                                Contains("soonest the 8 may be a 0 (1940 read as 1948)"));
    CHECK(between(part.dating, 1940, 1943) > 0.85);
    CHECK(probabilityIn(part.dating, 1948) < 0.05);
}

TEST_CASE("A later part is named where the rest agrees", "[models][dating]")
{
    const DatedItem item =
        itemOf({"J.H. & CO / 1938"}, "belt-1937",
               {{"brass-buckle-37", present}, {"end-tab", present}, {"plated-buckle-37", present}});
    const PartDating part = dateItem(item, demoRegister()).front();
    REQUIRE(part.dating.is_contradiction);
    CHECK(part.dating.edtf == "1938");
    CHECK_THAT(part.evidence[part.dating.culprits.front().evidence].source,
               Contains("Plated slide buckle"));
    CHECK(part.dating.culprits.front().fault == EvidenceFault::LaterRepair);
    // Recorded as altered later it contradicts nothing any more.
    DatedItem altered = item;
    altered.features.back().seen = FeatureSeen::AlteredLater;
    CHECK_FALSE(dated(altered).is_contradiction);
    CHECK(dated(altered).edtf == "1938");
}

TEST_CASE("A lone number that cannot be the year is no contradiction, and is told as what it is",
          "[models][dating]")
{
    const auto belt = [](const std::string& number) {
        return dateItem(itemOf({number}, "belt-1937", {{"end-tab", present}}), demoRegister())
            .front();
    };
    const PartDating size = belt("21");  // the pattern is of 1937
    CHECK_FALSE(size.dating.is_contradiction);
    REQUIRE(size.evidence[0].printed_year == 1921);
    CHECK_THAT(size.dating.weights[0].words, Contains("likeliest the figures are no date"));
    CHECK(between(size.dating, 1937, 1943) > 0.9);
    // In full it is a year and nothing else.
    CHECK(belt("1921").dating.is_contradiction);
}

TEST_CASE("Two stamps that cannot both be the making's are never averaged", "[models][dating]")
{
    const Dating dating = dated(itemOf({"1931", "1944"}));
    CHECK(dating.is_contradiction);
    CHECK(probabilityIn(dating, 1931) + probabilityIn(dating, 1944) > 0.75);
    CHECK(between(dating, 1935, 1940) < 0.2);
    REQUIRE(dating.culprits.size() >= 2);
    // A mark put on after the making is likelier than one with a year to come.
    CHECK(probabilityIn(dating, 1931) > probabilityIn(dating, 1944));
    DatedItem said = itemOf({"1931", "1944"});
    said.stamps[1].later_added = true;
    CHECK(probabilityIn(dated(said), 1931) > probabilityIn(dating, 1931));
}

TEST_CASE("Fittings and replaced parts are dated on their own", "[models][dating]")
{
    DatedItem item = itemOf({"J.H. & CO / 1938"});
    item.stamps.push_back(stampOf("Z.B. CO / 1952", StampPart::Fitting));
    item.stamps.push_back(stampOf("1947", StampPart::Replacement));
    const std::vector<PartDating> parts = dateItem(item, demoRegister());
    REQUIRE(parts.size() == 3);
    CHECK(parts[0].is_item);
    CHECK(parts[0].dating.edtf == "1938");
    CHECK_FALSE(parts[0].dating.is_contradiction);
    CHECK(parts[1].dating.edtf == "1952");
    CHECK_THAT(parts[1].name, Contains("fitting"));
    CHECK(parts[2].dating.edtf == "1947");
    // The body is dated as without them.
    const Dating alone = dated(itemOf({"J.H. & CO / 1938"}));
    CHECK(probabilityIn(parts[0].dating, 1938) == Approx(probabilityIn(alone, 1938)));
}

TEST_CASE("An event that a stamp tells stands for the stamp's own date", "[models][dating]")
{
    DatedItem item = itemOf({"1943"});
    const double made = probabilityIn(dated(item), 1943);
    ItemEvent event;
    event.kind = EventKind::Inspected;
    event.bound = DateBound::NotAfter;
    event.edtf = "1943";
    event.stamp = 0;
    item.events = {event};
    const PartDating part = dateItem(item, demoRegister()).front();
    CHECK(part.evidence.size() == 1);  // once, not twice
    CHECK(probabilityIn(part.dating, 1943) < made);
    CHECK(between(part.dating, 1940, 1943) > 0.8);
}

TEST_CASE("What says nothing is told as such", "[models][dating]")
{
    DatedItem item = itemOf({"SIZE 2"}, "belt-1937",
                            {{"end-tab", FeatureSeen::CannotBeSeen},
                             {"no-such", present},
                             {"green-thread", FeatureSeen::Absent}});
    const PartDating part = dateItem(item, demoRegister()).front();
    std::string silent;
    for (const std::string& one : part.silent)
        silent += one + "\n";
    CHECK_THAT(silent, Contains("Metal end tab: it cannot be seen"));
    CHECK_THAT(silent, Contains("no-such: the register has no such feature"));
    CHECK_THAT(silent, Contains("only one maker has it"));
    CHECK_THAT(silent, Contains("no date was read on it"));
    CHECK_THROWS_AS(dateItem(itemOf({}, "no-type"), demoRegister()), std::invalid_argument);
}

TEST_CASE("That a detail of other item types is absent dates nothing", "[models][dating]")
{
    const DatedItem belt = itemOf({}, "belt-1937", {{"turn-stud", FeatureSeen::Absent}});
    const PartDating part = dateItem(belt, demoRegister()).front();
    CHECK(part.evidence.size() == 1);  // the type
    REQUIRE(part.silent.size() == 1);
    CHECK(part.silent[0] == "Turning stud: other item types have it, its absence dates nothing");
    CHECK(
        dateItem(itemOf({}, "lamp-pouch", belt.features), demoRegister()).front().evidence.size() ==
        2);
    CHECK(dateItem(itemOf({}, "", belt.features), demoRegister()).front().evidence.size() == 1);
}

TEST_CASE("A part tells the makers that it was dated with", "[models][dating]")
{
    const auto makers = [](const DatedItem& item) {
        return dateItem(item, demoRegister()).front().makers;
    };
    CHECK(makers(itemOf({"1940"}, "belt-1937")).empty());
    DatedItem item = itemOf({"HESPERLOW & PRUDDERN / 1940"});
    REQUIRE_FALSE(makers(item).empty());
    CHECK(makers(item).front().maker_id == "hesperlow");
    item.makers = {{"hewlaby", "", Certainty::Certain}};
    REQUIRE(makers(item).size() == 1);
    CHECK(makers(item).front().maker_id == "hewlaby");
}

TEST_CASE("Makers that were concluded go before the letters", "[models][dating]")
{
    DatedItem item = itemOf({"194[.]"});
    item.makers = {{"holvane", "", Certainty::Certain}};  // 1936 to 1943
    CHECK(between(dated(item), 1940, 1943) > 0.85);
    item.makers[0].certainty = Certainty::Possible;
    const double possible = between(dated(item), 1940, 1943);
    CHECK(possible < between(dated(itemOf({"194[.]"})), 1940, 1949));
    item.makers.push_back({"mestrelby", "", Certainty::Probable});  // 1939 to 1956
    CHECK(between(dated(item), 1940, 1943) < possible);
}

TEST_CASE("A feature's own years can be left out", "[models][dating]")
{
    const DatedItem item = itemOf({"193[.]"}, "", {{"end-tab", present}});
    DateItemOptions options;
    options.without_feature = "end-tab";
    const PartDating with = dateItem(item, demoRegister()).front();
    const PartDating without = dateItem(item, demoRegister(), options).front();
    CHECK(with.evidence.size() == without.evidence.size() + 1);
    CHECK(without.dating.edtf == "193X");
    CHECK(with.dating.edtf != "193X");
}

TEST_CASE("Years beyond the register are not lost", "[models][dating]")
{
    CHECK(dated(itemOf({"1987"})).edtf == "1987");
    DatedItem item;
    ItemEvent event;
    event.edtf = "1812";
    item.events = {event};
    CHECK(dated(item).edtf == "1812");
}

TEST_CASE("What moved a dating is told in words and numbers", "[models][dating]")
{
    const PartDating part =
        dateItem(itemOf({"194[.]"}, "belt-1937", {{"end-tab", present}}), demoRegister()).front();
    REQUIRE(part.evidence.size() == 3);
    const EvidenceWeight& mark = part.dating.weights[0];
    const EvidenceWeight& type = part.dating.weights[1];
    CHECK(mark.bits > 0.3);
    CHECK_THAT(mark.words, Contains("rises from") && Contains("falls from"));
    CHECK(type.moved < 0.02);
    CHECK(type.words == "hardly changes anything");
    CHECK_THAT(datingInWords(part.dating), Contains("1940 to 194") && Contains("likeliest 194"));
    CHECK(percentInWords(0.0001) == "under 1 %");
    CHECK(percentInWords(0.9999) == "over 99 %");
    CHECK(misreadInWords(1948, 1943) == "the 8 may be a 3 (1943 read as 1948)");
}
