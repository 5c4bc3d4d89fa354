#include "models/exchange/items_csv.h"

#include <vector>

#include "models/archive/record_names.h"
#include "models/archive/standing.h"
#include "models/typed_notation.h"

namespace models {

namespace {

std::string joinedBy(const char* between, const std::vector<std::string>& values)
{
    std::string text;
    for (std::size_t i = 0; i < values.size(); ++i) {
        if (i > 0)
            text += between;
        text += values[i];
    }
    return text;
}

std::string row(std::vector<std::string> fields)
{
    for (std::string& field : fields)
        field = csvField(field);
    return joinedBy(",", fields) + "\r\n";
}

std::string joined(const std::vector<std::string>& values)
{
    return joinedBy(" | ", values);
}

std::vector<std::string> readingsOf(const ItemRecord& item)
{
    std::vector<std::string> readings;
    for (const StampRecord& stamp : item.stamps)
        for (const ReadingRecord& record : standingReadings(stamp))
            readings.push_back(record.reading.reader + ": " + writeTyped(record.reading.lines));
    return readings;
}

std::vector<std::string> photosOf(const ItemRecord& item)
{
    std::vector<std::string> photos;
    for (const PhotoRecord& photo : item.photos)
        photos.push_back(photo.original_name + " " + photo.sha256);
    return photos;
}

std::vector<std::string> datesOf(const ItemRecord& item)
{
    std::vector<std::string> dates;
    for (const DatedEventRecord& event : item.dated_events)
        dates.push_back(std::string(nameOf(event.kind)) + " " + event.printed + " " + event.edtf);
    return dates;
}

std::string described(const AttributionRecord& attribution)
{
    return attribution.maker_name + " " + attribution.date_edtf + " " +
           nameOf(attribution.certainty);
}

}  // namespace

std::string csvField(const std::string& text)
{
    constexpr const char* formula_starts = "=+-@\t\r'";
    const bool guarded =
        !text.empty() && std::string(formula_starts).find(text.front()) != std::string::npos;
    const bool quoted = text.find_first_of(",\"\r\n") != std::string::npos;
    std::string field = guarded ? "'" : "";
    for (const char character : text) {
        if (character == '"')
            field += '"';
        field += character;
    }
    return quoted ? '"' + field + '"' : field;
}

std::string itemsCsvHeader()
{
    return row({"id",          "accession_number",
                "type_id",     "owner",
                "condition",   "place_found",
                "notes",       "maker_id",
                "maker_name",  "mark",
                "date_edtf",   "certainty",
                "reasons",     "other_attributions",
                "readings",    "dated_events",
                "stamps",      "photos",
                "recorded_by", "recorded_at"});
}

std::string itemCsvRow(const ItemRecord& item)
{
    std::vector<AttributionRecord> standing = standingAttributions(item);
    AttributionRecord latest;
    std::string certainty;
    if (!standing.empty()) {
        latest = standing.back();
        certainty = nameOf(latest.certainty);
        standing.pop_back();
    }
    std::vector<std::string> rivals;
    for (const AttributionRecord& rival : standing)
        rivals.push_back(described(rival));
    return row({item.id,
                item.accession_number,
                item.type_id,
                item.owner,
                item.condition,
                item.place_found,
                item.notes,
                latest.maker_id,
                latest.maker_name,
                latest.mark,
                latest.date_edtf,
                certainty,
                latest.reasons,
                joined(rivals),
                joined(readingsOf(item)),
                joined(datesOf(item)),
                std::to_string(item.stamps.size()),
                joined(photosOf(item)),
                item.recorded_by,
                item.recorded_at});
}

}  // namespace models
