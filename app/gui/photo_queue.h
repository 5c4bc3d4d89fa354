#pragma once

#include <QAbstractListModel>
#include <QImage>
#include <filesystem>
#include <vector>

namespace gui {

enum class PhotoState { ToRead, Reading, Read, Begun, Filed, Unreadable };

// The photos on the table in their order, with how far each is.
class PhotoQueue : public QAbstractListModel {
    Q_OBJECT

public:
    explicit PhotoQueue(QObject* parent = nullptr);

    // Puts a photo at the end unless it is there already; returns its place.
    int add(const std::filesystem::path& file);
    int find(const std::filesystem::path& file) const;  // -1 when it is not there
    const std::filesystem::path& file(int place) const;
    PhotoState state(int place) const;
    void setState(int place, PhotoState state);
    // A small picture, made when the photo was loaded anyway.
    void setPicture(int place, const QImage& picture);
    int stillToRead() const;

    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;

private:
    struct Entry {
        std::filesystem::path file;
        PhotoState state = PhotoState::ToRead;
        QImage picture;
    };
    std::vector<Entry> entries_;
};

QString stateWord(PhotoState state);
QString nameOf(const std::filesystem::path& file);

}  // namespace gui
