// Drafts of a sitting: kept while working, laid over what was read, put away when filed.
#include <fcntl.h>
#include <unistd.h>
#include <QThreadPool>
#include <utility>

#include "app/gui/record_page.h"
#include "app/gui/sitting.h"

namespace gui {

namespace {

// Waits, in a thread of its own, until the disk has the file.
void settle(const std::filesystem::path& file)
{
    QThreadPool::globalInstance()->start([file] {
        const int opened = ::open(file.c_str(), O_RDONLY | O_CLOEXEC);
        if (opened < 0)
            return;
        ::fsync(opened);
        ::close(opened);
    });
}

void layOver(StampWork& onto, const StampWork& kept, const std::string& person)
{
    const auto examined = onto.examined;
    onto = kept;
    takeExamination(onto, examined, person);
    onto.seen = kept.seen;
    onto.gone_through = kept.gone_through;
}

bool hasView(const models::ItemRecord& item, const std::string& view_id)
{
    for (const models::StampRecord& stamp : item.stamps)
        for (const models::ViewRecord& view : stamp.views)
            if (view.id == view_id)
                return true;
    return false;
}

}  // namespace

Draft Sitting::draftOf(int place, const Place& work) const
{
    const WorkSession& session = *work.session;
    Draft draft;
    draft.photo = queue_.file(place);
    draft.photo_sha256 = session.photo().sha256;
    draft.saved_at = options_.clock();
    draft.record_id = work.record ? work.record->item.id : std::string();
    draft.stamps = session.stamps();
    draft.fields = session.fields();
    draft.current = session.current();
    draft.place = session.editor().place();
    return draft;
}

void Sitting::keepDrafts()
{
    draft_pause_.stop();
    keepNow();
    for (const auto& [place, work] : places_) {
        if (!work.session)
            continue;
        const std::string& sha256 = work.session->photo().sha256;
        if (!isWorthKeeping(work)) {
            if (!work.record)
                drafts_.discard(sha256);
            continue;
        }
        drafts_.keep(draftOf(place, work), true);
        settle(options_.archive_folder / "drafts" / (sha256 + ".json"));
    }
}

void Sitting::keepDraftsQuietly()
{
    try {
        keepDrafts();
    } catch (const DraftError& error) {
        Q_EMIT troubled(QString::fromUtf8(error.what()));
    }
}

void Sitting::layDraft(Place& place, const vision::Photo& photo, std::vector<StampWork>& stamps)
{
    if (auto draft = place.draft ? std::nullopt : drafts_.of(photo.sha256);
        draft && draft->record_id.empty())
        place.draft = std::move(draft);
    if (!place.draft)
        return;
    const Draft draft = *std::exchange(place.draft, std::nullopt);
    if (draft.photo_sha256 != photo.sha256) {
        Q_EMIT noted(tr("The photo %1 has changed since its draft was kept; the draft is left as "
                        "it is.")
                         .arg(nameOf(photo.file)));
        return;
    }
    place.session->takeFields(draft.fields);
    if (draft.stamps.size() == stamps.size() && draft.photo == photo.file)
        for (std::size_t i = 0; i < stamps.size(); ++i)
            layOver(stamps[i], draft.stamps[i], options_.author);
    else
        stamps = draft.stamps;
    if (draft.record_id.empty())
        Q_EMIT noted(
            tr("Your draft of %1 was taken up where you left it.").arg(nameOf(photo.file)));
    else if (place.from_draft)
        Q_EMIT noted(
            tr("What you changed in this record and did not file was taken up where you "
               "left it."));
}

// The outlines of a draft have the ids that their views get in the archive.
std::optional<models::ItemRecord> Sitting::filedFrom(const Draft& draft)
{
    for (const std::string& id : archive().itemsWithPhoto(draft.photo_sha256)) {
        const auto item = look(id);
        for (const StampWork& stamp : draft.stamps)
            if (item && hasView(*item, stamp.id))
                return item;
    }
    return std::nullopt;
}

// Photos whose drafts these were, with the ids of their records.
std::map<std::filesystem::path, std::string> Sitting::putAwayFiledDrafts()
{
    std::map<std::filesystem::path, std::string> filed;
    if (!models::Archive::isIn(options_.archive_folder))
        return filed;
    for (const Draft& draft : drafts_.readAll().drafts) {
        const auto item = draft.record_id.empty() ? filedFrom(draft) : std::nullopt;
        if (!item)
            continue;
        drafts_.discard(draft.photo_sha256);
        filed[draft.photo] = item->id;
        Q_EMIT noted(tr("%1 was filed as %2 just before the last sitting ended. Nothing is lost; "
                        "it need not be filed again.")
                         .arg(nameOf(draft.photo), recordName(*item)));
    }
    return filed;
}

std::vector<Draft> Sitting::earlierDrafts()
{
    DraftFolder::Found found = drafts_.readAll();
    for (const std::string& trouble : found.troubles)
        Q_EMIT troubled(QString::fromStdString(trouble));
    return std::move(found.drafts);
}

void Sitting::takeUp(const std::vector<Draft>& drafts)
{
    std::vector<std::filesystem::path> photos;
    for (const Draft& draft : drafts) {
        const auto record = draft.record_id.empty() ? std::nullopt : look(draft.record_id);
        if (record) {
            openRecord(*record, draft);
            continue;
        }
        photos.push_back(draft.photo);
        queue_.setState(queue_.add(draft.photo), PhotoState::Begun);
    }
    openPhotos(photos);
}

}  // namespace gui
