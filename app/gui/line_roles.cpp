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
    std::vector<std::vector<ShownRole>> shown(lines.size());
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const bool own = !lines[i].spans.empty();
        const std::vector<RoleSpan> none;
        const auto& spans = own ? lines[i].spans : i < guessed.size() ? guessed[i] : none;
        for (const RoleSpan& span : spans) {
            const bool same = !shown[i].empty() && shown[i].back().first_cell == span.first_cell &&
                              shown[i].back().end_cell == span.end_cell;
            if (same || span.end_cell > lines[i].cells.size())  // the likeliest comes first
                continue;
            shown[i].push_back({span.first_cell, span.end_cell, span.role, !own});
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
