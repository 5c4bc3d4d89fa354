#include "app/cli/record_text.h"

#include <algorithm>

#include "app/cli/read_text.h"
#include "app/flow/item_facts.h"
#include "models/archive/record_names.h"
#include "models/archive/standing.h"

namespace cli {

namespace {

void printFact(std::ostream& out, const char* name, const std::string& value)
{
    if (!value.empty())
        out << "  " << name << ": " << value << "\n";
}

void printReadings(std::ostream& out, const std::vector<models::ReadingRecord>& readings,
                   const std::vector<models::ReadingRecord>& standing)
{
    for (const models::ReadingRecord& record : readings) {
        const bool stands = std::find(standing.begin(), standing.end(), record) != standing.end();
        out << "    read by " << record.reading.reader << ", " << record.recorded_at
            << (stands ? "" : ", corrected since") << "\n";
        for (const models::Line& line : record.reading.lines)
            out << "      " << lineInWords(line) << "\n";
    }
}

void printStamp(std::ostream& out, const models::StampRecord& stamp, std::size_t number)
{
    out << "  stamp " << number;
    if (stamp.part != models::StampPart::Unknown)
        out << " on the " << models::nameOf(stamp.part);
    if (!stamp.place.empty())
        out << ", " << stamp.place;
    if (stamp.method != models::StampMethod::Unknown)
        out << ", " << models::nameOf(stamp.method);
    out << (stamp.later_added ? ", looks later added" : "") << "\n";
    const std::vector<models::ReadingRecord> standing = models::standingReadings(stamp);
    for (const models::ViewRecord& view : stamp.views)
        printReadings(out, view.readings, standing);
    printReadings(out, stamp.readings, standing);
}

void printAttributions(std::ostream& out, const models::ItemRecord& item)
{
    const std::vector<models::AttributionRecord> standing = models::standingAttributions(item);
    for (const models::AttributionRecord& attribution : item.attributions) {
        const bool stands =
            std::find(standing.begin(), standing.end(), attribution) != standing.end();
        out << "  " << models::nameOf(attribution.certainty) << ": "
            << (attribution.maker_name.empty() ? "no maker" : attribution.maker_name) << ", "
            << (attribution.date_edtf.empty() ? "undated" : attribution.date_edtf) << " ("
            << attribution.recorded_by << ", " << attribution.recorded_at
            << (stands ? ")" : ", replaced since)") << "\n";
        if (!attribution.reasons.empty())
            out << "    because " << attribution.reasons << "\n";
    }
}

const char* takenBack(const models::ItemRecord& item, const std::string& id)
{
    for (const models::CorrectionRecord& correction : item.corrections)
        if (correction.field == "withdrawn" && correction.about_id == id)
            return ", taken back since";
    return "";
}

const char* inWords(models::FeatureSeen seen)
{
    switch (seen) {
        case models::FeatureSeen::CannotBeSeen:
            return "hidden, cannot be seen";
        case models::FeatureSeen::AlteredLater:
            return "altered later";
        case models::FeatureSeen::Present:
        case models::FeatureSeen::Absent:
            break;
    }
    return models::nameOf(seen);
}

void printFacts(std::ostream& out, const models::ItemRecord& item)
{
    for (const models::DatedEventRecord& event : item.dated_events)
        out << "  " << models::nameOf(event.kind) << ": " << event.printed << " (" << event.edtf
            << ")" << takenBack(item, event.id) << "\n";
    const std::vector<models::FeatureSeenRecord> standing = models::standingFeatures(item);
    for (const models::FeatureSeenRecord& feature : item.features) {
        const bool stands = std::find(standing.begin(), standing.end(), feature) != standing.end();
        out << "  feature " << feature.feature_id << ": " << inWords(feature.seen)
            << (stands ? "" : ", corrected since") << "\n";
    }
    for (const models::MeasurementRecord& measurement : item.measurements)
        out << "  " << measurement.what << ": "
            << flow::lengthInWords(measurement.value, measurement.unit)
            << (measurement.how.empty() ? "" : ", " + measurement.how)
            << takenBack(item, measurement.id) << "\n";
    for (const models::CorrectionRecord& correction : item.corrections) {
        out << "  corrected " << correction.recorded_at << " by " << correction.recorded_by << ": ";
        if (correction.field == "withdrawn")
            out << "taken back, " << correction.value << "\n";
        else
            out << correction.about << " " << correction.field << " was '" << correction.before
                << "', is '" << correction.value << "'\n";
    }
}

}  // namespace

void printRecord(std::ostream& out, const models::ItemRecord& item)
{
    out << item.id << "\n";
    printFact(out, "accession number", item.accession_number);
    printFact(out, "type", item.type_id);
    printFact(out, "owner", item.owner);
    printFact(out, "condition", item.condition);
    printFact(out, "place found", item.place_found);
    printFact(out, "notes", item.notes);
    printFact(out, "recorded", item.recorded_at + " by " + item.recorded_by);
    for (const models::PhotoRecord& photo : item.photos)
        out << "  photograph " << photo.original_name << ", " << photo.width_px << " x "
            << photo.height_px << " px, kept as " << photo.file.string() << "\n";
    for (std::size_t i = 0; i < item.stamps.size(); ++i)
        printStamp(out, item.stamps[i], i + 1);
    printAttributions(out, item);
    printFacts(out, item);
}

}  // namespace cli
