// The archive and the drafts of a sitting.
#include <algorithm>
#include <utility>

#include "app/flow/register_hash.h"
#include "app/gui/sitting.h"

namespace gui {

namespace {

void lay(StampWork& onto, const StampWork& kept, const std::string& person)
{
    const auto examined = onto.examined;
    onto = kept;
    takeExamination(onto, examined, person);
    onto.seen = kept.seen;
    onto.gone_through = kept.gone_through;
}

}  // namespace

bool Sitting::isUnfiled(const Place& place) const
{
    if (!place.session)
        return false;
    if (!place.record)
        return place.session->isTouched();
    return place.from_draft || !place.session->undoStack()->isClean() ||
           place.session->fields() != place.filed_fields;
}

models::Archive& Sitting::archive()
{
    if (!archive_)
        archive_ = models::Archive::open(options_.archive_folder, options_.author, options_.clock);
    return *archive_;
}

void Sitting::fileRecord(const std::string& layer)
{
    Place* here = current();
    if (!here || !here->session)
        return;
    WorkSession& session = *here->session;
    FilingFacts facts{options_.author, options_.clock(), layer, {}};
    if (!options_.register_folder.empty())
        facts.register_sha256 = flow::registerSha256(options_.register_folder);
    const std::vector<StampWork> stamps = session.stampsToFile();
    if (here->record) {
        fileCorrection(*here->record, correctionOf(*here->record, session.photo(), stamps,
                                                   session.fields(), facts));
    } else {
        const models::ItemRecord stored =
            archive().addItem(itemFromWork(session.photo(), stamps, session.fields(), facts));
        here->record = linkFiled(stored, stamps, facts);
    }
    session.undoStack()->clear();  // to a filed record things are only added
    here->filed_fields = session.fields();
    here->from_draft = false;
    drafts_.discard(session.photo().sha256);
    queue_.setState(place_, PhotoState::Filed);
    sayFiled(here->record->item, session.stamps().size() - stamps.size());
    Q_EMIT sessionChanged();
}

void Sitting::fileCorrection(RecordLink& link, const Correction& correction)
{
    models::Archive& into = archive();
    const std::string item_id = link.item.id;
    for (const Correction::NewReading& added : correction.readings) {
        into.addReading(added.view_id, added.reading, added.supersedes);
        link.last_reading[added.view_id] = added.reading;
    }
    std::map<std::string, std::string> stored_as;  // id on the table -> id in the archive
    for (const Correction::NewStamp& added : correction.stamps)
        stored_as[added.stamp_id] = into.addStamp(item_id, added.record);
    for (const models::AttributionRecord& attribution : correction.attributions)
        into.addAttribution(item_id, attribution);
    link.item = into.item(item_id).value_or(link.item);
    linkAdded(link, stored_as);
}

void Sitting::sayFiled(const models::ItemRecord& item, std::size_t left_out)
{
    const std::string& number = item.accession_number;
    const QString name = number.empty() ? tr("seen, not owned") : QString::fromStdString(number);
    QString sentence = tr("Filed as %1.").arg(name);
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

void Sitting::openRecord(const models::ItemRecord& item, std::optional<Draft> draft)
{
    if (item.photos.empty()) {
        Q_EMIT noted(tr("This record has no photo; its readings stand in the list of records."));
        return;
    }
    const models::PhotoRecord& photo = item.photos.front();
    Draft opened;
    opened.photo = photo.file;
    opened.photo_sha256 = photo.sha256;
    opened.record_id = item.id;
    opened.stamps = workFromItem(item, photo.sha256);
    opened.fields = fieldsFromItem(item);
    const int place = queue_.add(photo.file);
    Place& here = places_[place];
    if (!here.session) {
        here.record = linkOpened(item, opened.stamps);
        here.filed_fields = opened.fields;
        here.from_draft = draft.has_value();
        here.draft = draft ? std::move(*draft) : std::move(opened);
    }
    goTo(place);
}

void Sitting::layDraft(Place& place, const vision::Photo& photo, std::vector<StampWork>& stamps)
{
    if (!place.draft)
        for (Draft& draft : drafts_.readAll().drafts)
            if (draft.photo_sha256 == photo.sha256 && draft.record_id.empty())
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
    place.session->setFields(draft.fields);
    if (draft.stamps.size() == stamps.size() && draft.photo == photo.file)
        for (std::size_t i = 0; i < stamps.size(); ++i)
            lay(stamps[i], draft.stamps[i], options_.author);
    else
        stamps = draft.stamps;
    if (draft.record_id.empty())
        Q_EMIT noted(
            tr("Your draft of %1 was taken up where you left it.").arg(nameOf(photo.file)));
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

void Sitting::keepDrafts()
{
    draft_pause_.stop();
    for (const auto& [place, work] : places_) {
        if (!work.session)
            continue;
        const WorkSession& session = *work.session;
        if (!isUnfiled(work)) {
            if (!work.record)
                drafts_.discard(session.photo().sha256);
            continue;
        }
        Draft draft;
        draft.photo = queue_.file(place);
        draft.photo_sha256 = session.photo().sha256;
        draft.saved_at = options_.clock();
        draft.record_id = work.record ? work.record->item.id : std::string();
        draft.stamps = session.stamps();
        draft.fields = session.fields();
        drafts_.keep(draft);
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

std::vector<std::filesystem::path> Sitting::unfiled() const
{
    std::vector<std::filesystem::path> files;
    for (const auto& [place, work] : places_)
        if (isUnfiled(work))
            files.push_back(queue_.file(place));
    return files;
}

}  // namespace gui
