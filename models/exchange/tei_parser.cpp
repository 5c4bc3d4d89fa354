#include "models/exchange/tei_parser.h"

#include <algorithm>

#include "models/exchange/tei_line_attributes.h"
#include "models/letters.h"

namespace models {

namespace {

bool isBlank(const std::string& token)
{
    return token == " " || token == "\t" || token == "\n" || token == "\r\n" || token == "\r";
}

// Whether the writer writes the element by itself from what the cells say.
bool isUsualState(const XmlNode& node)
{
    const TeiAttributes& given = node.attributes;
    if (node.name == "unclear")
        return given.empty() || (given.size() == 1 && given.front().first == "cert");
    if (node.name == "del")
        return sameAttributes(given, {{"rend", "erasure"}});
    if (node.name == "add")
        return sameAttributes(given, {{"place", "overstrike"}});
    return sameAttributes(given, {{"reason", "lost"}}) ||
           sameAttributes(given, {{"reason", "lost"}, {"cert", "low"}}) ||
           sameAttributes(given, {{"reason", "lost"}, {"evidence", "previouseditor"}});
}

// One letter of a <choice>, in normal form unless it says that it is a cell as it stands.
Alternative choiceMember(const XmlNode& node)
{
    Alternative letter{letterIn(node), 0};
    if (attributeOf(node, "type") != "cell") {
        if (charactersOf(letter.text).size() != 1)
            refuseNode(node, "each of several readings must be one letter here");
        letter.text = normalForm(letter.text);
    }
    return letter;
}

}  // namespace

TeiText TeiParser::parse(const XmlNode& block)
{
    readChildren(block, {});
    finishEnds();
    return std::move(text_);
}

void TeiParser::readChildren(const XmlNode& node, const TeiContext& context)
{
    for (const XmlNode& child : node.children) {
        if (child.name.empty())
            readText(child, context);
        else
            readNode(child, context);
    }
}

void TeiParser::readNode(const XmlNode& node, const TeiContext& context)
{
    const TeiKind kind = checkedKind(node);
    if (kind == TeiKind::LineBegin)
        return readLineBegin(node);
    flushBlank(context);
    if (context.unclear && kind != TeiKind::Symbol)
        refuseNode(node, "in <unclear> only text or <g> may stand");
    switch (kind) {
        case TeiKind::Gap:
            return readGap(node, context);
        case TeiKind::Space:
            return readSpace(node, context);
        case TeiKind::Choice:
            return readChoice(node, context);
        case TeiKind::Segment:
            return readSegment(node, context);
        case TeiKind::Symbol:
            return readSymbol(node, context);
        case TeiKind::OffObject:
            return readOffObject(node);
        default:
            return readState(node, context);
    }
}

void TeiParser::readState(const XmlNode& node, const TeiContext& context)
{
    const bool kept = checkedKind(node) == TeiKind::Kept || !isUsualState(node);
    if (node.name == "unclear" && context.restored)
        refuseNode(node,
                   "a restored letter cannot be unclear; supplied with cert=\"low\" doubts it");
    const std::size_t mark = kept ? openMark(node) : 0;
    readChildren(node, contextInside(node.name, node.attributes, context));
    if (kept)
        closeMark(mark);
}

// The text as letters; a line break in the source with the blanks about it counts as one space, and
// as none at a line's beginning and end.
void TeiParser::readText(const XmlNode& node, const TeiContext& context)
{
    const std::vector<std::string> tokens = charactersOf(node.text);
    for (std::size_t i = 0; i < tokens.size();) {
        std::size_t end = i;
        bool broken = false;
        for (; end < tokens.size() && isBlank(tokens[end]); ++end)
            broken = broken || (tokens[end] != " " && tokens[end] != "\t");
        if (broken) {
            blank_ahead_ = true;
        } else if (end > i) {
            flushBlank(context);
            for (; i < end; ++i)
                addLetter(" ", context);
        }
        i = end;
        if (i >= tokens.size())
            return;
        if (isCombiningMark(tokens[i]))
            refuseNode(node, "an accent needs a letter before it");
        flushBlank(context);
        addLetter(normalForm(tokens[i++]), context);
    }
}

void TeiParser::flushBlank(const TeiContext& context)
{
    if (blank_ahead_ && !text_.reading.lines.empty() && !text_.reading.lines.back().cells.empty())
        addLetter(" ", context);
    blank_ahead_ = false;
}

Line& TeiParser::line()
{
    auto& lines = text_.reading.lines;
    if (lines.empty()) {
        lines.emplace_back();
        ends_said_.emplace_back();
        ++place_;
    }
    return lines.back();
}

Cell& TeiParser::addCell(Cell cell, const TeiContext& context)
{
    cell.erased = context.erased;
    cell.struck_over = context.struck_over;
    cell.seen_earlier = context.seen_earlier;
    cell.by = context.by;
    Line& current = line();
    current.cells.push_back(std::move(cell));
    ++place_;
    return current.cells.back();
}

void TeiParser::addLetter(const std::string& letter, const TeiContext& context)
{
    Cell cell = clearCell(letter);
    if (context.restored) {
        cell.state = CellState::Restored;
        cell.doubted = context.doubted;
    } else if (context.unclear) {
        cell.state = CellState::Doubtful;
        cell.alternatives.front().certainty = context.unclear_certainty;
    }
    addCell(std::move(cell), context);
}

void TeiParser::readChoice(const XmlNode& node, const TeiContext& context)
{
    std::vector<Alternative> letters;
    std::vector<const XmlNode*> nodes;
    for (const XmlNode& child : node.children) {
        if (child.name.empty() && !isOnlyBlank(child.text))
            refuseNode(child, "in <choice> only elements may stand");
        if (child.name.empty())
            continue;
        checkedKind(child);
        nodes.push_back(&child);
    }
    if (nodes.size() < 2)
        refuseNode(node, "a choice needs at least two readings");
    const std::string& kind = nodes.front()->name;
    if (kind != "unclear" && kind != "seg") {
        const std::size_t mark = openMark(node);
        for (const XmlNode* child : nodes)
            readNode(*child, context);
        return closeMark(mark);
    }
    for (const XmlNode* child : nodes) {
        if (child->name != kind)
            refuseNode(*child, "all readings of a choice are of one kind, here <" + kind + ">");
        letters.push_back(choiceMember(*child));
    }
    if (kind == "unclear" && context.restored)
        refuseNode(node, "a restored letter cannot be unclear");
    Cell cell;
    cell.state = context.restored    ? CellState::Restored
                 : kind == "unclear" ? CellState::Doubtful
                                     : CellState::Clear;
    cell.doubted = context.restored && context.doubted;
    cell.alternatives = weighedLetters(std::move(letters), nodes);
    addCell(std::move(cell), context);
}

void TeiParser::readSymbol(const XmlNode& node, const TeiContext& context)
{
    addLetter(symbolCharacter(node), context);
}

void TeiParser::readOffObject(const XmlNode& node)
{
    const std::size_t mark = openMark(node);
    for (const XmlNode& child : node.children) {
        if (!child.name.empty())
            refuseNode(child, "only text may stand in <" + node.name + "> here");
        text_.marks[mark].text += child.text;
    }
    closeMark(mark);
}

std::size_t TeiParser::openMark(const XmlNode& node)
{
    TeiMark mark;
    mark.element = node.name;
    mark.attributes = node.attributes;
    mark.first = mark.end = place_;
    mark.depth = depth_++;
    text_.marks.push_back(std::move(mark));
    return text_.marks.size() - 1;
}

void TeiParser::closeMark(std::size_t mark)
{
    text_.marks[mark].end = place_;
    --depth_;
}

TeiText parseTei(const std::string& fragment)
{
    if (fragment.size() > most_xml_bytes)
        throw TeiError("the text is too long");
    return TeiParser().parse(
        parseXml("<ab xmlns=\"http://www.tei-c.org/ns/1.0\">" + fragment + "</ab>"));
}

}  // namespace models
