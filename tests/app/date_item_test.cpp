// What of a filed record speaks of dates.
#include "app/flow/date_item.h"

#include <catch2/catch.hpp>

#include "models/typed_notation.h"

using namespace models;

namespace {

ReadingRecord readingBy(const std::string& reader, const std::string& typed,
                        const std::string& id = "", const std::string& supersedes = "")
{
    ReadingRecord record;
    record.id = id;
    record.supersedes = supersedes;
    record.reading.reader = reader;
    record.reading.lines = parseTyped(typed).lines;
    for (Line& line : record.reading.lines)
        for (Cell& cell : line.cells)
            cell.by = reader;
    record.recorded_at = "2024-03-01T08:00:00Z";
    return record;
}

ViewRecord viewOf(const std::vector<ReadingRecord>& readings)
{
    ViewRecord view;
    view.readings = readings;
    return view;
}

std::string textOf(const DatedItem& item, std::size_t stamp)
{
    std::string text;
    for (const Line& line : item.stamps.at(stamp).lines)
        text += (text.empty() ? "" : " / ") + plainText(line);
    return text;
}

}  // namespace

TEST_CASE("A stamp in three photographs counts once", "[app][date]")
{
    ItemRecord record;
    record.stamps.resize(1);
    record.stamps[0].views = {viewOf({readingBy("line-reader", "19[.]0")}),
                              viewOf({readingBy("line-reader", "1940")}),
                              viewOf({readingBy("line-reader", "1[..]0")})};
    const DatedItem item = flow::datedItem(record);
    REQUIRE(item.stamps.size() == 1);
    CHECK(textOf(item, 0) == "1940");  // of the view that is surest
    CHECK(item.stamps[0].name == "stamp 1");
}

TEST_CASE("What a person read last goes before engines and before what it corrects", "[app][date]")
{
    ItemRecord record;
    record.stamps.resize(1);
    record.stamps[0].views = {viewOf({readingBy("line-reader", "1948")})};
    record.stamps[0].readings = {readingBy("Ines", "1943", "a"),
                                 readingBy("Ines", "194[.]", "b", "a")};
    CHECK(textOf(flow::datedItem(record), 0) == "194\xEF\xBF\xBD");
}

TEST_CASE("Facts that stand speak, conclusions on the date do not", "[app][date]")
{
    ItemRecord record;
    record.stamps.resize(2);
    record.stamps[1].id = "second";
    record.stamps[1].part = StampPart::Fitting;
    record.stamps[1].later_added = true;
    record.dated_events.resize(2);
    record.dated_events[0].id = "wrong";
    record.dated_events[1].edtf = "1943";
    record.dated_events[1].kind = EventKind::Inspected;
    record.dated_events[1].bound = DateBound::NotAfter;
    record.dated_events[1].stamp_id = "second";
    record.corrections.resize(1);
    record.corrections[0].about_id = "wrong";
    record.corrections[0].field = "withdrawn";
    record.features.resize(2);
    record.features[0].feature_id = record.features[1].feature_id = "end-tab";
    record.features[0].seen = FeatureSeen::Present;
    record.features[1].seen = FeatureSeen::AlteredLater;
    record.attributions.resize(2);
    record.attributions[0].date_edtf = "1950";
    record.attributions[1].maker_id = "hewlaby";
    record.attributions[1].certainty = Certainty::Probable;

    const DatedItem item = flow::datedItem(record);
    REQUIRE(item.events.size() == 1);
    CHECK(item.events[0].edtf == "1943");
    CHECK(item.events[0].stamp == 1);
    REQUIRE(item.features.size() == 1);
    CHECK(item.features[0].seen == FeatureSeen::AlteredLater);
    REQUIRE(item.makers.size() == 1);
    CHECK(item.makers[0].maker_id == "hewlaby");
    CHECK(item.stamps[1].part == StampPart::Fitting);
    CHECK(item.stamps[1].later_added);
}

TEST_CASE("An item says of a change only what it shows and where it is dated", "[app][change]")
{
    const MakerRegister known = loadRegister(std::string(WEFTMARK_SOURCE_DIR) + "/models/register");
    const YearRange range = {1932, 1963};
    ItemRecord record;
    record.accession_number = "SHT 1";
    record.stamps.resize(1);
    record.stamps[0].part = StampPart::Body;
    record.stamps[0].readings = {readingBy("Ines", "1940")};
    record.features.resize(1);
    record.features[0].feature_id = "end-tab";
    record.features[0].seen = FeatureSeen::Absent;
    const auto item = flow::changeItem(record, "end-tab", known, range);
    REQUIRE(item);
    CHECK(item->name == "SHT 1");
    CHECK_FALSE(item->has_detail);
    CHECK(item->years.size() == range.size());
    CHECK(item->years.at(1940 - 1932) > 0.9);  // not moved by the feature itself
    CHECK_FALSE(flow::changeItem(record, "steel-buckle", known, range));
    record.features[0].seen = FeatureSeen::CannotBeSeen;
    CHECK_FALSE(flow::changeItem(record, "end-tab", known, range));
    record.features[0].seen = FeatureSeen::Present;
    record.stamps.clear();  // nothing left that dates it
    CHECK_FALSE(flow::changeItem(record, "end-tab", known, range));
}

TEST_CASE("A change is told of the maker that is likelier than not", "[app][change]")
{
    const MakerRegister known = loadRegister(std::string(WEFTMARK_SOURCE_DIR) + "/models/register");
    ItemRecord record;
    record.stamps.resize(1);
    record.stamps[0].readings = {readingBy("Ines", "HESPERLOW & PRUDDERN / 1940")};
    record.features.resize(1);
    record.features[0].feature_id = "end-tab";
    record.features[0].seen = FeatureSeen::Present;
    const auto maker = [&] {
        const auto item = flow::changeItem(record, "end-tab", known, {1932, 1963});
        REQUIRE(item);
        return item->maker_id;
    };
    CHECK(maker() == "hesperlow");  // nobody concluded anything: by the letters
    record.attributions.resize(2);
    record.attributions[0].maker_id = "hewlaby";
    record.attributions[0].certainty = Certainty::Certain;
    record.attributions[1].maker_id = "holvane";
    record.attributions[1].certainty = Certainty::Possible;
    CHECK(maker() == "hewlaby");  // the surer one, not the later
    record.attributions[0].certainty = Certainty::Possible;
    CHECK(maker().empty());  // 0.3 each
    record.attributions.clear();
    record.stamps[0].readings = {readingBy("Ines", "1940")};
    CHECK(maker().empty());
}
