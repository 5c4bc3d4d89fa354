// The archive and the drafts of a sitting.
#include <algorithm>
#include <utility>

#include "app/flow/register_hash.h"
#include "app/gui/record_page.h"
#include "app/gui/sitting.h"

namespace gui {

bool Sitting::isUnfiled(const Place& place) const
{
    if (!place.session)
        return place.put_aside;
    if (!place.record)
        return place.session->isTouched();
    return place.from_draft || !place.session->undoStack()->isClean() ||
           place.session->fields() != place.filed_fields;
}

// Letters that were only gone through are worth a draft too, though nobody asks about them.
bool Sitting::isWorthKeeping(const Place& place) const
{
    if (!place.session || isUnfiled(place))
        return isUnfiled(place);
    // What was undone to the beginning leaves nothing behind.
    const bool undone = place.session->undoStack()->count() > 0;
    const auto& stamps = place.session->stamps();
    return !place.record && !undone &&
           std::any_of(stamps.begin(), stamps.end(), [](const StampWork& stamp) {
               return !stamp.seen.empty() || stamp.looked_ahead || !stamp.view_of.empty();
           });
}

models::Archive& Sitting::archive()
{
    if (!archive_)
        archive_ = models::Archive::open(options_.archive_folder, options_.author, options_.clock);
    return *archive_;
}

bool Sitting::isReadyToFile(const std::vector<int>& places)
{
    for (const int place : places)
        if (!places_[place].session) {
            Q_EMIT noted(tr("%1 shows this piece too and was not opened yet; open it, then file "
                            "the record. Nothing was filed.")
                             .arg(queue_.name(place)));
            return false;
        }
    return true;
}

bool Sitting::isUnconfirmed()
{
    bool letters = false;
    for (const int place : piecePlaces(place_)) {
        for (const StampWork& stamp : stampsAt(place)) {
            letters = letters || lettersSeen(stamp).all > 0;
            if (hasConfirmed(stamp.shown, options_.author))
                return false;
        }
    }
    return letters;
}

bool Sitting::fileRecord(const std::string& layer)
{
    Place* here = current();
    const std::vector<int> places = piecePlaces(place_);
    if (!here || !here->session || !isReadyToFile(places))
        return false;
    FilingFacts facts{options_.author, options_.clock(), layer, {}};
    if (!options_.register_folder.empty())
        facts.register_sha256 = flow::registerSha256(options_.register_folder);
    const bool unconfirmed = !here->record && isUnconfirmed();
    std::size_t left_out = 0;
    for (const int place : places)
        left_out +=
            places_[place].session->stamps().size() - places_[place].session->stampsToFile().size();
    if (here->record) {
        fileChanges(places, facts);
    } else {
        fileNew(places, facts);
    }
    for (const int place : places) {
        Place& work = places_[place];
        takeFiledFields(work);
        work.session->undoStack()->clear();  // to a filed record things are only added
        work.filed_as = here->record->item.id;
        work.from_draft = false;
        work.set_aside = false;
        drafts_.discard(work.session->photo().sha256);
        queue_.setState(place, PhotoState::Filed);
    }
    sayFiled(here->record->item, left_out, unconfirmed);
    Q_EMIT sessionChanged();
    return true;
}

void Sitting::fileNew(const std::vector<int>& places, const FilingFacts& facts)
{
    std::vector<PhotoWork> piece;
    for (const int place : places) {
        const WorkSession& session = *places_[place].session;
        piece.push_back({&session.photo(), session.stampsToFile()});
    }
    const FilingFields& fields = places_[place_].session->fields();
    const models::ItemRecord stored = archive().addItem(itemFromPiece(piece, fields, facts));
    std::vector<RecordLink> links = linksFiled(stored, piece, facts);
    for (std::size_t i = 0; i < places.size(); ++i)
        places_[places[i]].record = std::move(links[i]);
    lendFrom(stored);
}

// Readings and stamps photo by photo; what is said of the piece once.
void Sitting::fileChanges(const std::vector<int>& places, const FilingFacts& facts)
{
    models::Archive& into = archive();
    const FilingFields fields = places_[place_].session->fields();
    models::ItemRecord item = places_[place_].record->item;
    models::RecordAdditions changes;
    for (const int place : places) {
        RecordLink& link = *places_[place].record;
        const WorkSession& session = *places_[place].session;
        PhotoCorrection correction =
            correctionOf(link, session.photo(), session.stampsToFile(), facts);
        for (const PhotoCorrection::NewReading& added : correction.readings) {
            into.addReading(added.view_id, added.reading, added.supersedes);
            link.last_reading[added.view_id] = added.reading;
        }
        for (models::StampRecord& stamp : correction.stamps) {
            stamp.id = models::newRecordId();
            putStampFacts(stamp, fields);
            item.stamps.push_back(stamp);
            changes.stamps.push_back(stamp);
        }
        linkAdded(link, correction.stamps);
    }
    models::RecordAdditions said = changesOf(fields, item, facts.register_sha256);
    said.stamps = std::move(changes.stamps);
    into.addTo(item.id, said);
    item = into.item(item.id).value_or(item);
    for (const int place : places)
        places_[place].record->item = item;
}

// What was filed is known by its ids from now on; reasons for no conclusion are not in the record.
void Sitting::takeFiledFields(Place& work)
{
    FilingFields filed = fieldsFromItem(work.record->item);
    if (work.record->item.attributions.empty()) {
        filed.reasons = work.session->fields().reasons;
        filed.certainty = work.session->fields().certainty;
    }
    work.filed_fields = filed;
    work.session->takeFields(filed);
}

void Sitting::sayFiled(const models::ItemRecord& item, std::size_t left_out, bool unconfirmed)
{
    QString sentence = tr("Filed as %1.").arg(recordName(item));
    if (unconfirmed)
        sentence += " " + tr("No letter of it was confirmed by you.");
    if (left_out > 0)
        sentence +=
            " " + tr("Outlines left out, since nobody went through them: %1.").arg(left_out);
    Q_EMIT noted(sentence);
}

std::vector<models::FoundItem> Sitting::find(const models::FindQuery& query)
{
    return archive().find(query);
}

std::optional<models::ItemRecord> Sitting::look(const std::string& id)
{
    return archive().item(id);
}

// Ties a photo on the table to the record that it is filed in.
void Sitting::takeRecord(Place& here, const models::ItemRecord& item,
                         const std::filesystem::path& file)
{
    for (const models::PhotoRecord& photo : item.photos) {
        const bool only = item.photos.size() == 1;
        if (!only && photo.file != file && photo.original_name != file.filename().string())
            continue;
        Draft kept;
        kept.photo = file;
        kept.photo_sha256 = photo.sha256;
        kept.stamps = workFromItem(item, photo.sha256);
        return tieToRecord(here, item, std::move(kept));
    }
}

// As it is filed, or as it was left when it was last being corrected.
void Sitting::tieToRecord(Place& here, const models::ItemRecord& item, Draft as_filed)
{
    as_filed.record_id = item.id;
    as_filed.fields = fieldsFromItem(item);
    here.record = linkOpened(item, as_filed.stamps);
    here.filed_fields = as_filed.fields;
    here.filed_as = item.id;
    here.draft = drafts_.of(as_filed.photo_sha256);
    here.from_draft = here.draft && here.draft->record_id == item.id;
    if (!here.from_draft)
        here.draft = std::move(as_filed);
}

void Sitting::openRecord(const models::ItemRecord& item, std::optional<Draft> draft)
{
    if (item.photos.empty())
        return openWithoutPhoto(item);
    int first = -1;
    for (const models::PhotoRecord& photo : item.photos) {
        const int place = queue_.add(photo.file);
        Place& here = places_[place];
        if (!here.session)
            takeRecord(here, item, photo.file);
        if (!here.session && draft && draft->photo_sha256 == photo.sha256) {
            here.from_draft = true;
            here.draft = *draft;
        }
        if (first >= 0)
            queue_.setPiece(place, first);
        queue_.setState(place, PhotoState::Filed);
        first = first < 0 ? place : first;
    }
    goTo(first);
}

}  // namespace gui
