#include <algorithm>

#include "models/exchange/tei_cells.h"
#include "models/exchange/tei_line_attributes.h"
#include "models/exchange/tei_parser.h"
#include "models/notation_gap.h"

// How TeiParser reads line beginnings and what stands in <seg>.
namespace models {

namespace {

bool isWithoutLetter(const std::string& subtype)
{
    return subtype == "no-letter" || subtype == "doubtful-no-letter";
}

}  // namespace

void TeiParser::readLineBegin(const XmlNode& node)
{
    blank_ahead_ = false;
    if (!node.children.empty())
        refuseNode(node, "a line's beginning holds nothing");
    auto& lines = text_.reading.lines;
    lines.emplace_back();
    line_begun_ = line_begun_ || lines.size() == 1;
    ends_said_.push_back(readLineAttributes(node, lines.back()));
    XmlNode own;
    own.name = "lb";
    for (const auto& attribute : node.attributes)
        if (attribute.first == "n" || attribute.first == "break")
            own.attributes.push_back(attribute);
    const std::size_t mark = openMark(own);
    ++place_;
    closeMark(mark);
}

// Ends that a gap implies, and marks of lines that the writer sets by itself.
void TeiParser::finishEnds()
{
    auto& lines = text_.reading.lines;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        Line& line = lines[i];
        if (line.cells.empty())
            continue;
        if (!ends_said_[i].first && isOpenGap(line.cells.front()))
            line.left_end = LineEnd::CutOff;
        if (!ends_said_[i].second && isOpenGap(line.cells.back()))
            line.right_end = LineEnd::CutOff;
    }
    std::size_t number = line_begun_ ? 0 : 1;  // lines before the mark at hand
    const auto isUsual = [&](const TeiMark& mark) {
        if (mark.element != "lb")
            return false;
        ++number;
        const TeiAttributes usual = {{"n", std::to_string(number)}};
        return mark.attributes == usual && (lines.size() > 1 || saysLine(lines.front()));
    };
    auto& marks = text_.marks;
    marks.erase(std::remove_if(marks.begin(), marks.end(), isUsual), marks.end());
}

void TeiParser::readSegment(const XmlNode& node, const TeiContext& context)
{
    TeiContext inside = context;
    if (attributeOf(node, "resp"))
        inside.by = readerOf(node);
    if (attributeOf(node, "type") == "cell")
        return readCellSegment(node, inside);
    for (const auto& [name, value] : node.attributes)
        if (name != "resp")
            refuseNode(node, name + "=\"" + value + "\" needs type=\"cell\" beside it");
    if (node.attributes.empty())
        refuseNode(node, "a segment should say type=\"cell\" or resp");
    readChildren(node, inside);
}

// Exactly one cell: its letter as it stands, or one element that says it.
void TeiParser::readCellSegment(const XmlNode& node, const TeiContext& context)
{
    const bool bare =
        std::all_of(node.children.begin(), node.children.end(),
                    [](const auto& child) { return child.name.empty() || child.name == "g"; });
    const std::string subtype = attributeOf(node, "subtype").value_or("");
    const bool no_letter = isWithoutLetter(subtype);
    if (!subtype.empty() && !no_letter && subtype != "doubtful")
        refuseNode(node, "subtype should be doubtful, no-letter or doubtful-no-letter");
    const std::size_t before = place_, lines_before = text_.reading.lines.size();
    const std::size_t marks_before = text_.marks.size();
    line();
    const std::size_t cells_before = text_.reading.lines.back().cells.size();
    if (bare) {
        addLetter(no_letter ? "" : letterIn(node), context);
    } else {
        readChildren(node, context);
        if (attributeOf(node, "cert"))
            refuseNode(node, "the element inside says the certainty");
    }
    const auto& cells = text_.reading.lines.back().cells;
    const bool one = cells.size() == cells_before + 1 && text_.marks.size() == marks_before &&
                     place_ == before + 1 + (lines_before == 0);
    if (!one)
        refuseNode(node, "a cell is one letter or one stretch");
    finishCell(node, bare, text_.reading.lines.back().cells.back());
}

// What the segment's attributes say of its cell.
void TeiParser::finishCell(const XmlNode& node, bool bare, Cell& cell)
{
    const std::string subtype = attributeOf(node, "subtype").value_or("");
    const auto [left_px, right_px] = cellExtent(node);
    cell.left_px = left_px;
    cell.right_px = right_px;
    if (isWithoutLetter(subtype))
        cell.alternatives.clear();
    if (subtype.rfind("doubtful", 0) == 0 && cell.state == CellState::Clear)
        cell.state = CellState::Doubtful;
    const auto cert = attributeOf(node, "cert");
    const bool doubtful = cell.state == CellState::Doubtful;
    if (bare && cell.alternatives.size() == 1 && (cert || doubtful))
        cell.alternatives.front().certainty = cert ? *certaintyOf(*cert) : 0.6;
}

}  // namespace models
