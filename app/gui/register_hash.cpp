#include "app/gui/register_hash.h"

#include <QCryptographicHash>
#include <QDir>
#include <QFile>

namespace gui {

std::string registerHash(const std::filesystem::path& folder)
{
    const QDir register_folder(QString::fromStdString(folder.string()));
    const QStringList names = register_folder.entryList({"*.csv"}, QDir::Files, QDir::Name);
    if (folder.empty() || names.isEmpty())
        return {};
    QCryptographicHash hash(QCryptographicHash::Sha256);
    for (const QString& name : names) {
        QFile file(register_folder.filePath(name));
        hash.addData(name.toUtf8());
        if (file.open(QIODevice::ReadOnly))
            hash.addData(&file);
    }
    return hash.result().toHex().toStdString();
}

}  // namespace gui
