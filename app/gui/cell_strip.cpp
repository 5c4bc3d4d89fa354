#include "app/gui/cell_strip.h"

#include <QMouseEvent>
#include <QPainter>
#include <QPainterPath>

#include "app/gui/cell_words.h"
#include "app/gui/look.h"

namespace gui {

namespace {

QFont letterFont(const QFont& base, double letter_size)
{
    QFont font = base;
    font.setPointSizeF(base.pointSizeF() * letter_size);
    font.setWeight(QFont::DemiBold);
    return font;
}

QFont wordFont(const QFont& base)
{
    QFont font = base;
    font.setPointSizeF(base.pointSizeF() * 0.86);
    return font;
}

double letterRow(const QFont& base, double letter_size)
{
    return QFontMetricsF(letterFont(base, letter_size)).height() + 4;
}

Qt::PenStyle barStyle(models::CellState state)
{
    switch (state) {
        case models::CellState::Doubtful:
            return Qt::DashLine;
        case models::CellState::Traces:
            return Qt::DotLine;
        case models::CellState::Lost:
            return Qt::NoPen;
        case models::CellState::Clear:
        case models::CellState::Restored:
            break;
    }
    return Qt::SolidLine;
}

}  // namespace

CellStrip::CellStrip(QWidget* parent) : QWidget(parent)
{
    setObjectName("cellStrip");
    setFocusPolicy(Qt::NoFocus);
}

double CellStrip::heightFor(const QFont& font, double letter_size)
{
    return letterRow(font, letter_size) + 8 + 2 * QFontMetricsF(wordFont(font)).height() + 9;
}

void CellStrip::setLetterSize(double letter_size)
{
    letter_size_ = letter_size;
    update();
}

double CellStrip::leastCellFor(const QFont& font, double letter_size)
{
    return QFontMetricsF(letterFont(font, letter_size)).horizontalAdvance("N") + 2;
}

void CellStrip::showLine(const models::Line& line, const std::vector<QRectF>& rects,
                         const std::string& person, const LineBeside& beside)
{
    line_ = line;
    rects_ = rects;
    person_ = person;
    roles_ = beside.roles;
    proposed_.clear();
    for (const models::Cell& cell : line.cells) {
        const models::Cell* engines = differingCell(cell, line, beside.proposal, person);
        proposed_.push_back(engines ? cellFace(*engines) : QString());
    }
    setAccessibleName(tr("Line: %1").arg(QString::fromStdString(models::plainText(line))));
    update();
}

void CellStrip::setInHand(std::optional<std::size_t> cell, bool has_focus)
{
    in_hand_ = cell;
    has_focus_ = has_focus;
    if (cell && *cell < line_.cells.size())
        setAccessibleDescription(cellSentence(line_.cells[*cell], person_));
    update();
}

QRectF CellStrip::placeInHand() const
{
    const double row = letterRow(font(), letter_size_);
    if (!in_hand_)
        return {};
    if (*in_hand_ < rects_.size()) {
        const QRectF& rect = rects_[*in_hand_];
        return {rect.left(), 0, rect.width(), row + 6};
    }
    const double left = rects_.empty() ? 12 : rects_.back().right() + 2;
    const double width = leastCellFor(font(), letter_size_);
    return {std::min(left, this->width() - width), 0, width, row + 6};
}

void CellStrip::paintCell(QPainter& painter, std::size_t index) const
{
    const Colours colours = coloursIn(palette());
    const models::Cell& cell = line_.cells[index];
    const QRectF& rect = rects_[index];
    const double row = letterRow(font(), letter_size_);
    const bool confirmed = cell.by == person_;
    const QString face = cellFace(cell);
    QFont face_font = letterFont(font(), letter_size_);
    const double wide = QFontMetricsF(face_font).horizontalAdvance(face);
    const double room = rect.width() - 2;
    if (wide > room && face.size() > 2)
        face_font.setPointSizeF(
            std::max(face_font.pointSizeF() * room / wide, font().pointSizeF() * 0.8));
    face_font.setWeight(confirmed ? QFont::Bold : QFont::Normal);
    painter.setFont(face_font);
    painter.setPen(confirmed ? colours.ink : colours.quiet);
    painter.drawText(QRectF(rect.left() - 20, 2, rect.width() + 40, row), Qt::AlignCenter, face);
    QPen bar(confirmed ? colours.mark : colours.quiet, confirmed ? 3.5 : 1.2, barStyle(cell.state),
             Qt::FlatCap);
    if (bar.style() == Qt::NoPen)
        return;
    painter.setPen(bar);
    painter.drawLine(QPointF(rect.left() + 1.5, row + 6), QPointF(rect.right() - 1.5, row + 6));
}

// A word for each run of cells in one state; a run too narrow for its word lets it stand out on
// both sides, and yields where the word before has taken the place.
void CellStrip::paintWords(QPainter& painter) const
{
    const Colours colours = coloursIn(palette());
    const double top = letterRow(font(), letter_size_) + 9;
    painter.setFont(wordFont(font()));
    const QFontMetricsF metrics(painter.font());
    double taken = 0;
    for (std::size_t i = 0; i < line_.cells.size();) {
        std::size_t end = i + 1;
        const QString word = stateWord(line_.cells[i]);
        while (end < line_.cells.size() && stateWord(line_.cells[end]) == word)
            ++end;
        const double middle = (rects_[i].left() + rects_[end - 1].right()) / 2;
        const double wide = metrics.horizontalAdvance(word);
        const double left = std::clamp(middle - wide / 2, 0.0, std::max(0.0, width() - wide));
        const bool clear = line_.cells[i].state == models::CellState::Clear;
        i = end;
        if (left < taken)
            continue;
        painter.setPen(clear ? colours.quiet : colours.ink);
        painter.drawText(QPointF(left, top + metrics.ascent()), word);
        taken = left + wide + metrics.horizontalAdvance(' ');
    }
}

// An upright stroke: the text ends here; a torn one: it was cut off here.
void CellStrip::paintEnds(QPainter& painter) const
{
    if (rects_.empty())
        return;
    const double row = letterRow(font(), letter_size_);
    const auto paint = [&](models::LineEnd end, double x) {
        if (end == models::LineEnd::Unknown)
            return;
        QPainterPath stroke(QPointF(x, 2));
        if (end == models::LineEnd::Complete)
            stroke.lineTo(x, row + 6);
        for (int i = 1; end == models::LineEnd::CutOff && i <= 6; ++i)
            stroke.lineTo(x + (i % 2 ? 4 : -4), 2 + (row + 4) * i / 6);
        painter.setPen(QPen(coloursIn(palette()).ink, 2));
        painter.setBrush(Qt::NoBrush);
        painter.drawPath(stroke);
    };
    paint(line_.left_end, std::max(5.0, rects_.front().left() - 6));
    paint(line_.right_end, std::min(width() - 5.0, rects_.back().right() + 6));
}

// The engine's sign, small, beside the person's letter where they differ.
void CellStrip::paintProposed(QPainter& painter, std::size_t index) const
{
    if (index >= proposed_.size() || proposed_[index].isEmpty())
        return;
    painter.setFont(wordFont(font()));
    painter.setPen(coloursIn(palette()).hand);
    const QFontMetricsF metrics(painter.font());
    const QString& sign = proposed_[index];
    const double wide = metrics.horizontalAdvance(sign);
    const double left = std::min(rects_[index].right() - wide - 1, width() - wide);
    painter.drawText(QPointF(left, 2 + metrics.ascent()), sign);
    const double middle = 2 + metrics.ascent() - metrics.xHeight() / 2;
    painter.drawLine(QPointF(left - 1, middle), QPointF(left + wide + 1, middle));
}

// Below the states: a rule under each part, and what it is for; a guess has a question mark.
void CellStrip::paintRoles(QPainter& painter) const
{
    const Colours colours = coloursIn(palette());
    painter.setFont(wordFont(font()));
    const QFontMetricsF metrics(painter.font());
    const double top = letterRow(font(), letter_size_) + 11 + metrics.height();
    for (const ShownRole& role : roles_) {
        const bool nothing = role.role == models::LineRole::Unknown;
        if ((nothing && role.guessed) || role.end_cell > rects_.size() ||
            role.first_cell >= role.end_cell)
            continue;
        const double left = rects_[role.first_cell].left() + 1.5;
        const double right = rects_[role.end_cell - 1].right() - 1.5;
        painter.setPen(QPen(role.guessed ? colours.quiet : colours.mark, role.guessed ? 1 : 2,
                            role.guessed ? Qt::DotLine : Qt::SolidLine));
        painter.drawLine(QPointF(left, top), QPointF(right, top));
        painter.setPen(role.guessed || nothing ? colours.quiet : colours.ink);
        const QString word = roleWord(role.role) + (role.guessed ? "?" : "");
        painter.drawText(QRectF(left, top, std::max(right - left, metrics.horizontalAdvance(word)),
                                metrics.height()),
                         Qt::AlignLeft | Qt::AlignTop, word);
    }
}

// Where the person has another part of the line begin: an upright stroke from above the letters
// down to the words for what the parts are for.
void CellStrip::paintPartEdges(QPainter& painter) const
{
    for (const models::RoleSpan& part : line_.spans) {
        if (part.first_cell == 0 || part.first_cell >= rects_.size())
            continue;
        const double x = (rects_[part.first_cell - 1].right() + rects_[part.first_cell].left()) / 2;
        painter.setPen(QPen(coloursIn(palette()).mark, 2));
        painter.drawLine(QPointF(x, 1), QPointF(x, height() - 1));
    }
}

void CellStrip::paintEvent(QPaintEvent*)
{
    const Colours colours = coloursIn(palette());
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.fillRect(rect(), in_hand_ ? colours.sheet : colours.ground);
    if (in_hand_) {
        const QRectF place = placeInHand().adjusted(0.5, 1, -0.5, 3);
        painter.setPen(QPen(colours.hand, has_focus_ ? 2.5 : 1));
        painter.setBrush(Qt::NoBrush);
        painter.drawRoundedRect(place, 3, 3);
    }
    for (std::size_t i = 0; i < line_.cells.size(); ++i)
        paintCell(painter, i);
    for (std::size_t i = 0; i < line_.cells.size(); ++i)
        paintProposed(painter, i);
    paintWords(painter);
    paintRoles(painter);
    paintPartEdges(painter);
    paintEnds(painter);
}

void CellStrip::mousePressEvent(QMouseEvent* event)
{
    std::size_t cell = rects_.size();
    for (std::size_t i = rects_.size(); i-- > 0;)
        if (event->position().x() < rects_[i].right())
            cell = i;
    Q_EMIT cellClicked(cell);
}

}  // namespace gui
