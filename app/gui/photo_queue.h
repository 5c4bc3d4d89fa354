#pragma once

#include <QAbstractListModel>
#include <QImage>
#include <QPolygonF>
#include <filesystem>
#include <string>
#include <vector>

namespace gui {

enum class PhotoState { ToRead, Reading, Read, Begun, NoStamp, Filed, SetAside, Unreadable };

// A stamp on the table: the place of its photo, and its id.
struct StampPlace {
    int place = -1;
    std::string id;

    bool operator==(const StampPlace&) const = default;
};

// A stamp as its photo's card shows it.
struct StampOnCard {
    std::string id;
    QPolygonF outline;     // in shares of the picture's width and height
    bool is_view = false;  // another view of a stamp that is shown elsewhere
};

// The photos on the table in their order, with how far each is.
class PhotoQueue : public QAbstractListModel {
    Q_OBJECT

public:
    explicit PhotoQueue(QObject* parent = nullptr);

    // Puts a photo at the end unless it is there already; returns its place. One that was taken off
    // the table comes back to where it was.
    int add(const std::filesystem::path& file);
    // The same for a filed record that has no photo; it has no file.
    int addRecord(const std::string& id, const QString& name);
    int find(const std::filesystem::path& file) const;  // -1 when it is not there
    const std::filesystem::path& file(int place) const;
    const std::string& recordAt(int place) const;  // id of a record without a photo; else empty
    QString name(int place) const;                 // the photo's file name, or the record's name
    PhotoState state(int place) const;
    void setState(int place, PhotoState state);  // whatever trouble there was is over
    // It cannot be read, and why.
    void setTrouble(int place, const QString& sentence);
    // A small picture of it.
    void setPicture(int place, const QImage& picture);
    bool hasPicture(int place) const;
    // The stamps outlined in it, while it is at hand.
    const std::vector<StampOnCard>& stamps(int place) const;
    void setStamps(int place, std::vector<StampOnCard> stamps);
    // A photo taken off the table keeps its place, in case it comes back.
    bool isOnTable(int place) const;
    void setOnTable(int place, bool on);
    int onTable() const;            // how many are
    int numberOf(int place) const;  // among those, from 1
    // The next one that is, this many steps on; -1: none.
    int beside(int place, int step) const;
    int stillToRead() const;
    // The photo with which this one shows one piece; -1: none.
    int pieceOf(int place) const;
    void setPiece(int place, int with);
    // The next place after this one, round the end, whose photo is still to be worked on; -1 when
    // there is none but this.
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
        std::string record;
        QString name;
        PhotoState state = PhotoState::ToRead;
        QString trouble;
        bool on_table = true;
        QImage picture;
        std::vector<StampOnCard> stamps;
        int piece = -1;
    };
    bool isToWorkOn(const Entry& entry) const;

    std::vector<Entry> entries_;
};

QString stateWord(PhotoState state);
QString nameOf(const std::filesystem::path& file);

}  // namespace gui
