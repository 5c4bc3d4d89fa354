#include "app/gui/help_overlay.h"

#include <QEvent>
#include <QKeyEvent>
#include <QPainter>
#include <QWheelEvent>
#include <algorithm>

#include "app/gui/cautions.h"
#include "app/gui/key_list.h"
#include "app/gui/look.h"

namespace gui {

namespace {

constexpr double page_margin = 24;
constexpr double key_share = 0.36;  // of a column's width

QFont bolder(QFont font)
{
    font.setBold(true);
    return font;
}

// How many groups stand on the left: as many as make both sides about equally high.
std::size_t leftGroups(const std::vector<KeyGroup>& groups)
{
    std::vector<std::size_t> lines{0};
    for (const KeyGroup& group : groups)
        lines.push_back(lines.back() + group.keys.size() + 2);
    std::size_t best = 0;
    for (std::size_t i = 0; i < lines.size(); ++i)
        if (std::max(lines[i], lines.back() - lines[i]) <
            std::max(lines[best], lines.back() - lines[best]))
            best = i;
    return best;
}

double pageHeight(const std::vector<KeyGroup>& groups, const QFont& font)
{
    const double line = QFontMetricsF(font).height() + 2;
    double sides[2] = {0, 0};
    for (std::size_t i = 0; i < groups.size(); ++i)
        sides[i < leftGroups(groups) ? 0 : 1] +=
            line * (static_cast<double>(groups[i].keys.size()) + 2);
    return std::max(sides[0], sides[1]) + 2 * page_margin;
}

double longestRow(const std::vector<KeyGroup>& groups, const QFont& font)
{
    const QFontMetricsF keys(bolder(font)), words(font);
    double key = 0, does = 0;
    for (const KeyGroup& group : groups)
        for (const KeyHelp& help : group.keys) {
            key = std::max(key, keys.horizontalAdvance(help.keys) / key_share);
            does = std::max(does, words.horizontalAdvance(help.does) / (1 - key_share));
        }
    return std::max(key, does) + 10;
}

// One group of keys at `top_left`, not wider than `width`; returns its height.
double paintGroup(QPainter& painter, const KeyGroup& group, QPointF top_left, double width)
{
    const QFont plain = painter.font();
    const QFontMetricsF metrics(plain);
    const Colours colours = coloursIn(
        painter.device() ? static_cast<QWidget*>(painter.device())->palette() : QPalette());
    double y = top_left.y();
    painter.setFont(bolder(plain));
    painter.setPen(colours.mark);
    painter.drawText(QRectF(top_left.x(), y, width, metrics.height()), group.title);
    y += metrics.height() * 1.25;
    const double key_width = width * key_share;
    for (const KeyHelp& key : group.keys) {
        painter.setPen(colours.ink);
        painter.setFont(bolder(plain));
        painter.drawText(QRectF(top_left.x(), y, key_width, metrics.height()), key.keys);
        painter.setFont(plain);
        const QRectF room(top_left.x() + key_width + 8, y, width - key_width - 8, 400);
        const QRectF used = painter.boundingRect(room, Qt::TextWordWrap, key.does);
        painter.drawText(room, Qt::TextWordWrap, key.does);
        y += std::max(metrics.height(), used.height()) + 2;
    }
    painter.setFont(plain);
    return y - top_left.y() + metrics.height() * 0.7;
}

}  // namespace

HelpOverlay::HelpOverlay(QWidget* parent) : QWidget(parent)
{
    setObjectName("helpOverlay");
    setFocusPolicy(Qt::StrongFocus);
    QString all;
    for (const KeyGroup& group : keyGroups())
        for (const KeyHelp& key : group.keys)
            all += key.keys + ": " + key.does + ". ";
    all += handlingCaution() + " " + lampCaution();
    setAccessibleName(tr("The keys"));
    setAccessibleDescription(all);
    parent->installEventFilter(this);
    hide();
}

void HelpOverlay::open()
{
    scrolled_ = 0;
    setGeometry(parentWidget()->rect());
    raise();
    show();
    setFocus(Qt::OtherFocusReason);
}

void HelpOverlay::close()
{
    hide();
    Q_EMIT closed();
}

bool HelpOverlay::event(QEvent* event)
{
    // While it is up, no key is a shortcut of the window below.
    if (event->type() == QEvent::ShortcutOverride)
        event->accept();
    return QWidget::event(event);
}

bool HelpOverlay::eventFilter(QObject* watched, QEvent* event)
{
    if (watched == parentWidget() && event->type() == QEvent::Resize)
        setGeometry(parentWidget()->rect());
    return QWidget::eventFilter(watched, event);
}

void HelpOverlay::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Colours colours = coloursIn(palette());
    painter.fillRect(rect(), colours.sheet);
    painter.setPen(QPen(colours.mark, 2));
    painter.drawRect(rect().adjusted(1, 1, -1, -1));
    const auto groups = keyGroups();
    // In two columns, as large as they fit; else in one that is scrolled.
    QFont font = this->font();
    const double half = (width() - 3 * page_margin) / 2;
    const double least = font.pointSizeF() * 0.8;
    bool fits = false;
    double foot_top = 0;
    for (double size = font.pointSizeF() * 1.5; !fits && size > least; size -= 0.5) {
        font.setPointSizeF(size);
        painter.setFont(font);
        foot_top = footRoom(painter, {}).top();
        fits = pageHeight(groups, font) < foot_top && longestRow(groups, font) < half;
    }
    if (fits)
        scrolled_ = 0;
    else
        painter.setFont(this->font());
    const QString more =
        fits ? QString() : tr("Down and PgDn show the rest, any other key closes.");
    const QRectF foot = paintFoot(painter, more);
    painter.setClipRect(QRectF(0, 2, width(), foot.top() - 8));
    double y[2] = {page_margin - scrolled_, page_margin - scrolled_};
    const std::size_t left = fits ? leftGroups(groups) : groups.size();
    for (std::size_t i = 0; i < groups.size(); ++i) {
        const std::size_t side = i < left ? 0 : 1;
        const double x = page_margin + static_cast<double>(side) * (half + page_margin);
        y[side] +=
            paintGroup(painter, groups[i], {x, y[side]}, fits ? half : width() - 2 * page_margin);
    }
    page_step_ = foot.top() - 2 * page_margin;
    most_scrolled_ = fits ? 0 : std::max(0.0, y[0] + scrolled_ - foot.top() + 8);
}

