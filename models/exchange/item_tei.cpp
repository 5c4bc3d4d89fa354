#include "models/exchange/item_tei.h"

#include <set>
#include <vector>

#include "models/exchange/tei.h"

namespace models {

namespace {

// The readings of a stamp, of the object and of its views.
std::vector<const ReadingRecord*> allReadingsOf(const StampRecord& stamp)
{
    std::vector<const ReadingRecord*> readings;
    for (const ReadingRecord& reading : stamp.readings)
        readings.push_back(&reading);
    for (const ViewRecord& view : stamp.views)
        for (const ReadingRecord& reading : view.readings)
            readings.push_back(&reading);
    return readings;
}

std::string idnoOf(const ItemRecord& item)
{
    return item.accession_number.empty() ? item.id : item.accession_number;
}

}  // namespace

std::string itemTei(const ItemRecord& item)
{
    std::vector<TeiDocument> documents;
    for (std::size_t i = 0; i < item.stamps.size(); ++i) {
        const std::vector<const ReadingRecord*> readings = allReadingsOf(item.stamps[i]);
        std::set<std::string> corrected;
        for (const ReadingRecord* reading : readings)
            corrected.insert(reading->supersedes);
        for (const ReadingRecord* reading : readings) {
            if (!reading->id.empty() && corrected.count(reading->id) != 0)
                continue;
            TeiDocument document;
            document.title = idnoOf(item) + ", stamp " + std::to_string(i + 1);
            document.repository = item.owner;
            document.idno = idnoOf(item);
            document.text.reading = reading->reading;
            documents.push_back(std::move(document));
        }
    }
    if (documents.empty())
        return {};
    return documents.size() == 1 ? writeTeiDocument(documents.front())
                                 : writeTeiCorpus(idnoOf(item), documents);
}

}  // namespace models
