#include <stdexcept>

#include <catch2/catch.hpp>

#include "models/archive/archive.h"
#include "tests/archive/sample_records.h"

using namespace models;
using support::TemporaryFolder;

namespace {

using Numbers = std::vector<std::string>;

// An archive whose clock goes on by a day with every record.
class Filed {
public:
    Filed()
        : archive_(Archive::open(folder_.path(), "Ole", [this] {
              return "2024-03-" + std::to_string(10 + day_++) + "T08:00:00Z";
          }))
    {
    }

    std::string add(const std::string& number, ItemRecord item)
    {
        item.accession_number = number;
        return archive_.addItem(item).id;
    }

    Numbers found(const FindQuery& query) const
    {
        Numbers numbers;
        for (const FoundItem& item : archive_.find(query))
            numbers.push_back(item.accession_number);
        return numbers;
    }

    Archive& archive() { return archive_; }
    const TemporaryFolder& folder() const { return folder_; }

private:
    TemporaryFolder folder_;
    int day_ = 0;
    Archive archive_;
};

FindQuery words(const std::string& text)
{
    FindQuery query;
    query.words = text;
    return query;
}

FindQuery years(std::optional<int> from, std::optional<int> to)
{
    FindQuery query;
    query.year_from = from;
    query.year_to = to;
    return query;
}

ItemRecord dated(const std::string& edtf)
{
    ItemRecord item;
    item.attributions.resize(1);
    item.attributions[0].date_edtf = edtf;
    return item;
}

}  // namespace

TEST_CASE("Words are looked for in every text of a record", "[archive][find]")
{
    Filed filed;
    filed.add("other", support::itemReading("OTHER"));
    filed.add("SHT 12", support::fullItem(filed.folder()));
    for (const std::string word :
         {"SHT",    "belt-1937", "keeper",  "loft",         "twice",         "Aufnahme",
          "Körber", "violet",    "oval",    "buckle",       "harskell-sons", "Sons",
          "größer", "3/40",      "1940-03", "steel-buckle", "blackened",     "calliper",
          "JAN",    "W.P.",      "19[.]1",  "1931"}) {
        CAPTURE(word);
        CHECK(filed.found(words(word)) == Numbers{"SHT 12"});
    }
    CHECK(filed.found(words("loft OTHER")).empty());
    CHECK(filed.found(words("walrus")).empty());
    CHECK(filed.found({}) == Numbers{"SHT 12", "other"});  // newest first
    CHECK_THROWS_AS(filed.found(words("(A")), std::invalid_argument);
}

TEST_CASE("A reading that the typed notation cannot hold is found by its cells", "[archive][find]")
{
    Filed filed;
    ItemRecord item = support::itemReading("A / [...]LASE");
    Cell& lost = item.stamps[0].readings[0].reading.lines[1].cells[0];
    lost.alternatives = {{"X", 0.2}, {"X", 0.1}};  // the same letter twice
    filed.add("1", item);
    CHECK(filed.found(words("[- - -]LASE")) == Numbers{"1"});
}

TEST_CASE("Years are compared by what a date allows", "[archive][find]")
{
    Filed filed;
    for (const char* edtf : {"1941", "194X", "[1930,1946]", "1938/1940", "../1935", "1950/..",
                             "1940-03?", "", "about then"})
        filed.add(edtf[0] ? edtf : "undated", dated(edtf));
    CHECK(filed.found(years(1941, 1941)) == Numbers{"194X", "1941"});  // not 1930 or 1946
    CHECK(filed.found(years(1940, 1940)) == Numbers{"1940-03?", "1938/1940", "194X"});
    CHECK(filed.found(years(1946, 1949)) == Numbers{"[1930,1946]", "194X"});
    CHECK(filed.found(years(std::nullopt, 1900)) == Numbers{"../1935"});
    CHECK(filed.found(years(1960, std::nullopt)) == Numbers{"1950/.."});
    CHECK(filed.found(years(std::nullopt, std::nullopt)).size() == 9);

    ItemRecord inspected;
    inspected.dated_events.resize(1);
    inspected.dated_events[0].edtf = "1960-05";
    filed.add("inspected", inspected);
    CHECK(filed.found(years(1960, 1960)) == Numbers{"inspected", "1950/.."});
}

TEST_CASE("What has been replaced no longer answers, what stands is shown", "[archive][find]")
{
    Filed filed;
    ItemRecord item = support::itemReading("HALL / 19[.]1");
    AttributionRecord first, second;
    first.maker_name = "Tarrow";
    first.date_edtf = "1951";
    second.maker_name = "Polglase Brothers";
    second.maker_id = "polglase";
    second.date_edtf = "1941";
    item.attributions = {first};
    const std::string id = filed.add("1", item);
    const ItemRecord stored = *filed.archive().item(id);
    second.supersedes = stored.attributions[0].id;
    filed.archive().addAttribution(id, second);

    FindQuery query;
    query.maker = "tarrow";
    CHECK(filed.found(query).empty());
    query.maker = "GLASE";
    CHECK(filed.found(query) == Numbers{"1"});
    CHECK(filed.found(years(1951, 1951)).empty());

    const FoundItem found = filed.archive().find({}).at(0);
    CHECK(found.id == id);
    CHECK(found.maker_name == "Polglase Brothers");
    CHECK(found.date_edtf == "1941");
    CHECK(found.text == "HALL / 19\uFFFD1");
    CHECK(found.leiden == "HALL / 19[.]1");
    CHECK(found.recorded_at == stored.recorded_at);
}

TEST_CASE("A year that was only read is found, unread digits included", "[archive][find]")
{
    Filed filed;
    filed.add("whole", support::itemReading("HEWLABY / 1938"));
    filed.add("unread", support::itemReading("HEWLABY / 194[.]"));
    filed.add("none", support::itemReading("HEWLABY / SIZE"));
    CHECK(filed.found(years(1938, 1938)) == Numbers{"whole"});
    CHECK(filed.found(years(1945, 1947)) == Numbers{"unread"});
    CHECK(filed.found(years(1951, std::nullopt)).empty());
}

TEST_CASE("Of several readings of a stamp the latest that stands is shown", "[archive][find]")
{
    Filed filed;
    const std::string id = filed.add("1", support::fullItem(filed.folder()));
    const ViewRecord view = filed.archive().item(id)->stamps[0].views[1];
    filed.archive().addReading(view.id, support::typedReading("Ole", "LATEST"),
                               view.readings[0].id);
    // The second stamp's own reading came after that of its view.
    CHECK_THAT(filed.archive().find({}).at(0).text,
               Catch::Contains("LATEST") && Catch::Contains("W.P."));
}
