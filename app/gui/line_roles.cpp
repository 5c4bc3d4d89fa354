#include "app/gui/line_roles.h"

#include <QObject>
#include <algorithm>

namespace gui {

using models::LineRole;
using models::RoleSpan;

namespace {

// The part that holds the cell; the last one for the place after the line's last cell.
RoleSpan& partWith(models::Line& line, std::size_t cell)
{
    if (line.spans.empty())
        line.spans.push_back({0, line.cells.size(), LineRole::Unknown, 1});
    for (RoleSpan& span : line.spans)
        if (cell >= span.first_cell && cell < span.end_cell)
            return span;
    return line.spans.back();
}

// Parts cover the line from end to end, so that every cell has one.
void closeGaps(models::Line& line)
{
    for (std::size_t i = 0; i < line.spans.size(); ++i) {
        line.spans[i].first_cell = i == 0 ? 0 : line.spans[i - 1].end_cell;
        if (i + 1 == line.spans.size())
            line.spans[i].end_cell = line.cells.size();
    }
}

// What is guessed of these cells; of each stretch the likeliest, which comes first.
void addGuesses(std::vector<ShownRole>& shown, const std::vector<RoleSpan>& guesses,
                std::size_t first, std::size_t end)
{
    for (const RoleSpan& guess : guesses) {
        const std::size_t from = std::max(guess.first_cell, first);
        const std::size_t to = std::min(guess.end_cell, end);
        const bool same =
            !shown.empty() && shown.back().first_cell == from && shown.back().end_cell == to;
        if (!same && from < to)
            shown.push_back({from, to, guess.role, true});
    }
}

}  // namespace

QString roleWord(LineRole role)
{
    switch (role) {
        case LineRole::Maker:
            return QObject::tr("maker");
        case LineRole::Date:
            return QObject::tr("date");
        case LineRole::Size:
            return QObject::tr("size");
        case LineRole::Contract:
            return QObject::tr("contract");
        case LineRole::Inspection:
            return QObject::tr("inspected");
        case LineRole::Pattern:
            return QObject::tr("pattern");
        case LineRole::Property:
            return QObject::tr("property");
        case LineRole::Owner:
            return QObject::tr("owner");
        case LineRole::Other:
            return QObject::tr("something else");
        case LineRole::Unknown:
            break;
    }
    return QObject::tr("not said");
}

std::vector<std::vector<ShownRole>> shownRoles(const std::vector<models::Line>& lines,
                                               const std::vector<std::vector<RoleSpan>>& guessed)
{
    const std::vector<RoleSpan> none;
    std::vector<std::vector<ShownRole>> shown(lines.size());
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const auto& guesses = i < guessed.size() ? guessed[i] : none;
        if (lines[i].spans.empty())
            addGuesses(shown[i], guesses, 0, lines[i].cells.size());
        for (const RoleSpan& span : lines[i].spans) {
            const std::size_t before = shown[i].size();
            if (span.role == LineRole::Unknown)
                addGuesses(shown[i], guesses, span.first_cell, span.end_cell);
            if (shown[i].size() == before && span.end_cell <= lines[i].cells.size())
                shown[i].push_back({span.first_cell, span.end_cell, span.role, false});
        }
    }
    return shown;
}

void partLineAt(models::Line& line, std::size_t cell)
{
    RoleSpan& part = partWith(line, cell);
    const auto at = std::find_if(line.spans.begin(), line.spans.end(),
                                 [&](const RoleSpan& span) { return &span == &part; });
    if (part.first_cell == cell) {
        std::prev(at)->end_cell = part.end_cell;
        line.spans.erase(at);
    } else {
        RoleSpan after = part;
        after.first_cell = cell;
        part.end_cell = cell;
        line.spans.insert(std::next(at), after);
    }
    closeGaps(line);
}

void setRoleAt(models::Line& line, std::size_t cell, LineRole role)
{
    RoleSpan& part = partWith(line, cell);
    part.role = role;
    part.probability = 1;
    closeGaps(line);
    const bool nothing = line.spans.size() == 1 && line.spans.front().role == LineRole::Unknown;
    if (nothing)
        line.spans.clear();
}

}  // namespace gui
