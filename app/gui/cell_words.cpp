#include "app/gui/cell_words.h"

#include <QObject>
#include <QStringList>
#include <cmath>

namespace gui {

using models::Cell;
using models::CellState;

namespace {

constexpr QChar dot_below(0x0323);
constexpr QChar open_box(0x2423);

QString letterOf(const Cell& cell)
{
    const QString text = QString::fromStdString(cell.alternatives.front().text);
    return text == " " ? QString(open_box) : text;
}

QString gapFace(const Cell& cell, const QString& unit)
{
    if (!cell.most)
        return cell.state == CellState::Lost ? "[- - -]" : "[+ + +]";
    if (*cell.most != cell.least)
        return QString("[%1-%2]").arg(cell.least).arg(*cell.most);
    if (cell.least > 4)
        return QString("[%1%2]").arg(cell.least).arg(unit);
    const QString run = unit.repeated(std::max(1, cell.least));
    return cell.state == CellState::Lost ? "[" + run + "]" : run;
}

QString numberWord(const Cell& cell)
{
    if (!cell.most)
        return QObject::tr("nobody knows how many");
    if (*cell.most != cell.least)
        return QObject::tr("%1 to %2 characters").arg(cell.least).arg(*cell.most);
    return cell.least == 1 ? QObject::tr("one character")
                           : QObject::tr("%1 characters").arg(cell.least);
}

}  // namespace

QString stateWord(const Cell& cell)
{
    switch (cell.state) {
        case CellState::Clear:
            return QObject::tr("clear");
        case CellState::Doubtful:
            return QObject::tr("unsure");
        case CellState::Traces:
            return QObject::tr("faint");
        case CellState::Lost:
            return QObject::tr("lost");
        case CellState::Restored:
            return cell.doubted ? QObject::tr("restored?") : QObject::tr("restored");
    }
    return {};
}

QString cellFace(const Cell& cell)
{
    const bool gone = cell.state == CellState::Lost || cell.state == CellState::Traces;
    if (gone || cell.alternatives.empty())
        return gapFace(cell, cell.state == CellState::Lost ? "." : "+");
    if (cell.state == CellState::Doubtful)
        return letterOf(cell) + dot_below;
    if (cell.state == CellState::Restored)
        return "[" + (letterOf(cell) == "." ? QString::fromUtf8("\u201C.\u201D") : letterOf(cell)) +
               (cell.doubted ? "?]" : "]");
    return letterOf(cell);
}

QString cellSentence(const Cell& cell, const std::string& person)
{
    const bool letter = cell.state != CellState::Lost && cell.state != CellState::Traces &&
                        !cell.alternatives.empty();
    QString what =
        letter ? QString::fromStdString(cell.alternatives.front().text) : numberWord(cell);
    if (what == " ")
        what = QObject::tr("a space");
    QString sentence = what + ", " + stateWord(cell);
    if (cell.by == person)
        sentence += QObject::tr(", confirmed by you");
    else if (models::isEngine(cell.by))
        sentence += QObject::tr(", seen by the engine");
    else if (!cell.by.empty())
        sentence += QObject::tr(", seen by %1").arg(QString::fromStdString(cell.by));
    if (letter && (cell.by != person || cell.state == CellState::Doubtful))
        sentence += " (" + shareWord(cell.alternatives.front().certainty) + ")";
    QStringList others;
    for (std::size_t i = letter ? 1 : 0; i < std::min<std::size_t>(cell.alternatives.size(), 5);
         ++i)
        others << QString::fromStdString(cell.alternatives[i].text) + " " +
                      shareWord(cell.alternatives[i].certainty);
    if (!others.isEmpty())
        sentence += QObject::tr("; or %1").arg(others.join(", "));
    return sentence;
}

QString turningSentence(const Cell& cell, const Cell& before, const std::string& person)
{
    if (cell.alternatives.empty() || before.alternatives.empty())
        return cellSentence(cell, person);
    Cell alone = cell;
    alone.alternatives.resize(1);
    QStringList all;
    for (const models::Alternative& one : before.alternatives) {
        const QString said = QString::fromStdString(one.text) + " " + shareWord(one.certainty);
        const bool in_hand = one.text == cell.alternatives.front().text;
        all << (in_hand ? QString::fromUtf8("\u203A%1\u2039").arg(said) : said);
    }
    return cellSentence(alone, person) + ".  " + all.join(",  ");
}

const models::Cell* differingCell(const Cell& cell, const models::Line& line,
                                  const models::Reading& proposal, const std::string& person)
{
    if (cell.by != person || cell.right_px <= cell.left_px)
        return nullptr;
    const double x = (cell.left_px + cell.right_px) / 2;
    const double y = line.box_px.y + line.box_px.height / 2;
    for (const models::Line& proposed : proposal.lines) {
        if (y < proposed.box_px.y || y >= proposed.box_px.y + proposed.box_px.height)
            continue;
        for (const Cell& seen : proposed.cells)
            if (x >= seen.left_px && x < seen.right_px)
                return cellFace(seen) == cellFace(cell) ? nullptr : &seen;
    }
    return nullptr;
}

QString endWord(models::LineEnd end)
{
    switch (end) {
        case models::LineEnd::Complete:
            return QObject::tr("complete");
        case models::LineEnd::CutOff:
            return QObject::tr("cut off");
        case models::LineEnd::Unknown:
            break;
    }
    return QObject::tr("not said");
}

QString shareWord(double probability)
{
    if (probability > 0 && probability < 0.01)
        return QObject::tr("less than 1 %");
    if (probability > 0.995)
        return QObject::tr("more than 99 %");
    return QString("%1 %").arg(std::lround(probability * 100));
}

}  // namespace gui
