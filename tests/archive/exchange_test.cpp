#include <cmath>
#include <limits>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "models/exchange/item_json.h"
#include "models/exchange/items_csv.h"
#include "models/exchange/reading_json.h"
#include "tests/archive/sample_records.h"

using namespace models;
using Catch::Contains;
using Json = nlohmann::ordered_json;

namespace {

// The fields of CSV text by the grammar of RFC 4180, section 2: rows end with CR LF, a quoted field
// may hold commas, line breaks and quotation marks that stand twice.
std::vector<std::vector<std::string>> parsedCsv(const std::string& text)
{
    std::vector<std::vector<std::string>> rows(1, {""});
    bool quoted = false;
    for (std::size_t i = 0; i < text.size(); ++i) {
        std::string& field = rows.back().back();
        if (quoted && text[i] == '"' && i + 1 < text.size() && text[i + 1] == '"')
            field += text[i++];
        else if (text[i] == '"')
            quoted = !quoted;
        else if (!quoted && text[i] == ',')
            rows.back().emplace_back();
        else if (!quoted && text.compare(i, 2, "\r\n") == 0) {
            rows.push_back({""});
            ++i;
        } else
            field += text[i];
    }
    rows.pop_back();  // behind the last row's end
    return rows;
}

// A field as it was recorded: one leading apostrophe is the guard's.
std::string unguarded(const std::string& field)
{
    return !field.empty() && field.front() == '\'' ? field.substr(1) : field;
}

}  // namespace

TEST_CASE("A reading comes back from its JSON whole", "[exchange][json]")
{
    const Reading reading = support::fullReading();
    CHECK(readingFromJson(Json::parse(readingJson(reading).dump())) == reading);
    CHECK(readingFromJson(readingJson({})) == Reading{});
    CHECK(linesFromJsonText(linesToJsonText(reading.lines)) == reading.lines);
}

TEST_CASE("JSON that is no reading is refused with a reason", "[exchange][json]")
{
    const Json good = readingJson(support::fullReading());
    std::vector<Json> bad = {Json::array(), Json(3), Json::object(), good, good, good, good, good};
    bad[3]["basis"] = "hearsay";
    bad[4]["lines"][0]["cells"][0]["state"] = "gone";
    bad[5]["lines"][0]["cells"][0]["alternatives"] = "A";
    bad[6]["lines"][0].erase("box");
    bad[7]["lines"][0]["left_end"] = 5;
    for (const Json& json : bad) {
        CAPTURE(json.dump());
        CHECK_THROWS_AS(readingFromJson(json), ExchangeError);
    }
    CHECK_THROWS_AS(linesFromJsonText("[{"), ExchangeError);
    CHECK_THROWS_AS(linesFromJsonText("{\"a\": 1}"), ExchangeError);

    Reading unfit = support::fullReading();
    unfit.lines[0].cells[0].alternatives[0].certainty = std::nan("");
    CHECK_THROWS_AS(readingJson(unfit), std::invalid_argument);
}

TEST_CASE("A record's JSON holds every part of it", "[exchange][json]")
{
    const support::TemporaryFolder folder;
    const ItemRecord item = support::fullItem(folder);
    const Json json = Json::parse(itemJson(item).dump());
    CHECK(json.at("accession_number") == item.accession_number);
    CHECK(json.at("notes") == item.notes);
    CHECK(json.at("photos").size() == 2);
    CHECK(json.at("photos").at(0).at("photographer") == "Ines Körber");
    CHECK_FALSE(
        json.at("photos").at(0).contains("file"));  // where it lies here is nobody's concern
    const Json& stamp = json.at("stamps").at(0);
    CHECK(stamp.at("part") == "body");
    CHECK(stamp.at("method") == "ink");
    CHECK(stamp.at("width_mm") == 41.5);
    CHECK(json.at("stamps").at(1).at("width_mm").is_null());
    CHECK(stamp.at("views").at(0).at("outline_px").at(1) == Json::array({110.0, 2.5}));
    CHECK(readingFromJson(stamp.at("views").at(0).at("readings").at(0).at("reading")) ==
          support::fullReading());
    CHECK(json.at("attributions").at(0).at("certainty") == "probable");
    CHECK(json.at("dated_events").at(0).at("bound") == "not_after");
    CHECK(json.at("features").at(0).at("seen") == "altered_later");
    CHECK(json.at("measurements").at(0).at("value") == 57.15);
}

TEST_CASE("CSV follows RFC 4180 and comes back as it was recorded", "[exchange][csv]")
{
    const support::TemporaryFolder folder;
    ItemRecord item = support::fullItem(folder);
    item.notes = "one, \"two\"\r\nthree";
    item.condition = "=HYPERLINK(\"x\")";
    item.owner = "+44";
    item.place_found = "'t Huys";
    const auto rows = parsedCsv(itemsCsvHeader() + itemCsvRow(item));
    REQUIRE(rows.size() == 2);
    REQUIRE(rows[0].size() == rows[1].size());
    const auto field = [&](const std::string& name) {
        const auto column = std::find(rows[0].begin(), rows[0].end(), name);
        REQUIRE(column != rows[0].end());
        return rows[1][static_cast<std::size_t>(column - rows[0].begin())];
    };
    CHECK(field("notes") == item.notes);
    CHECK(field("accession_number") == item.accession_number);
    CHECK(field("maker_name") == "Harskell & Sons Ltd");
    CHECK(field("certainty") == "probable");
    CHECK_THAT(field("readings"), Contains("Ines Körber: W.P. [...] / 19[.]1"));
    CHECK_THAT(field("dated_events"), Contains("inspected 3/40 1940-03"));
    for (const std::string name : {"condition", "owner", "place_found"}) {
        CHECK(field(name).front() == '\'');
        CHECK((unguarded(field(name)) == item.condition || unguarded(field(name)) == item.owner ||
               unguarded(field(name)) == item.place_found));
    }
}

TEST_CASE("Text that a spreadsheet would run is guarded, other text is left", "[exchange][csv]")
{
    CHECK(csvField("=1+1") == "'=1+1");
    CHECK(csvField("+1") == "'+1");
    CHECK(csvField("-1") == "'-1");
    CHECK(csvField("@x") == "'@x");
    CHECK(csvField("\tx") == "'\tx");
    CHECK(csvField("'x") == "''x");
    CHECK(csvField("=a,b") == "\"'=a,b\"");
    CHECK(csvField("3/40") == "3/40");
    CHECK(csvField("a=b") == "a=b");
    CHECK(csvField("") == "");
    CHECK(csvField("say \"so\"") == "\"say \"\"so\"\"\"");
    CHECK(csvField("a\nb") == "\"a\nb\"");
}

TEST_CASE("An item without an id or anything else still makes a whole row", "[exchange][csv]")
{
    const auto rows = parsedCsv(itemsCsvHeader() + itemCsvRow({}));
    REQUIRE(rows.size() == 2);
    CHECK(rows[0].size() == rows[1].size());
}
