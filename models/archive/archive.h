#pragma once

#include <filesystem>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <stdexcept>
#include <string>
#include <vector>

#include "models/archive/records.h"
#include "models/confusion_learning.h"
#include "models/experience.h"

namespace models {

// The archive cannot do it. what() is one sentence that names the file and the remedy.
class ArchiveError : public std::runtime_error {
public:
    using std::runtime_error::runtime_error;
};

// Tells the time, UTC, as "1956-03-01T12:00:00Z". Passed in so that tests can stand still.
using Clock = std::function<std::string()>;
std::string utcNow();

// An id for a record that is not stored yet, so that others can name it.
std::string newRecordId();

// What to look for; empty fields do not narrow. All given fields must hold.
struct FindQuery {
    // Words in any text of the record: accession number, notes, owner, place, maker, readings.
    // A word may be in the typed notation: 19[.]1 and [- - -]ER match unread cells on either side
    // (a filed reading's lost cells match any letter, as the query's do).
    std::string words;
    std::string maker;  // part of an attributed maker's id or name, case does not matter
    // An attribution or a dated event may fall within; where there is none, the latest readings can
    // mean such a year.
    std::optional<int> year_from, year_to;
};

// One line of what was found.
struct FoundItem {
    std::string id, accession_number, type_id;
    std::string maker_name, date_edtf;  // of the latest standing attribution
    std::string text;                   // the latest readings, plain, joined by " / "
    std::string leiden;                 // the same in Leiden signs, where no two states look alike
    std::string recorded_at;
};

// A person's archive: a folder with an SQLite file and the originals by their hash. What is
// recorded is added, never overwritten. Use one object only in the thread that made it.
class Archive {
public:
    // Opens the archive in `folder`; makes folder and archive if there is none.
    //   author  who records, as it stands in every row; must not be empty
    // Throws ArchiveError if the folder cannot be used, the file is damaged or not an archive, or
    // it was written by a newer version; std::invalid_argument if author is empty.
    static Archive open(const std::filesystem::path& folder, const std::string& author,
                        Clock clock = utcNow);
    // Whether there is an archive in `folder`, without making one.
    static bool isIn(const std::filesystem::path& folder);
    ~Archive();
    Archive(Archive&&) noexcept;
    Archive& operator=(Archive&&) noexcept;

    // Files an item with all that hangs on it, in one transaction: everything or nothing. Ids are
    // made for what has none; originals are copied in by their hash, one copy however often added.
    // Views name their photo by `photo_sha256`, which must be among the item's photos.
    //   returns  the item as stored, with ids, authors and times
    // Throws ArchiveError (a missing original, a full disk, an accession number used already).
    ItemRecord addItem(const ItemRecord& item);

    // Adds to what is there; each is one transaction and returns the new row's id. Throws
    // ArchiveError if the item, view or stamp is not in the archive. A reading is of a view, or, by
    // the stamp's id, of the object itself.
    std::string addReading(const std::string& view_or_stamp_id, const Reading& reading,
                           const std::string& supersedes = {});
    std::string addAttribution(const std::string& item_id, const AttributionRecord& attribution);
    std::string addStamp(const std::string& item_id, const StampRecord& stamp);

    // Adds all of this in one transaction: everything or nothing. A correction records that a field
    // holds another value from now on, or that a fact is taken back; the earlier value stays in the
    // record. Throws ArchiveError if the item or a row that a correction names is not there, and
    // std::invalid_argument if the row has no such field or the value is none of it.
    void addTo(const std::string& item_id, const RecordAdditions& additions);

    // The whole record, by id or by accession number; nullopt when there is none.
    std::optional<ItemRecord> item(const std::string& id_or_accession_number) const;

    // The item that was recorded last; nullopt in an empty archive.
    std::optional<ItemRecord> lastItem() const;

    // Newest first. An empty query finds everything. Throws std::invalid_argument if the words are
    // not in the typed notation.
    std::vector<FoundItem> find(const FindQuery& query) const;

    // The items that a photo with this hash is filed with, each by its accession number, or its id
    // where it has none; oldest first.
    std::vector<std::string> itemsWithPhoto(const std::string& sha256) const;

    // How many items each maker has by their latest standing attribution, by maker_id.
    std::map<std::string, double> makerCounts() const;

    // What people's readings teach of what engines take letters for (confusion_learning.h), since
    // corrections were last forgotten. Nothing recorded is changed by forgetting: a file beside the
    // archive says from when on corrections count.
    std::vector<TaughtLetter> taughtLetters() const;
    // Throws ArchiveError if that cannot be written.
    void forgetCorrections();
    // Both, as the ranking takes them.
    Experience experience() const;

    // Where the original with this hash lies, whether or not it is there.
    std::filesystem::path originalPath(const std::string& sha256,
                                       const std::string& original_name) const;

private:
    struct Connection;
    explicit Archive(std::unique_ptr<Connection> connection);
    std::unique_ptr<Connection> connection_;
};

}  // namespace models
