#include "app/gui/replace_file.h"

#include <QFile>
#include <QSaveFile>
#include <system_error>

namespace gui {

namespace {

bool wrote(QFileDevice& file, const std::string& text)
{
    const auto size = static_cast<qint64>(text.size());
    return file.open(QIODevice::WriteOnly) && file.write(text.data(), size) == size;
}

}  // namespace

QString replaceFile(const std::filesystem::path& file, const std::string& text, bool at_once)
{
    const QString name = QString::fromStdString(file.string());
    if (!at_once) {
        QSaveFile safe(name);
        return wrote(safe, text) && safe.commit() ? QString() : safe.errorString();
    }
    QFile fresh(name + ".new");
    const bool written = wrote(fresh, text) && fresh.flush();
    const QString trouble = fresh.errorString();
    fresh.close();
    std::error_code failed;
    if (written)
        std::filesystem::rename(fresh.fileName().toStdString(), file, failed);
    if (written && !failed)
        return {};
    fresh.remove();
    return failed ? QString::fromStdString(failed.message()) : trouble;
}

}  // namespace gui
