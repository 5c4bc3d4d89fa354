#include "app/gui/draft.h"

#include <QDir>
#include <QFile>
#include <QSaveFile>
#include <algorithm>

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

void DraftFolder::keep(const Draft& draft) const
{
    QDir().mkpath(pathText(folder_));
    QSaveFile file(pathText(fileOf(draft.photo_sha256)));
    const std::string text = draftText(draft);
    const bool kept = file.open(QIODevice::WriteOnly) &&
                      file.write(text.data(), static_cast<qint64>(text.size())) ==
                          static_cast<qint64>(text.size()) &&
                      file.commit();
    if (!kept)
        throw DraftError("The draft " + fileOf(draft.photo_sha256).string() +
                         " could not be kept (" + file.errorString().toStdString() +
                         "); make room or choose an archive folder that can be written.");
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