QString HelpOverlay::footWords(const QString& more) const
{
    const QString cautions = handlingCaution() + " " + lampCaution();
    return more.isEmpty() ? cautions : more + "\n" + cautions;
}

// What the words at the foot of the page take.
QRectF HelpOverlay::footRoom(QPainter& painter, const QString& more) const
{
    const QRectF foot(page_margin, 0, width() - 2 * page_margin, height() - page_margin / 2);
    return painter.boundingRect(foot, Qt::AlignBottom | Qt::TextWordWrap, footWords(more));
}

QRectF HelpOverlay::paintFoot(QPainter& painter, const QString& more) const
{
    const Colours colours = coloursIn(palette());
    const QRectF foot = footRoom(painter, more);
    painter.setPen(colours.ink);
    painter.drawText(foot, Qt::AlignBottom | Qt::TextWordWrap, footWords(more));
    painter.setPen(colours.rule);
    painter.drawLine(QPointF(page_margin, foot.top() - 4),
                     QPointF(width() - page_margin, foot.top() - 4));
    return foot;
}

void HelpOverlay::keyPressEvent(QKeyEvent* event)
{
    const double line = QFontMetricsF(font()).height() * 3;
    const int key = event->key();
    const double by = key == Qt::Key_PageDown ? page_step_
                      : key == Qt::Key_PageUp ? -page_step_
                      : key == Qt::Key_Down   ? line
                      : key == Qt::Key_Up     ? -line
                                              : 0;
    if (by == 0 || most_scrolled_ <= 0)
        return close();
    scrolled_ = std::clamp(scrolled_ + by, 0.0, most_scrolled_);
    update();
}

void HelpOverlay::wheelEvent(QWheelEvent* event)
{
    scrolled_ = std::clamp(scrolled_ - event->angleDelta().y() / 2.0, 0.0, most_scrolled_);
    update();
}

void HelpOverlay::mousePressEvent(QMouseEvent*)
{
    close();
}

}  // namespace gui
