#pragma once

#include <QImage>
#include <QObject>
#include <QThreadPool>
#include <filesystem>

namespace gui {

// A small, upright picture of a photo, at most this wide and high, made without decoding the whole:
// of JPEG alone, whose decoder gives an eighth of the size for little. Null for another kind, or
// for a file that is none; what is wrong with it is told when the photo is read.
QImage cardOf(const std::filesystem::path& file, int side_px);

// Makes the pictures of photos that nobody has read yet, one after the other, in a thread of its
// own that gives way to the reading.
class CardMaker : public QObject {
    Q_OBJECT

public:
    explicit CardMaker(QObject* parent = nullptr);
    ~CardMaker() override;

    void want(const std::filesystem::path& file);

Q_SIGNALS:
    void made(const QString& file, const QImage& picture);

private:
    QThreadPool pool_;
};

}  // namespace gui
