#include "tests/archive/sample_records.h"

#include <stdexcept>

#include "models/typed_notation.h"

namespace support {

using namespace models;

namespace {

// Of the bytes "first photo" and "second photo" (sha256sum of GNU coreutils).
constexpr const char* first_sha256 =
    "0fea0367afa2962538b3f8d456ed3466dff2e08c09bd4fa23e8ffea65909d08b";
constexpr const char* second_sha256 =
    "56465c77b321069f39577693ce1d8d2fa8a95021f884ff90b4b35c603588aeb8";

ReadingRecord recordOf(const Reading& reading)
{
    ReadingRecord record;
    record.reading = reading;
    return record;
}

Cell cell(CellState state, std::vector<Alternative> alternatives)
{
    Cell made;
    made.state = state;
    made.alternatives = std::move(alternatives);
    made.left_px = 1.0 / 3.0;
    made.right_px = 17.25;
    made.by = "tesseract";
    return made;
}

Line lineOfEveryState()
{
    Line line;
    line.cells = {cell(CellState::Clear, {{"Ö", 0.1 + 0.2}, {"O", 0.05}}),
                  cell(CellState::Doubtful, {{"8", 0.5}, {"3", 0.25}, {"B", 1e-9}}),
                  cell(CellState::Traces, {}), cell(CellState::Lost, {}),
                  cell(CellState::Restored, {{"R", 0.9}})};
    line.cells[2].least = 0;
    line.cells[2].most = 4;
    line.cells[3].most = std::nullopt;
    line.cells[0].erased = line.cells[1].struck_over = line.cells[1].seen_earlier = true;
    line.cells[4].doubted = true;
    line.left_end = LineEnd::Complete;
    line.right_end = LineEnd::CutOff;
    line.box_px = {1.5, 2.25, 300.125, 44};
    line.spans = {{0, 3, LineRole::Maker, 0.75}, {3, 5, LineRole::Date, 1}};
    line.certainty = 0.125;
    return line;
}

PhotoRecord photo(const std::filesystem::path& file, const std::string& sha256)
{
    PhotoRecord made;
    made.file = file;
    made.sha256 = sha256;
    made.original_name = file.filename().string();
    made.width_px = 840;
    made.height_px = 640;
    made.taken_at = "1998-05-01T12:30:00";
    made.camera = "Made-up camera";
    made.lens = "50 mm";
    made.photographer = "Ines Körber";
    made.credit = "Saltmere Harbour Trust";
    made.permission = "may be shown";
    return made;
}

ViewRecord view(const std::string& sha256, double x)
{
    ViewRecord made;
    made.photo_sha256 = sha256;
    made.outline_px = {x, 2.5, x + 100, 2.5, x + 100, 40.1, x, 1.0 / 7.0};
    made.up_deg = 347.125;
    made.light_set = "raking";
    made.readings = {recordOf(fullReading())};
    return made;
}

std::vector<StampRecord> twoStamps()
{
    StampRecord body;
    body.part = StampPart::Body;
    body.place = "inside, 4 cm from the buckle";
    body.method = StampMethod::Ink;
    body.ink_colour = "violet";
    body.frame = "oval";
    body.width_mm = 41.5;
    body.height_mm = 12;
    body.views = {view(first_sha256, 10), view(second_sha256, 20)};
    StampRecord fitting;
    fitting.part = StampPart::Fitting;
    fitting.method = StampMethod::Impressed;
    fitting.later_added = true;
    fitting.views = {view(second_sha256, 400.0625)};
    fitting.readings = {recordOf(typedReading("Ines Körber", "W.P. [...] / 19[.]1"))};
    return {body, fitting};
}

AttributionRecord attribution()
{
    AttributionRecord made;
    made.maker_id = "harskell-sons";
    made.maker_name = "Harskell & Sons Ltd";
    made.mark = "HARSKELL & SONS LTD";
    made.register_sha256 = std::string(64, 'a');
    made.date_edtf = "[1940,1941]";
    made.certainty = Certainty::Probable;
    made.reasons = "the foot of the 4 is there; 'Sons' can be read — größer als sonst";
    made.engine_reasons = "the mark fits\nworked 1934 to 1951";
    return made;
}

void blank(std::vector<ReadingRecord>& readings)
{
    for (ReadingRecord& reading : readings)
        reading.id = reading.recorded_by = reading.recorded_at = {};
}

void blank(StampRecord& stamp)
{
    stamp.id = stamp.recorded_by = stamp.recorded_at = {};
    blank(stamp.readings);
    for (ViewRecord& one : stamp.views) {
        one.id = one.recorded_by = one.recorded_at = {};
        blank(one.readings);
    }
}

}  // namespace

Reading fullReading()
{
    Reading reading;
    reading.reader = "tesseract 5.3 eng";
    reading.lines = {lineOfEveryState(), typedReading({}, "24 JAN|").lines.front()};
    reading.basis = Basis::Photo;
    reading.read_at = "2024-02-29T23:59:59Z";
    reading.candidates_were_shown = false;
    reading.layer = "contrast";
    reading.options = "psm 7";
    reading.weights_sha256 = std::string(64, 'f');
    return reading;
}

Reading typedReading(const std::string& person, const std::string& typed)
{
    const ParsedNotation parsed = parseTyped(typed);
    if (parsed.fault)
        throw std::invalid_argument(parsed.fault->message());
    Reading reading;
    reading.reader = person;
    reading.lines = parsed.lines;
    reading.basis = Basis::ObjectInHand;
    return reading;
}

ItemRecord fullItem(const TemporaryFolder& folder)
{
    ItemRecord item;
    item.type_id = "belt-1937";
    item.accession_number = "SHT 1956/12 β";
    item.owner = "Saltmere Harbour Trust";
    item.condition = "worn; one keeper missing";
    item.place_found = "Ormscarth, sail loft";
    item.notes = "'quoted', \"twice\"; DROP TABLE item; -- 🌊";
    item.photos = {photo(folder.write("erste Aufnahme.JPEG", "first photo"), first_sha256),
                   photo(folder.write("second.png", "second photo"), second_sha256)};
    item.stamps = twoStamps();
    item.attributions = {attribution()};
    item.dated_events.resize(1);
    item.dated_events[0].kind = EventKind::Inspected;
    item.dated_events[0].printed = "3/40";
    item.dated_events[0].edtf = "1940-03";
    item.dated_events[0].first_day = "1940-03-01";
    item.dated_events[0].last_day = "1940-03-31";
    item.dated_events[0].bound = DateBound::NotAfter;
    item.features.resize(1);
    item.features[0].feature_id = "steel-buckle";
    item.features[0].seen = FeatureSeen::AlteredLater;
    item.features[0].notes = "blackened again";
    item.measurements.resize(1);
    item.measurements[0].what = "width";
    item.measurements[0].unit = "mm";
    item.measurements[0].how = "calliper";
    item.measurements[0].value = 57.15;
    return item;
}

ItemRecord itemReading(const std::string& typed)
{
    StampRecord stamp;
    stamp.readings = {recordOf(typedReading("Ines Körber", typed))};
    ItemRecord item;
    item.stamps = {stamp};
    return item;
}

ItemRecord withoutFilledIn(ItemRecord item)
{
    item.id = item.recorded_by = item.recorded_at = {};
    for (PhotoRecord& one : item.photos) {
        one.id = one.recorded_by = one.recorded_at = {};
        one.file.clear();
    }
    for (StampRecord& one : item.stamps)
        blank(one);
    for (AttributionRecord& one : item.attributions)
        one.id = one.recorded_by = one.recorded_at = {};
    for (DatedEventRecord& one : item.dated_events)
        one.id = one.recorded_by = one.recorded_at = {};
    for (FeatureSeenRecord& one : item.features)
        one.id = one.recorded_by = one.recorded_at = {};
    for (MeasurementRecord& one : item.measurements)
        one.id = one.recorded_by = one.recorded_at = {};
    return item;
}

}  // namespace support
