#include <fstream>
#include <set>
#include <system_error>

#include "models/archive/connection.h"
#include "models/archive/stored_readings.h"

namespace models {

namespace {

// Beside the archive's file: from when on corrections count.
constexpr const char* forgotten_file = "corrections_from.txt";

std::string correctionsFrom(const std::filesystem::path& folder)
{
    std::ifstream file(folder / forgotten_file);
    std::string time;
    std::getline(file, time);
    return time;
}

// What an engine had seen when a person read: the last reading before theirs, of the same view,
// that is an engine's. What other people read in between are no engine's errors.
const StoredReading* enginesBefore(const std::vector<StoredReading>& readings, std::size_t persons)
{
    for (std::size_t i = persons; i-- > 0;)
        if (readings[i].view_id == readings[persons].view_id &&
            isEngine(readings[i].record.reading.reader))
            return &readings[i];
    return nullptr;
}

}  // namespace

std::map<std::string, double> Archive::makerCounts() const
{
    const sql::Database& database = connection_->database;
    const std::vector<sql::Row> rows = database.rows("attribution", "ORDER BY item_id, ordinal");
    std::set<std::string> replaced;
    for (const sql::Row& row : rows)
        replaced.insert(row.text("supersedes"));
    std::map<std::string, std::string> latest;  // by item
    for (const sql::Row& row : rows)
        if (replaced.count(row.text("id")) == 0)
            latest[row.text("item_id")] = row.text("maker_id");
    std::map<std::string, double> counts;
    for (const auto& [item, maker] : latest)
        if (!maker.empty())
            counts[maker] += 1;
    return counts;
}

std::vector<TaughtLetter> Archive::taughtLetters() const
{
    const sql::Database& database = connection_->database;
    const std::string from = correctionsFrom(connection_->folder);
    std::vector<TaughtLetter> letters;
    for (const sql::Row& stamp : database.rows("stamp")) {
        const std::vector<StoredReading> readings = loadReadings(database, stamp.text("id"));
        std::set<std::string> corrected;
        for (const StoredReading& reading : readings)
            corrected.insert(reading.record.supersedes);
        for (std::size_t i = 0; i < readings.size(); ++i) {
            if (isEngine(readings[i].record.reading.reader) ||
                readings[i].record.recorded_at <= from ||
                corrected.count(readings[i].record.id) > 0)
                continue;
            const StoredReading* before = enginesBefore(readings, i);
            if (!before)
                continue;
            const std::vector<TaughtLetter> taught =
                lettersTaught(before->record.reading, readings[i].record.reading);
            letters.insert(letters.end(), taught.begin(), taught.end());
        }
    }
    return letters;
}

Experience Archive::experience() const
{
    return {makerCounts(), learnConfusions(taughtLetters())};
}

void Archive::forgetCorrections()
{
    const std::filesystem::path path = connection_->folder / forgotten_file;
    std::ofstream file(path);
    file << connection_->clock() << "\n";
    file.close();
    if (!file)
        throw ArchiveError(path.string() +
                           " cannot be written; make room in the folder, or make it writable");
}

}  // namespace models
