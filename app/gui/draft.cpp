#include "app/gui/draft.h"

#include <QDir>
#include <QFile>
#include <algorithm>

#include "app/gui/replace_file.h"

namespace gui {

namespace {

QString pathText(const std::filesystem::path& path)
{
    return QString::fromStdString(path.string());
}

}  // namespace

std::filesystem::path DraftFolder::fileOf(const std::string& photo_sha256) const
{
    return folder_ / (photo_sha256 + ".json");
}

void DraftFolder::keep(const Draft& draft, bool at_once) const
{
    QDir().mkpath(pathText(folder_));
    const QString trouble = replaceFile(fileOf(draft.photo_sha256), draftText(draft), at_once);
    if (!trouble.isEmpty())
        throw DraftError("The draft " + fileOf(draft.photo_sha256).string() +
                         " could not be kept (" + trouble.toStdString() +
                         "); make room or choose an archive folder that can be written.");
    if (sha256_of_)
        (*sha256_of_)[draft.photo] = draft.photo_sha256;
}

std::optional<Draft> DraftFolder::of(const std::string& photo_sha256) const
{
    QFile file(pathText(fileOf(photo_sha256)));
    if (photo_sha256.empty() || !file.open(QIODevice::ReadOnly))
        return std::nullopt;
    try {
        return draftFromText(file.readAll().toStdString());
    } catch (const DraftError&) {
        return std::nullopt;
    }
}

std::optional<Draft> DraftFolder::of(const std::filesystem::path& photo) const
{
    if (!sha256_of_) {
        sha256_of_.emplace();
        for (const Draft& draft : readAll().drafts)
            sha256_of_->emplace(draft.photo, draft.photo_sha256);  // the newest first
    }
    const auto found = sha256_of_->find(photo);
    return found == sha256_of_->end() ? std::nullopt : of(found->second);
}

void DraftFolder::discard(const std::string& photo_sha256) const
{
    QFile::remove(pathText(fileOf(photo_sha256)));
}

DraftFolder::Found DraftFolder::readAll() const
{
    Found found;
    const QDir folder(pathText(folder_));
    for (const QString& name : folder.entryList({"*.json"}, QDir::Files, QDir::Name)) {
        QFile file(folder.filePath(name));
        try {
            if (!file.open(QIODevice::ReadOnly))
                throw DraftError(file.errorString().toStdString());
            found.drafts.push_back(draftFromText(file.readAll().toStdString()));
        } catch (const DraftError& error) {
            found.troubles.push_back("The draft " + folder.filePath(name).toStdString() +
                                     " cannot be read (" + error.what() +
                                     "); it is left as it is, move it away to be rid of this.");
        }
    }
    std::stable_sort(found.drafts.begin(), found.drafts.end(),
                     [](const Draft& a, const Draft& b) { return a.saved_at > b.saved_at; });
    return found;
}

}  // namespace gui
