#include "models/exchange/tei_cells.h"
#include "models/exchange/tei_line_attributes.h"
#include "models/exchange/tei_parser.h"

// How TeiParser reads stretches without letters.
namespace models {

namespace {

// Whether the writer writes the gap by itself from what the cell says.
bool isUsualGap(const XmlNode& node, const Cell& cell)
{
    for (const XmlNode& child : node.children)
        if (child.name == "certainty")
            return false;
    const XmlNode usual = parseXml(std::string("<x xmlns=\"http://www.tei-c.org/ns/1.0\">") +
                                   teiCells({cell}, 0, 1, {}) + "</x>");
    return sameAttributes(node.attributes, usual.children.front().attributes);
}

}  // namespace

void TeiParser::readGap(const XmlNode& node, const TeiContext& context)
{
    if (context.restored)
        refuseNode(node, "what is restored cannot be a gap");
    Cell cell = gapCell(node.attributes);
    if (attributeOf(node, "unit") == "line") {
        cell.least = 0;
        cell.most = std::nullopt;
        cell.about = false;
    }
    if (cell.most && (*cell.most < cell.least || *cell.most == 0))
        refuseNode(node, "the counts should be above 0, and atMost no less than atLeast");
    line();
    const bool kept = !isUsualGap(node, cell);
    const std::size_t mark = kept ? openMark(node) : 0;
    Cell& added = addCell(std::move(cell), context);
    std::vector<Alternative> guesses;
    std::vector<const XmlNode*> nodes;
    for (const XmlNode& child : node.children) {
        if (child.name == "desc" && !kept) {
            guesses.push_back({guessOf(child), 0});
            nodes.push_back(&child);
        } else if (child.name == "certainty") {
            checkedKind(child);
            readOffObject(child);
        } else if (!child.name.empty() || !isOnlyBlank(child.text)) {
            refuseNode(node, "a gap holds no letters");
        }
    }
    added.alternatives = weighedLetters(std::move(guesses), nodes);
    if (kept)
        closeMark(mark);
}

void TeiParser::readSpace(const XmlNode& node, const TeiContext& context)
{
    const auto quantity = attributeOf(node, "quantity");
    const int count = quantity ? *wholeNumberOf(*quantity) : 1;
    if (count < 1 || count > 1000 || attributeOf(node, "unit") != "character" ||
        !node.children.empty() || context.restored)
        refuseNode(node, "a blank is of 1 to 1000 characters and holds nothing");
    line();
    const std::size_t mark = openMark(node);
    for (int i = 0; i < count; ++i)
        addLetter(" ", context);
    closeMark(mark);
}

}  // namespace models
