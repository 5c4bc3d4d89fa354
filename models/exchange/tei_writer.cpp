#include "models/exchange/tei_writer.h"

#include <cstdlib>
#include <stdexcept>

#include "models/archive/record_names.h"
#include "models/exchange/tei_cells.h"
#include "models/notation_gap.h"

// Lines and marks as TEI; the markup of single cells is in tei_cells.cpp.
namespace models {

namespace {

[[noreturn]] void refuseMark(const TeiMark& mark)
{
    throw std::invalid_argument("the mark <" + mark.element + "> does not fit the lines");
}

// Around a run of cells, the outermost first; neighbours with the same one share it.
constexpr int wrappers = 5;

// What the wrapper at `level` says of a cell; empty when there is nothing to say.
std::string wrapperOf(const Cell& cell, const TeiContext& context, int level)
{
    switch (level) {
        case 0:
            return cell.by == context.by ? "" : "seg resp=\"by:" + percentEncoded(cell.by) + "\"";
        case 1:
            return cell.erased && !context.erased ? "del rend=\"erasure\"" : "";
        case 2:
            return cell.struck_over && !context.struck_over ? "add place=\"overstrike\"" : "";
        case 3:
            return cell.seen_earlier && !context.seen_earlier
                       ? "supplied reason=\"lost\" evidence=\"previouseditor\""
                       : "";
        default:
            if (cell.state != CellState::Restored || context.restored)
                return "";
            return cell.doubted ? "supplied reason=\"lost\" cert=\"low\""
                                : "supplied reason=\"lost\"";
    }
}

std::string endRend(const char* side, LineEnd end, bool gap_says_cut_off)
{
    if (end == LineEnd::Complete)
        return std::string(side) + "-complete";
    if (end == LineEnd::CutOff)
        return gap_says_cut_off ? "" : std::string(side) + "-cut-off";
    return gap_says_cut_off ? std::string(side) + "-open" : "";
}

std::string roleText(const RoleSpan& span)
{
    if (!(span.probability >= 0 && span.probability <= 1))
        throw std::invalid_argument("a role's probability is not between 0 and 1");
    std::string text = std::string("role:") + nameOf(span.role) + "/" +
                       std::to_string(span.first_cell) + "-" + std::to_string(span.end_cell);
    return span.probability == 1 ? text : text + "/" + numberText(span.probability);
}

void append(std::string& words, const std::string& word)
{
    if (!word.empty())
        words.append(words.empty() ? "" : " ").append(word);
}

// What <lb> says beyond number and break.
std::string lineDetails(const Line& line)
{
    std::string text, rend, roles;
    const auto& cells = line.cells;
    append(rend, endRend("left", line.left_end, !cells.empty() && isOpenGap(cells.front())));
    append(rend, endRend("right", line.right_end, !cells.empty() && isOpenGap(cells.back())));
    for (const RoleSpan& span : line.spans)
        append(roles, roleText(span));
    if (!rend.empty())
        text += " rend=\"" + rend + "\"";
    if (line.box_px != Box{})
        text += " facs=\"px:" + numberText(line.box_px.x) + "," + numberText(line.box_px.y) + "," +
                numberText(line.box_px.width) + "," + numberText(line.box_px.height) + "\"";
    if (line.certainty)
        text += " cert=\"" + teiCertainty(*line.certainty) + "\"";
    return roles.empty() ? text : text + " ana=\"" + roles + "\"";
}

std::string attributesText(const TeiAttributes& attributes)
{
    std::string text;
    for (const auto& [name, value] : attributes)
        text += " " + name + "=\"" + escapedXml(value) + "\"";
    return text;
}

}  // namespace

bool saysLine(const Line& line)
{
    return line.cells.empty() || !lineDetails(line).empty();
}

TeiWriter::TeiWriter(const TeiText& text) : lines_(text.reading.lines), marks_(text.marks)
{
    for (std::size_t line = 0; line < lines_.size(); ++line) {
        places_.push_back({line, std::nullopt});
        for (std::size_t cell = 0; cell < lines_[line].cells.size(); ++cell)
            places_.push_back({line, cell});
    }
}

std::string TeiWriter::write()
{
    writeStretch(0, places_.size(), 0, {});
    if (next_mark_ != marks_.size())
        refuseMark(marks_[next_mark_]);
    return std::move(out_);
}

// Places from <= i < to with the marks of `depth` among them.
void TeiWriter::writeStretch(std::size_t from, std::size_t to, std::size_t depth,
                             const TeiContext& context)
{
    if (depth > static_cast<std::size_t>(deepest_nesting))
        throw std::invalid_argument("marks nest too deep");
    std::size_t place = from;
    while (next_mark_ < marks_.size() && marks_[next_mark_].depth == depth) {
        const TeiMark& mark = marks_[next_mark_];
        if (mark.first < place || mark.end < mark.first || mark.end > to)
            refuseMark(mark);
        writePlaces(place, mark.first, context);
        ++next_mark_;
        writeMark(mark, context);
        place = mark.end;
    }
    if (next_mark_ < marks_.size() && marks_[next_mark_].depth > depth)
        refuseMark(marks_[next_mark_]);
    writePlaces(place, to, context);
}

void TeiWriter::writeMark(const TeiMark& mark, const TeiContext& context)
{
    if (mark.element == "lb") {
        if (mark.end != mark.first + 1 || places_[mark.first].cell)
            refuseMark(mark);
        out_ += "<lb" + attributesText(mark.attributes) +
                lineDetails(lines_[places_[mark.first].line]) + "/>";
        return;
    }
    const std::string opening = "<" + mark.element + attributesText(mark.attributes) + ">";
    const std::size_t before = out_.size();
    out_ += opening;
    // A gap and a blank stand for their cells; the others hold theirs.
    const bool stands_for_cells = mark.element == "gap" || mark.element == "space";
    if (stands_for_cells && !fitsTeiMark(mark, cellsOf(mark)))
        refuseMark(mark);
    out_ += escapedXml(mark.text);
    writeStretch(stands_for_cells ? mark.end : mark.first, mark.end, mark.depth + 1,
                 contextInside(mark.element, mark.attributes, context));
    if (out_.size() == before + opening.size())
        out_.insert(out_.size() - 1, "/");
    else
        out_ += "</" + mark.element + ">";
}

std::vector<Cell> TeiWriter::cellsOf(const TeiMark& mark) const
{
    std::vector<Cell> cells;
    for (std::size_t place = mark.first; place < mark.end; ++place) {
        if (!places_[place].cell)
            refuseMark(mark);
        cells.push_back(lines_[places_[place].line].cells[*places_[place].cell]);
    }
    return cells;
}

void TeiWriter::writePlaces(std::size_t from, std::size_t to, const TeiContext& context)
{
    while (from < to) {
        const std::size_t line = places_[from].line;
        if (!places_[from].cell) {
            writeLineBegin(line);
            ++from;
            continue;
        }
        std::size_t end = from;
        while (end < to && places_[end].cell && places_[end].line == line)
            ++end;
        writeCells(line, *places_[from].cell, *places_[end - 1].cell + 1, 0, context);
        from = end;
    }
}

// A single line needs no <lb> where it has nothing to say.
void TeiWriter::writeLineBegin(std::size_t line)
{
    const std::string details = lineDetails(lines_[line]);
    if (lines_.size() > 1 || saysLine(lines_[line]))
        out_ += "<lb n=\"" + std::to_string(line + 1) + "\"" + details + "/>";
}

void TeiWriter::writeCells(std::size_t line, std::size_t from, std::size_t to, int level,
                           const TeiContext& context)
{
    const auto& cells = lines_[line].cells;
    if (level == wrappers) {
        try {
            out_ += teiCells(cells, from, to, context);
        } catch (const std::invalid_argument& error) {
            throw std::invalid_argument("line " + std::to_string(line + 1) + ": " + error.what());
        }
        return;
    }
    while (from < to) {
        const std::string wrapper = wrapperOf(cells[from], context, level);
        std::size_t end = from + 1;
        while (end < to && wrapperOf(cells[end], context, level) == wrapper)
            ++end;
        if (!wrapper.empty())
            out_ += "<" + wrapper + ">";
        writeCells(line, from, end, level + 1, context);
        if (!wrapper.empty())
            out_ += "</" + wrapper.substr(0, wrapper.find(' ')) + ">";
        from = end;
    }
}

std::string writeTei(const TeiText& text)
{
    return TeiWriter(text).write();
}

}  // namespace models
