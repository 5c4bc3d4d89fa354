#include "app/gui/stamp_view.h"

#include <QInputMethodEvent>
#include <QMouseEvent>
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "app/gui/cell_strip.h"
#include "app/gui/cell_words.h"
#include "app/gui/letter_loupe.h"
#include "app/gui/look.h"
#include "app/gui/magnifier.h"
#include "app/gui/picture.h"

namespace gui {

StampView::StampView(QWidget* parent) : QScrollArea(parent), sheet_(new QWidget)
{
    setObjectName("stampView");
    setAccessibleName(tr("Letters of the stamp"));
    setFocusPolicy(Qt::StrongFocus);
    setAttribute(Qt::WA_InputMethodEnabled);
    setFrameShape(QFrame::NoFrame);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    sheet_->setObjectName("stampSheet");
    sheet_->installEventFilter(this);
    sheet_->setMouseTracking(true);
    setWidget(sheet_);
}

StampView::~StampView()
{
    delete magnifier_;
}

void StampView::showPicture(const cv::Mat& pixels)
{
    pixels_ = pixels;
    scaled_ = {};
    layOut();
}

void StampView::showLines(const std::vector<models::Line>& lines, const std::string& person)
{
    lines_ = lines;
    person_ = person;
    layOut();
}

void StampView::showBeside(const models::Reading& proposal,
                           const std::vector<std::vector<ShownRole>>& roles)
{
    proposal_ = proposal;
    roles_ = roles;
    layOutStrips();
}

void StampView::setPlace(CellPlace place)
{
    place_ = place;
    mouse_at_.reset();
    showPlace();
}

void StampView::setEmptyWords(const QString& words)
{
    empty_words_ = words;
    sheet_->update();
}

// Letters as large as the room and the width of the cells allow.
double StampView::letterSize() const
{
    const double line = QFontMetricsF(font()).height();
    double size = viewport()->height() * 0.075 / line;
    std::vector<double> widths;
    for (const models::Line& one : lines_)
        for (const models::Cell& cell : one.cells)
            if (cell.right_px > cell.left_px)
                widths.push_back(cell.right_px - cell.left_px);
    if (!widths.empty() && pixels_.cols > 0) {
        const auto middle = widths.begin() + static_cast<std::ptrdiff_t>(widths.size() / 2);
        std::nth_element(widths.begin(), middle, widths.end());
        const double room = *middle * viewport()->width() / pixels_.cols;
        size = std::min(size, room / CellStrip::leastCellFor(font(), 1));
    }
    return std::clamp(size, 1.4, 2.6);
}

SheetRoom StampView::room() const
{
    SheetRoom room;
    room.width = viewport()->width();
    room.height = viewport()->height();
    room.zoom = zoom_;
    room.strip_height = CellStrip::heightFor(font(), letterSize());
    room.least_cell = CellStrip::leastCellFor(font(), letterSize());
    return room;
}

void StampView::layOut()
{
    layout_ = layOutSheet(QSizeF(pixels_.cols, pixels_.rows), lines_, room());
    sheet_->resize(std::max(viewport()->width(), static_cast<int>(layout_.width)),
                   std::max(viewport()->height(), static_cast<int>(std::ceil(layout_.height))));
    scalePicture();
    layOutStrips();
    showPlace();
}

// The picture at its size on the screen, as far as that is worth its memory.
void StampView::scalePicture()
{
    constexpr double most_px = 6000;
    const double wanted = pixels_.cols * layout_.scale * devicePixelRatioF();
    const double scale =
        layout_.scale * devicePixelRatioF() * std::min(1.0, most_px / std::max(1.0, wanted));
    const cv::Size size(static_cast<int>(std::lround(pixels_.cols * scale)),
                        static_cast<int>(std::lround(pixels_.rows * scale)));
    if (!pixels_.empty() && scaled_.size() != QSize(size.width, size.height))
        scaled_ = QPixmap::fromImage(toned(pictureOf(pixels_, size), tones_));
}

void StampView::layOutStrips()
{
    while (strips_.size() < layout_.bands.size()) {
        auto strip = new CellStrip(sheet_);
        strip->setMouseTracking(true);  // for the sheet, to which its moves go on
        const std::size_t line = strips_.size();
        connect(strip, &CellStrip::cellClicked, this, [this, line](std::size_t cell) {
            setFocus(Qt::MouseFocusReason);
            Q_EMIT placed({line, cell});
        });
        strip->show();
        strips_.push_back(strip);
    }
    while (strips_.size() > layout_.bands.size()) {
        strips_.back()->deleteLater();
        strips_.back()->hide();
        strips_.pop_back();
    }
    for (std::size_t i = 0; i < strips_.size(); ++i) {
        const LineBand& band = layout_.bands[i];
        std::vector<QRectF> rects;
        for (const QRectF& cell : band.cells)
            rects.push_back(cell.translated(-band.strip.left(), -band.strip.top()));
        strips_[i]->setGeometry(band.strip.toAlignedRect());
        strips_[i]->setLetterSize(letterSize());
        const LineBeside beside{proposal_,
                                i < roles_.size() ? roles_[i] : std::vector<ShownRole>()};
        strips_[i]->showLine(lines_[i], rects, person_, beside);
    }
}

void StampView::showPlace()
{
    for (std::size_t i = 0; i < strips_.size(); ++i)
        strips_[i]->setInHand(
            i == place_.line ? std::optional<std::size_t>(place_.cell) : std::nullopt, hasFocus());
    if (place_.line < layout_.bands.size()) {
        const LineBand& band = layout_.bands[place_.line];
        const QRectF both = band.picture.united(band.strip);
        const int x = static_cast<int>(pointInHand().x());
        const int around = zoom_ > 1 ? viewport()->width() / 4 : 0;
        ensureVisible(x, static_cast<int>(both.top()), around, 0);
        ensureVisible(x, static_cast<int>(band.strip.bottom()), around, 0);
        const auto& cells = lines_[place_.line].cells;
        setAccessibleDescription(place_.cell < cells.size()
                                     ? cellSentence(cells[place_.cell], person_)
                                     : tr("after the last letter"));
    }
    sheet_->update();
    showMagnifier();
}

void StampView::paintSheet(QWidget* sheet)
{
    const Colours colours = coloursIn(palette());
    QPainter painter(sheet);
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    painter.fillRect(sheet->rect(), colours.table);
    if (scaled_.isNull()) {
        painter.setPen(colours.ink);
        const int bottom = layout_.bands.empty()
                               ? sheet->height() - 24
                               : static_cast<int>(layout_.bands.front().strip.top());
        const QRect room(24, layout_.bands.empty() ? 24 : 0, sheet->width() - 48, bottom);
        painter.drawText(room, Qt::AlignCenter | Qt::TextWordWrap, empty_words_);
        return;
    }
    const double ratio = scaled_.width() / (pixels_.cols * layout_.scale);
    const auto paint = [&](const QRectF& source, const QRectF& target) {
        const double step = layout_.scale * ratio;
        painter.drawPixmap(target, scaled_,
                           QRectF(0, source.top() * step, scaled_.width(), source.height() * step));
    };
    for (const LineBand& band : layout_.bands)
        paint(band.source, band.picture);
    paint(layout_.tail_source, layout_.tail_picture);
    paintInHand(painter);
}

QRectF StampView::letterAt(CellPlace place) const
{
    if (place.line >= layout_.bands.size() || place.cell >= lines_[place.line].cells.size() ||
        lines_[place.line].box_px.height <= 0)
        return {};
    const CellExtent extent = cellExtents(lines_[place.line])[place.cell];
    const models::Box& box = lines_[place.line].box_px;
    return {extent.left, box.y, std::max(0.0, extent.right - extent.left), box.height};
}

// Brackets around the letter in the picture that belongs to the cell in hand, and the same letter
// large below the last line where there is room for it.
void StampView::paintInHand(QPainter& painter) const
{
    const QRectF letter = letterAt(place_);
    if (letter.isEmpty())
        return;
    const LineBand& band = layout_.bands[place_.line];
    const double top = band.picture.top() + (letter.top() - band.source.top()) * layout_.scale;
    const double left = layout_.left + letter.left() * layout_.scale;
    const double right = layout_.left + letter.right() * layout_.scale;
    const double bottom = std::min(top + letter.height() * layout_.scale, band.picture.bottom());
    painter.setPen(QPen(coloursIn(palette()).hand, 2));
    const double leg = std::min(10.0, (bottom - top) / 4);
    for (const double x : {left, right}) {
        painter.drawLine(QPointF(x, top), QPointF(x, top + leg));
        painter.drawLine(QPointF(x, bottom - leg), QPointF(x, bottom));
    }
    const double below = layout_.top + layout_.height;
    const QRectF room(0, below, sheet_->width(), sheet_->height() - below);
    if (!magnifier_on_)
        paintLoupe(painter, pixels_, letter, room, (left + right) / 2, coloursIn(palette()));
}

bool StampView::eventFilter(QObject* watched, QEvent* event)
{
    if (watched == sheet_ && event->type() == QEvent::Paint) {
        paintSheet(sheet_);
        return true;
    }
    const QEvent::Type type = event->type();
    const bool mouse = type == QEvent::MouseButtonPress || type == QEvent::MouseMove ||
                       type == QEvent::MouseButtonRelease;
    if (watched == sheet_ && mouse)
        dragSheet(static_cast<QMouseEvent*>(event));
    if (watched == sheet_ && (type == QEvent::MouseMove || type == QEvent::Leave))
        followMouse(event);
    return QScrollArea::eventFilter(watched, event);
}

void StampView::resizeEvent(QResizeEvent* event)
{
    QScrollArea::resizeEvent(event);
    layOut();
}

void StampView::focusInEvent(QFocusEvent* event)
{
    QScrollArea::focusInEvent(event);
    showPlace();
}

void StampView::focusOutEvent(QFocusEvent* event)
{
    QScrollArea::focusOutEvent(event);
    as_it_is_ = false;
    showPlace();
}

void StampView::changeEvent(QEvent* event)
{
    QScrollArea::changeEvent(event);
    if (event->type() == QEvent::FontChange)
        layOut();
}

}  // namespace gui
