#include "app/gui/help_overlay.h"

#include <QEvent>
#include <QKeyEvent>
#include <QPainter>
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
    QFont font = this->font();
    const auto groups = keyGroups();
    const double column = (width() - 3 * page_margin) / 2;
    // The page is set as large as it fits.
    const QString cautions = handlingCaution() + " " + lampCaution();
    const QRectF foot(page_margin, 0, width() - 2 * page_margin, height() - page_margin / 2);
    QRectF caution_room;
    for (double size = font.pointSizeF() * 1.5; size > 6; size -= 0.5) {
        font.setPointSizeF(size);
        painter.setFont(font);
        caution_room = painter.boundingRect(foot, Qt::AlignBottom | Qt::TextWordWrap, cautions);
        if (pageHeight(groups, font) < caution_room.top() && longestRow(groups, font) < column)
            break;
    }
    painter.setPen(colours.ink);
    painter.drawText(foot, Qt::AlignBottom | Qt::TextWordWrap, cautions);
    painter.setPen(colours.rule);
    painter.drawLine(QPointF(page_margin, caution_room.top() - 4),
                     QPointF(width() - page_margin, caution_room.top() - 4));
    double y[2] = {page_margin, page_margin};
    for (std::size_t i = 0; i < groups.size(); ++i) {
        const std::size_t side = i < leftGroups(groups) ? 0 : 1;
        const double x = page_margin + static_cast<double>(side) * (column + page_margin);
        y[side] += paintGroup(painter, groups[i], {x, y[side]}, column);
    }
}

void HelpOverlay::keyPressEvent(QKeyEvent*)
{
    close();
}

void HelpOverlay::mousePressEvent(QMouseEvent*)
{
    close();
}

}  // namespace gui
