#include "app/gui/photo_queue.h"

#include <QMimeData>
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
    if (const int there = find(file); there >= 0) {
        setOnTable(there, true);
        return there;
    }
    const int place = rowCount();
    beginInsertRows({}, place, place);
    Entry& entry = entries_.emplace_back();
    entry.file = std::filesystem::absolute(file).lexically_normal();
    entry.name = nameOf(entry.file);
    endInsertRows();
    return place;
}

int PhotoQueue::addRecord(const std::string& id, const QString& name)
{
    const auto there = std::find_if(entries_.begin(), entries_.end(),
                                    [&](const Entry& entry) { return entry.record == id; });
    if (there != entries_.end()) {
        const int place = static_cast<int>(there - entries_.begin());
        setOnTable(place, true);
        return place;
    }
    const int place = rowCount();
    beginInsertRows({}, place, place);
    Entry& entry = entries_.emplace_back();
    entry.record = id;
    entry.name = name;
    entry.state = PhotoState::Filed;
    endInsertRows();
    return place;
}

const std::string& PhotoQueue::recordAt(int place) const
{
    return entries_.at(static_cast<std::size_t>(place)).record;
}

QString PhotoQueue::name(int place) const
{
    return entries_.at(static_cast<std::size_t>(place)).name;
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
    entries_.at(static_cast<std::size_t>(place)).trouble.clear();
    Q_EMIT dataChanged(index(place), index(place));
}

void PhotoQueue::setTrouble(int place, const QString& sentence)
{
    setState(place, PhotoState::Unreadable);
    entries_.at(static_cast<std::size_t>(place)).trouble = sentence;
}

void PhotoQueue::setPicture(int place, const QImage& picture)
{
    entries_.at(static_cast<std::size_t>(place)).picture = picture;
    Q_EMIT dataChanged(index(place), index(place));
}

bool PhotoQueue::hasPicture(int place) const
{
    return !entries_.at(static_cast<std::size_t>(place)).picture.isNull();
}

const std::vector<StampOnCard>& PhotoQueue::stamps(int place) const
{
    return entries_.at(static_cast<std::size_t>(place)).stamps;
}

void PhotoQueue::setStamps(int place, std::vector<StampOnCard> stamps)
{
    entries_.at(static_cast<std::size_t>(place)).stamps = std::move(stamps);
    Q_EMIT dataChanged(index(place), index(place));
}

bool PhotoQueue::isOnTable(int place) const
{
    return entries_.at(static_cast<std::size_t>(place)).on_table;
}

void PhotoQueue::setOnTable(int place, bool on)
{
    entries_.at(static_cast<std::size_t>(place)).on_table = on;
    Q_EMIT dataChanged(index(place), index(place));
}

int PhotoQueue::onTable() const
{
    return static_cast<int>(std::count_if(entries_.begin(), entries_.end(),
                                          [](const Entry& entry) { return entry.on_table; }));
}

int PhotoQueue::numberOf(int place) const
{
    return static_cast<int>(std::count_if(entries_.begin(), entries_.begin() + place + 1,
                                          [](const Entry& entry) { return entry.on_table; }));
}

int PhotoQueue::beside(int place, int step) const
{
    for (int other = place + step; other >= 0 && other < rowCount(); other += step)
        if (isOnTable(other))
            return other;
    return -1;
}

bool PhotoQueue::isToWorkOn(const Entry& entry) const
{
    switch (entry.state) {
        case PhotoState::ToRead:
        case PhotoState::Reading:
        case PhotoState::Read:
        case PhotoState::Begun:
            return entry.on_table;
        default:
            return false;
    }
}

int PhotoQueue::stillToRead() const
{
    return static_cast<int>(std::count_if(entries_.begin(), entries_.end(),
                                          [&](const Entry& entry) { return isToWorkOn(entry); }));
}

int PhotoQueue::pieceOf(int place) const
{
    return entries_.at(static_cast<std::size_t>(place)).piece;
}

void PhotoQueue::setPiece(int place, int with)
{
    entries_.at(static_cast<std::size_t>(place)).piece = with;
    Q_EMIT dataChanged(index(place), index(place));
}

int PhotoQueue::nextUnfiled(int place) const
{
    const int from = std::max(-1, place);
    for (int i = 1; i <= rowCount(); ++i) {
        const int next = (from + i) % rowCount();
        if (next != place && isToWorkOn(entries_[static_cast<std::size_t>(next)]))
            return next;
    }
    return -1;
}

Qt::ItemFlags PhotoQueue::flags(const QModelIndex& index) const
{
    const Qt::ItemFlags usual = QAbstractListModel::flags(index);
    return index.isValid() ? usual | Qt::ItemIsDragEnabled | Qt::ItemIsDropEnabled : usual;
}

QStringList PhotoQueue::mimeTypes() const
{
    return {"application/x-weftmark-place"};
}

QMimeData* PhotoQueue::mimeData(const QModelIndexList& indexes) const
{
    auto data = new QMimeData;
    if (!indexes.isEmpty())
        data->setData(mimeTypes().front(), QByteArray::number(indexes.front().row()));
    return data;
}

bool PhotoQueue::dropMimeData(const QMimeData* data, Qt::DropAction, int, int,
                              const QModelIndex& parent)
{
    bool is_place = false;
    const int place = data->data(mimeTypes().front()).toInt(&is_place);
    if (!is_place || !parent.isValid() || place == parent.row() || place >= rowCount())
        return false;
    Q_EMIT laidOnto(place, parent.row());
    return false;  // the card stays where it is
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
            return entry.name + "\n" + stateWord(entry.state);
        case Qt::AccessibleTextRole:
            return QStringList{entry.name, stateWord(entry.state),
                               data(index, piece_role).toString(), entry.trouble}
                .join(" ");
        case Qt::ToolTipRole:
            return entry.trouble.isEmpty() ? QString::fromStdString(entry.file.string())
                                           : entry.trouble;
        case Qt::DecorationRole:
            return entry.picture.isNull() ? QVariant() : QVariant(entry.picture);
        case piece_role:
            return entry.piece < 0 ? QString() : tr("with %1").arg(name(entry.piece));
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
        case PhotoState::NoStamp:
            return QObject::tr("\u25A1 no stamp found");
        case PhotoState::SetAside:
            return QObject::tr("\u25B7 set aside");
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
