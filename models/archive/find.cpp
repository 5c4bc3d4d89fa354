#include <algorithm>
#include <map>
#include <set>
#include <utility>
#include <variant>

#include "models/archive/connection.h"
#include "models/archive/stored_readings.h"
#include "models/archive/word_match.h"
#include "models/date_mark.h"
#include "models/edtf_set.h"
#include "models/leiden.h"
#include "models/typed_notation.h"

namespace models {

namespace {

using sql::Row;

// What of one item a query looks at, and what its line of the answer shows.
struct Findable {
    std::vector<SearchText> texts;
    std::vector<std::string> makers;  // ids and names, attributed
    std::vector<std::string> dates;   // EDTF
    std::vector<Line> lines;          // of the latest readings
    std::string maker_name, date_edtf;
    std::optional<std::string> type_id;  // as corrected last
};

using Findables = std::map<std::string, Findable>;  // by item id

void addTexts(Findable& findable, const Row& row, const std::vector<std::string>& columns)
{
    for (const std::string& column : columns) {
        const std::string text = row.text(column);
        if (!text.empty())
            findable.texts.push_back(searchText(text));
    }
}

// Rows that another one of the same table corrects or replaces.
std::set<std::string> superseded(const std::vector<Row>& rows)
{
    std::set<std::string> ids;
    for (const Row& row : rows)
        ids.insert(row.text("supersedes"));
    return ids;
}

// The typed text is quick to read and says what finding needs; a reading that it cannot hold (the
// same letter twice among a cell's) is taken from its cells.
std::vector<Line> findableLines(const sql::Database& database, const Row& reading)
{
    ParsedNotation typed = parseTyped(reading.text("typed"));
    return typed.fault ? storedLines(database, reading) : std::move(typed.lines);
}

void addReadings(const sql::Database& database,
                 const std::map<std::string, std::string>& item_of_stamp, Findables& findables)
{
    const std::vector<Row> rows = database.rows("reading", "ORDER BY stamp_id, ordinal");
    const std::set<std::string> corrected = superseded(rows);
    std::map<std::string, std::vector<Line>> latest;  // by stamp
    for (const Row& row : rows) {
        const std::string stamp_id = row.text("stamp_id");
        const auto item = item_of_stamp.find(stamp_id);
        if (item == item_of_stamp.end())
            row.refuse("stamp_id");
        const std::vector<Line> lines = findableLines(database, row);
        for (const Line& line : lines)
            findables[item->second].texts.push_back(searchText(line));
        if (!corrected.contains(row.text("id")))
            latest[stamp_id] = lines;
    }
    for (const auto& [stamp_id, lines] : latest) {
        std::vector<Line>& shown = findables[item_of_stamp.at(stamp_id)].lines;
        shown.insert(shown.end(), lines.begin(), lines.end());
    }
}

void addStamps(const sql::Database& database, Findables& findables)
{
    std::map<std::string, std::string> item_of_stamp;
    for (const Row& row : database.rows("stamp")) {
        item_of_stamp[row.text("id")] = row.text("item_id");
        addTexts(findables[row.text("item_id")], row, {"place", "ink_colour", "frame"});
    }
    addReadings(database, item_of_stamp, findables);
}

void addAttributions(const sql::Database& database, Findables& findables)
{
    const std::vector<Row> rows = database.rows("attribution", "ORDER BY item_id, ordinal");
    const std::set<std::string> replaced = superseded(rows);
    for (const Row& row : rows) {
        if (replaced.contains(row.text("id")))
            continue;
        Findable& findable = findables[row.text("item_id")];
        addTexts(findable, row, {"maker_id", "maker_name", "mark", "date_edtf", "reasons"});
        findable.makers.push_back(row.text("maker_id"));
        findable.makers.push_back(row.text("maker_name"));
        findable.dates.push_back(row.text("date_edtf"));
        findable.maker_name = row.text("maker_name");
        findable.date_edtf = row.text("date_edtf");
    }
}

void addFacts(const sql::Database& database, Findables& findables)
{
    for (const Row& row : database.rows("dated_event")) {
        Findable& findable = findables[row.text("item_id")];
        addTexts(findable, row, {"printed", "edtf"});
        findable.dates.push_back(row.text("edtf"));
    }
    for (const Row& row : database.rows("feature_seen"))
        addTexts(findables[row.text("item_id")], row, {"feature_id", "notes"});
    for (const Row& row : database.rows("measurement"))
        addTexts(findables[row.text("item_id")], row, {"what", "how"});
    for (const Row& row : database.rows("photo"))
        addTexts(findables[row.text("item_id")], row,
                 {"original_name", "photographer", "credit", "permission"});
}

// What holds now is found as well as what held before.
void addCorrections(const sql::Database& database, Findables& findables)
{
    for (const Row& row : database.rows("correction", "ORDER BY item_id, ordinal")) {
        Findable& findable = findables[row.text("item_id")];
        addTexts(findable, row, {"value_now"});
        if (row.text("about") == "item" && row.text("field") == "type_id")
            findable.type_id = row.text("value_now");
    }
}

bool holdsAllWords(const Findable& findable, const std::vector<SearchText>& words)
{
    return std::all_of(words.begin(), words.end(), [&](const SearchText& word) {
        return std::any_of(findable.texts.begin(), findable.texts.end(),
                           [&](const SearchText& text) { return holdsWord(text, word); });
    });
}

bool isByMaker(const Findable& findable, const std::string& maker)
{
    const SearchText wanted = searchText(maker);
    return maker.empty() || std::any_of(findable.makers.begin(), findable.makers.end(),
                                        [&](const std::string& name) {
                                            return holdsWord(searchText(name), wanted);
                                        });
}

constexpr double likely_date = 0.1;  // a size such as 38 is hardly ever a year: less than this

bool canBeReadAsYear(const std::vector<Line>& lines, std::optional<int> from, std::optional<int> to)
{
    const auto within = [&](int year) { return !(from && year < *from) && !(to && year > *to); };
    const auto means = [&](const DateMeaning& meaning) {
        return meaning.probability >= likely_date &&
               std::any_of(meaning.years.begin(), meaning.years.end(), within);
    };
    return std::any_of(lines.begin(), lines.end(), [&](const Line& line) {
        const std::vector<DateMeaning> meanings = readDates(line);
        return std::any_of(meanings.begin(), meanings.end(), means);
    });
}

bool fallsWithin(const Findable& findable, std::optional<int> from, std::optional<int> to)
{
    if (!from && !to)
        return true;
    const bool dated = std::any_of(findable.dates.begin(), findable.dates.end(),
                                   [](const std::string& edtf) { return !edtf.empty(); });
    if (!dated)  // what a person concluded goes before what can be read
        return canBeReadAsYear(findable.lines, from, to);
    const DaySet wanted = {{{from ? CalendarDay{*from, 1, 1} : no_first_day,
                             to ? CalendarDay{*to, 12, 31} : no_last_day}}};
    return std::any_of(findable.dates.begin(), findable.dates.end(), [&](const std::string& text) {
        const auto parsed = parseEdtf(text);
        const Edtf* date = std::get_if<Edtf>(&parsed);
        return date && !intersectionOf(setOf(*date), wanted).empty();
    });
}

FoundItem foundItem(const Row& row, const Findable& findable)
{
    FoundItem found;
    found.id = row.text("id");
    found.accession_number = row.text("accession_number");
    found.type_id = findable.type_id.value_or(row.text("type_id"));
    found.recorded_at = row.text("recorded_at");
    found.maker_name = findable.maker_name;
    found.date_edtf = findable.date_edtf;
    for (const Line& line : findable.lines) {
        found.text += (found.text.empty() ? "" : " / ") + plainText(line);
        found.leiden += (found.leiden.empty() ? "" : " / ") + toLeiden(line);
    }
    return found;
}

}  // namespace

std::vector<FoundItem> Archive::find(const FindQuery& query) const
{
    const std::vector<SearchText> words = searchWords(query.words);
    sql::Database& database = connection_->database;
    sql::Transaction transaction(database, sql::Transaction::Kind::Reading);
    Findables findables;
    addStamps(database, findables);
    addAttributions(database, findables);
    addFacts(database, findables);
    addCorrections(database, findables);

    std::vector<FoundItem> found;
    for (const Row& row : database.rows("item", "ORDER BY recorded_at DESC, ordinal DESC")) {
        Findable& findable = findables[row.text("id")];
        addTexts(findable, row,
                 {"accession_number", "type_id", "owner", "condition", "place_found", "notes"});
        if (isByMaker(findable, query.maker) &&
            fallsWithin(findable, query.year_from, query.year_to) && holdsAllWords(findable, words))
            found.push_back(foundItem(row, findable));
    }
    return found;
}

}  // namespace models
