#include "tests/bench/scripted_reader.h"

#include <algorithm>
#include <limits>

#include "models/typed_notation.h"

namespace bench {

namespace {

using Tokens = std::vector<std::string>;

const std::string doubt = "\x02";  // behind a letter: unsure
const std::string one_lost = "\x01";

// Letters, a doubt with its letter; "" for a gap of unknown length.
Tokens tokensOf(const models::Line& line)
{
    Tokens tokens;
    for (const models::Cell& cell : line.cells) {
        const bool gone = cell.state == models::CellState::Lost ||
                          cell.state == models::CellState::Traces || cell.alternatives.empty();
        if (!gone)
            tokens.push_back(cell.alternatives.front().text +
                             (cell.state == models::CellState::Doubtful ? doubt : ""));
        else if (!cell.most)
            tokens.emplace_back();
        else  // so many letters that nobody has read
            tokens.insert(tokens.end(), static_cast<std::size_t>(std::max(1, *cell.most)),
                          one_lost);
    }
    return tokens;
}

// As the samples' truth writes it, in the typed notation.
Tokens tokensOf(const std::string& typed)
{
    return tokensOf(models::parseTyped(typed).lines.at(0));
}

std::string letterOf(const std::string& token)
{
    return token.ends_with(doubt) ? token.substr(0, token.size() - doubt.size()) : token;
}

// What the truth is unsure of must be unsure; what the engine is unsure of may be, too.
bool says(const std::string& shown, const std::string& truth)
{
    return shown == truth || (shown.ends_with(doubt) && letterOf(shown) == truth);
}

enum class Step { Keep, Change, TakeOut, PutIn };

// The first step of the shortest way from what is shown to the truth, and how long the way is.
struct Way {
    std::size_t length = 0;
    Step first = Step::Keep;
    std::size_t cell = 0, letter = 0;  // at which it begins
};

Way wayFrom(const Tokens& shown, const Tokens& truth)
{
    const std::size_t rows = shown.size() + 1, columns = truth.size() + 1;
    std::vector<std::vector<std::size_t>> left(rows, std::vector<std::size_t>(columns, 0));
    for (std::size_t i = rows; i-- > 0;)
        for (std::size_t k = columns; k-- > 0;) {
            if (i + 1 == rows && k + 1 == columns)
                continue;
            std::size_t least = std::numeric_limits<std::size_t>::max();
            if (i + 1 < rows && k + 1 < columns)
                least = left[i + 1][k + 1] + (says(shown[i], truth[k]) ? 0 : 1);
            if (i + 1 < rows)
                least = std::min(least, left[i + 1][k] + 1);
            if (k + 1 < columns)
                least = std::min(least, left[i][k + 1] + 2);
            left[i][k] = least;
        }
    Way way{left[0][0], Step::Keep, 0, 0};
    std::size_t i = 0, k = 0;
    while (i + 1 < rows || k + 1 < columns) {
        const bool both = i + 1 < rows && k + 1 < columns;
        if (both && says(shown[i], truth[k]) && left[i][k] == left[i + 1][k + 1]) {
            ++i;
            ++k;
            continue;
        }
        way.cell = i;
        way.letter = k;
        way.first = both && left[i][k] == left[i + 1][k + 1] + 1       ? Step::Change
                    : i + 1 < rows && left[i][k] == left[i + 1][k] + 1 ? Step::TakeOut
                                                                       : Step::PutIn;
        return way;
    }
    return way;
}

}  // namespace

void ScriptedReader::press(Qt::Key key, Qt::KeyboardModifiers with)
{
    window_.key(key, with);
    QApplication::processEvents();
    ++presses_;
}

void ScriptedReader::sign(const QString& key)
{
    window_.type(key);
    QApplication::processEvents();
    ++presses_;
}

void ScriptedReader::type(const std::string& token, bool unread)
{
    if (token.empty() || token == one_lost)
        return sign(token.empty() ? "~" : "[");
    const QString text = QString::fromStdString(letterOf(token));
    if (QString("?+[~]|\\^").contains(text))
        sign("\\");
    window_.type(text == QString(QChar(0x2191)) ? QString("^") : text);
    QApplication::processEvents();
    ++(unread ? unread_ : presses_);
    if (token.ends_with(doubt))
        sign("?");
}

std::size_t ScriptedReader::lineCount() const
{
    return window_.session().stamp()->shown.lines.size();
}

ScriptedReader::Tokens ScriptedReader::shown(std::size_t line) const
{
    return tokensOf(window_.session().stamp()->shown.lines.at(line));
}

// By arrows from where one is, or from an end of the line.
void ScriptedReader::goToCell(std::size_t cell)
{
    const auto& editor = window_.session().editor();
    const auto at = static_cast<int>(editor.place().cell), to = static_cast<int>(cell);
    const auto end = static_cast<int>(editor.reading().lines[editor.place().line].cells.size());
    const int straight = std::abs(to - at), from_home = 1 + to, from_end = 1 + end - to;
    int here = at;
    if (from_home < straight && from_home <= from_end) {
        press(Qt::Key_Home);
        here = 0;
    } else if (from_end < straight) {
        press(Qt::Key_End);
        here = end;
    }
    for (; here < to; ++here)
        press(Qt::Key_Right);
    for (; here > to; --here)
        press(Qt::Key_Left);
}

bool ScriptedReader::mend(const Tokens& truth)
{
    constexpr int most_steps = 200;
    for (int step = 0; step < most_steps; ++step) {
        const std::size_t line = window_.session().editor().place().line;
        const Tokens now = shown(line);
        const Way way = wayFrom(now, truth);
        if (way.length == 0)
            return true;
        // Stretches of several letters are one cell on the screen.
        std::size_t cell = 0, passed = 0;
        for (const models::Cell& one : window_.session().stamp()->shown.lines[line].cells) {
            const bool gone = one.state == models::CellState::Lost ||
                              one.state == models::CellState::Traces || one.alternatives.empty();
            const std::size_t wide =
                gone && one.most ? static_cast<std::size_t>(std::max(1, *one.most)) : 1;
            if (passed + wide > way.cell)
                break;
            passed += wide;
            ++cell;
        }
        goToCell(cell);
        const bool unread =
            way.cell < now.size() && (now[way.cell] == one_lost || now[way.cell].empty());
        if (way.first == Step::TakeOut) {
            press(Qt::Key_Delete);
        } else if (way.first == Step::Change) {
            if (!unread && letterOf(truth[way.letter]) == letterOf(now[way.cell]))
                sign("?");
            else
                type(truth[way.letter], unread);
        } else {
            if (way.cell < now.size())
                press(Qt::Key_Insert);
            type(truth[way.letter], true);
        }
    }
    return false;
}

// Where all lines from here on say what they should, one key confirms the rest of the stamp; each
// unsure letter that was not looked at costs another press of it.
bool ScriptedReader::confirmAtOnce(const std::vector<std::string>& lines, std::size_t from)
{
    if (lineCount() != lines.size())
        return false;
    for (std::size_t i = from; i < lines.size(); ++i)
        if (wayFrom(shown(i), tokensOf(lines[i])).length > 0)
            return false;
    const gui::WorkSession& session = window_.session();
    const std::size_t unsure =
        gui::notLookedAt(*session.stamp(), session.person(), session.editor().place()).size();
    if (unsure + 1 > lines.size() - from)
        return false;
    for (std::size_t i = 0; i <= unsure; ++i)
        press(Qt::Key_Return, Qt::ControlModifier | Qt::ShiftModifier);
    return true;
}

// Lines that are none, below those that were confirmed: one by one, or several at once.
void ScriptedReader::takeOutFrom(std::size_t line)
{
    while (lineCount() > line) {
        const std::size_t before = lineCount();
        if (window_.session().editor().place().line < line || before > line + 1)
            press(Qt::Key_Delete, Qt::ControlModifier | Qt::ShiftModifier);
        else
            press(Qt::Key_Delete, Qt::ShiftModifier);
        if (lineCount() == before)
            break;
    }
}

bool ScriptedReader::read(const std::vector<std::string>& lines)
{
    bool right = true;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const Tokens truth = tokensOf(lines[i]);
        // A line that is less like this one than like the next has no business here.
        while (i < lineCount() && lineCount() - i > lines.size() - i)
            if (i + 1 < lineCount() &&
                wayFrom(shown(i + 1), truth).length < wayFrom(shown(i), truth).length)
                press(Qt::Key_Delete, Qt::ShiftModifier);
            else
                break;
        if (i >= lineCount())
            press(Qt::Key_L, Qt::ControlModifier);
        else if (window_.session().editor().place().line != i)
            press(Qt::Key_Down);
        right = mend(truth) && right;
        if (confirmAtOnce(lines, i))
            return right;
        press(Qt::Key_Return, Qt::ShiftModifier);
    }
    takeOutFrom(lines.size());
    return right && lineCount() == lines.size();
}

}  // namespace bench
