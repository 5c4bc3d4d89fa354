#include "app/flow/date_item.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <utility>

#include "models/archive/standing.h"
#include "models/merge_readings.h"

namespace flow {

namespace {

using models::Reading;

// The reading that a person made last, if any did.
const Reading* personsReading(const std::vector<models::ReadingRecord>& standing)
{
    const Reading* last = nullptr;
    std::string read_at;
    for (const models::ReadingRecord& record : standing)
        if (!models::isEngine(record.reading.reader) && record.recorded_at >= read_at) {
            last = &record.reading;
            read_at = record.recorded_at;
        }
    return last;
}

double sureness(const Reading& reading)
{
    double sum = 0;
    for (const models::Line& line : reading.lines)
        sum += models::lineCertainty(line);
    return reading.lines.empty() ? -1 : sum / static_cast<double>(reading.lines.size());
}

bool isAmong(const models::ReadingRecord& record, const std::vector<models::ReadingRecord>& all)
{
    return std::find(all.begin(), all.end(), record) != all.end();
}

// One reading of a stamp, in however many photos it is.
Reading readingOfStamp(const models::StampRecord& stamp)
{
    const std::vector<models::ReadingRecord> standing = models::standingReadings(stamp);
    if (const Reading* persons = personsReading(standing))
        return *persons;
    Reading best;
    for (const models::ViewRecord& view : stamp.views) {
        std::vector<Reading> engines;
        for (const models::ReadingRecord& record : view.readings)
            if (isAmong(record, standing))
                engines.push_back(record.reading);
        Reading joint = models::mergeReadings(engines);
        if (sureness(joint) > sureness(best))
            best = std::move(joint);
    }
    return best;
}

models::ItemStamp itemStamp(const models::StampRecord& record, std::size_t number)
{
    models::ItemStamp stamp;
    stamp.name = "stamp " + std::to_string(number);
    stamp.part = record.part;
    stamp.later_added = record.later_added;
    stamp.lines = readingOfStamp(record).lines;
    return stamp;
}

models::ItemEvent itemEvent(const models::DatedEventRecord& record,
                            const std::vector<models::StampRecord>& stamps)
{
    models::ItemEvent event;
    event.kind = record.kind;
    event.bound = record.bound;
    event.edtf = record.edtf;
    event.printed = record.printed;
    for (std::size_t i = 0; i < stamps.size(); ++i)
        if (!record.stamp_id.empty() && stamps[i].id == record.stamp_id)
            event.stamp = i;
    return event;
}

// The item's years within another range; nothing when little of them lies there, or all alike.
std::optional<std::vector<double>> within(const models::Dating& dating,
                                          const models::YearRange& range)
{
    constexpr double least = 0.5;
    if (dating.edtf.empty())
        return std::nullopt;
    std::vector<double> years;
    for (int year = range.first; year <= range.last; ++year)
        years.push_back(year < dating.range.first || year > dating.range.last
                            ? 0
                            : dating.years[static_cast<std::size_t>(year - dating.range.first)]);
    const double sum = std::accumulate(years.begin(), years.end(), 0.0);
    if (sum < least)
        return std::nullopt;
    for (double& year : years)
        year /= sum;
    return years;
}

// The maker that is likelier than not, by conclusions or else by the letters; empty where there is
// none. Of one maker's several marks the shares count together.
std::string likeliestMaker(const std::vector<models::MakerShare>& shares)
{
    std::map<std::string, double> by_maker;
    for (const models::MakerShare& share : shares)
        by_maker[share.maker_id] += share.probability;
    for (const auto& [maker_id, probability] : by_maker)
        if (probability > 0.5)
            return maker_id;
    return {};
}

}  // namespace

models::DatedItem datedItem(const models::ItemRecord& record)
{
    models::DatedItem item;
    item.type_id = record.type_id;
    for (std::size_t i = 0; i < record.stamps.size(); ++i)
        item.stamps.push_back(itemStamp(record.stamps[i], i + 1));
    for (const models::DatedEventRecord& event : models::standingEvents(record))
        item.events.push_back(itemEvent(event, record.stamps));
    for (const models::FeatureSeenRecord& feature : models::standingFeatures(record))
        item.features.push_back({feature.feature_id, feature.seen});
    for (const models::AttributionRecord& attribution : models::standingAttributions(record))
        if (!attribution.maker_id.empty())
            item.makers.push_back({attribution.maker_id, attribution.mark, attribution.certainty});
    return item;
}

std::vector<models::PartDating> dateRecord(const models::ItemRecord& record,
                                           const models::MakerRegister& known,
                                           const Ranking& ranking)
{
    models::DatedItem item = datedItem(record);
    if (!known.itemType(item.type_id))
        item.type_id.clear();
    models::DateItemOptions options;
    options.rank_letters = [&](const models::ItemEvidence& evidence) {
        return ranking.rankLetters(evidence);
    };
    return models::dateItem(item, known, options);
}

std::optional<models::ChangeItem> changeItem(const models::ItemRecord& record,
                                             const std::string& feature_id,
                                             const models::MakerRegister& known,
                                             const models::YearRange& range,
                                             const LetterRanking& rank_letters)
{
    models::ChangeItem item;
    bool is_seen = false;
    for (const models::FeatureSeenRecord& feature : models::standingFeatures(record)) {
        if (feature.feature_id != feature_id)
            continue;
        is_seen = feature.seen == models::FeatureSeen::Present ||
                  feature.seen == models::FeatureSeen::Absent;
        item.has_detail = feature.seen == models::FeatureSeen::Present;
    }
    if (!is_seen)
        return std::nullopt;
    models::DatedItem dated = datedItem(record);
    if (!known.itemType(dated.type_id))
        dated.type_id.clear();
    models::DateItemOptions options;
    options.without_feature = feature_id;
    options.rank_letters = rank_letters;
    const models::PartDating body = models::dateItem(dated, known, options).front();
    auto years = within(body.dating, range);
    if (!years)
        return std::nullopt;
    item.years = std::move(*years);
    item.name = record.accession_number.empty() ? record.id : record.accession_number;
    item.maker_id = likeliestMaker(body.makers);
    return item;
}

}  // namespace flow
