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
    // A small picture of it.
    void setPicture(int place, const QImage& picture);
    bool hasPicture(int place) const;
    int stillToRead() const;
    // The photo with which this one shows one piece; -1: none.
    int pieceOf(int place) const;
    void setPiece(int place, int with);
    // The next place after this one, round the end, whose photo is not filed and can be read; -1
    // when there is none but this.
    int nextUnfiled(int place) const;

    static constexpr int piece_role = Qt::UserRole;  // words that name that photo, or empty
    // A card can be laid on another: both photos show one piece then.
    Qt::ItemFlags flags(const QModelIndex& index) const override;
    bool dropMimeData(const QMimeData* data, Qt::DropAction action, int row, int column,
                      const QModelIndex& parent) override;
    QMimeData* mimeData(const QModelIndexList& indexes) const override;
    QStringList mimeTypes() const override;

    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;

Q_SIGNALS:
    void laidOnto(int place, int onto);

private:
    struct Entry {
        std::filesystem::path file;
        PhotoState state = PhotoState::ToRead;
        QImage picture;
        int piece = -1;
    };
    std::vector<Entry> entries_;
};

QString stateWord(PhotoState state);
QString nameOf(const std::filesystem::path& file);

}  // namespace gui
