#include "app/gui/card_maker.h"

#include <QImageReader>
#include <algorithm>

namespace gui {

namespace {

constexpr int card_side_px = 320;
constexpr double most_card_pixels = 250e6;  // as vision::LoadOptions has it

}  // namespace

QImage cardOf(const std::filesystem::path& file, int side_px)
{
    QImageReader reader(QString::fromStdString(file.string()));
    reader.setDecideFormatFromContent(true);
    if (reader.format() != "jpeg")
        return {};
    const QSize whole = reader.size();
    if (whole.isEmpty() || 1.0 * whole.width() * whole.height() > most_card_pixels)
        return {};
    if (std::max(whole.width(), whole.height()) > side_px)
        reader.setScaledSize(
            whole.scaled(side_px, side_px, Qt::KeepAspectRatio).expandedTo(QSize(1, 1)));
    reader.setAutoTransform(true);
    return reader.read();
}

CardMaker::CardMaker(QObject* parent) : QObject(parent)
{
    pool_.setMaxThreadCount(1);
    pool_.setThreadPriority(QThread::LowestPriority);
}

CardMaker::~CardMaker()
{
    pool_.clear();
    pool_.waitForDone();
}

void CardMaker::want(const std::filesystem::path& file)
{
    pool_.start([this, file] {
        const QImage picture = cardOf(file, card_side_px);
        if (!picture.isNull())
            Q_EMIT made(QString::fromStdString(file.string()), picture);
    });
}

}  // namespace gui
