#include "app/gui/own_icon.h"

#include <QFile>
#include <QPainter>
#include <QPainterPath>
#include <QRegularExpression>
#include <QXmlStreamReader>

// The drawings are linked in with a library, which has to be said once, outside any namespace.
static void takeDrawingsIn()
{
    Q_INIT_RESOURCE(icons);
}

namespace gui {

namespace {

constexpr double side_units = 24;  // of the drawings

QPainterPath pathOf(const QString& d)
{
    static const QRegularExpression part("[MLCZ]|-?[0-9.]+");
    QPainterPath path;
    QChar command;
    std::vector<double> numbers;
    auto parts = part.globalMatch(d);
    while (parts.hasNext()) {
        const QString text = parts.next().captured();
        if (text == "Z") {
            path.closeSubpath();
        } else if (text.front().isLetter()) {
            command = text.front();
            numbers.clear();
        } else {
            numbers.push_back(text.toDouble());
        }
        if (command == 'C' && numbers.size() == 6) {
            path.cubicTo(numbers[0], numbers[1], numbers[2], numbers[3], numbers[4], numbers[5]);
            numbers.clear();
        } else if (command != 'C' && numbers.size() == 2) {
            command == 'M' ? path.moveTo(numbers[0], numbers[1])
                           : path.lineTo(numbers[0], numbers[1]);
            command = 'L';
            numbers.clear();
        }
    }
    return path;
}

// Paths in the colour given, or, where none is, each in its own stroke and fill.
void paintDrawing(QPainter& painter, const QString& name, const QColor& colour)
{
    takeDrawingsIn();
    QFile file(":/icons/" + name + ".svg");
    if (!file.open(QIODevice::ReadOnly))
        return;
    QXmlStreamReader xml(&file);
    while (!xml.atEnd()) {
        if (xml.readNext() != QXmlStreamReader::StartElement || xml.name() != QLatin1String("path"))
            continue;
        const auto attributes = xml.attributes();
        const QString fill = attributes.value("fill").toString();
        const QString stroke = attributes.value("stroke").toString();
        const double width = attributes.value("stroke-width").toDouble();
        const QColor pen = colour.isValid() ? colour : QColor(stroke);
        const bool filled = !colour.isValid() && !fill.isEmpty() && fill != "none";
        painter.setBrush(filled ? QBrush(QColor(fill)) : QBrush(Qt::NoBrush));
        painter.setPen(width > 0 ? QPen(pen, width, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin)
                                 : QPen(Qt::NoPen));
        painter.drawPath(pathOf(attributes.value("d").toString()));
    }
}

QIcon drawn(const QString& name, const QColor& colour)
{
    QIcon icon;
    for (const int side : {16, 20, 24, 32, 40, 48, 64, 128}) {
        QPixmap pixmap(side, side);
        pixmap.fill(Qt::transparent);
        QPainter painter(&pixmap);
        painter.setRenderHint(QPainter::Antialiasing);
        painter.scale(side / side_units, side / side_units);
        paintDrawing(painter, name, colour);
        icon.addPixmap(pixmap);
    }
    return icon;
}

}  // namespace

QIcon ownIcon(const QString& name, const QColor& colour)
{
    return drawn(name, colour);
}

QIcon programIcon()
{
    return drawn("weftmark", {});
}

}  // namespace gui
