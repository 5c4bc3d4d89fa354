#include "app/gui/photo_queue.h"

#include <algorithm>

namespace gui {

PhotoQueue::PhotoQueue(QObject* parent) : QAbstractListModel(parent)
{
}

int PhotoQueue::find(const std::filesystem::path& file) const
{
    const auto wanted = std::filesystem::absolute(file).lexically_normal();
    for (std::size_t i = 0; i < entries_.size(); ++i)
        if (entries_[i].file == wanted)
            return static_cast<int>(i);
    return -1;
}

int PhotoQueue::add(const std::filesystem::path& file)
{
    if (const int there = find(file); there >= 0)
        return there;
    const int place = rowCount();
    beginInsertRows({}, place, place);
    entries_.push_back({std::filesystem::absolute(file).lexically_normal(), {}, {}});
    endInsertRows();
    return place;
}

const std::filesystem::path& PhotoQueue::file(int place) const
{
    return entries_.at(static_cast<std::size_t>(place)).file;
}

PhotoState PhotoQueue::state(int place) const
{
    return entries_.at(static_cast<std::size_t>(place)).state;
}

void PhotoQueue::setState(int place, PhotoState state)
{
    entries_.at(static_cast<std::size_t>(place)).state = state;
    Q_EMIT dataChanged(index(place), index(place));
}

void PhotoQueue::setPicture(int place, const QImage& picture)
{
    entries_.at(static_cast<std::size_t>(place)).picture = picture;
    Q_EMIT dataChanged(index(place), index(place));
}

int PhotoQueue::stillToRead() const
{
    return static_cast<int>(std::count_if(entries_.begin(), entries_.end(), [](const Entry& entry) {
        return entry.state != PhotoState::Filed && entry.state != PhotoState::Unreadable;
    }));
}

int PhotoQueue::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(entries_.size());
}

QVariant PhotoQueue::data(const QModelIndex& index, int role) const
{
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    const Entry& entry = entries_[static_cast<std::size_t>(index.row())];
    switch (role) {
        case Qt::DisplayRole:
        case Qt::AccessibleTextRole:
            return nameOf(entry.file) + "\n" + stateWord(entry.state);
        case Qt::ToolTipRole:
            return QString::fromStdString(entry.file.string());
        case Qt::DecorationRole:
            return entry.picture.isNull() ? QVariant() : QVariant(entry.picture);
        default:
            return {};
    }
}

QString stateWord(PhotoState state)
{
    switch (state) {
        case PhotoState::ToRead:
            return QObject::tr("\u25CB to read");
        case PhotoState::Reading:
            return QObject::tr("\u25CC being read");
        case PhotoState::Read:
            return QObject::tr("\u25D4 read, not filed");
        case PhotoState::Begun:
            return QObject::tr("\u25D1 begun, not filed");
        case PhotoState::Filed:
            return QObject::tr("\u25CF filed");
        case PhotoState::Unreadable:
            return QObject::tr("\u2715 cannot be read");
    }
    return {};
}

QString nameOf(const std::filesystem::path& file)
{
    return QString::fromStdString(file.filename().string());
}

}  // namespace gui
