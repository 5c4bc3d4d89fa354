#pragma once

#include <cstddef>
#include <string>

#include "models/exchange/tei.h"
#include "models/exchange/tei_elements.h"
#include "models/exchange/xml_tree.h"

namespace models {

// Walks an edition's tree once, cell by cell, and throws TeiError at the first fault. For parseTei
// and parseTeiDocument alone.
class TeiParser {
public:
    // The text in the children of `block` (an <ab>).
    TeiText parse(const XmlNode& block);

private:
    void readChildren(const XmlNode& node, const TeiContext& context);
    void readNode(const XmlNode& node, const TeiContext& context);
    void readText(const XmlNode& node, const TeiContext& context);
    void readGap(const XmlNode& node, const TeiContext& context);
    void readSpace(const XmlNode& node, const TeiContext& context);
    void readChoice(const XmlNode& node, const TeiContext& context);
    void readSegment(const XmlNode& node, const TeiContext& context);
    void readCellSegment(const XmlNode& node, const TeiContext& context);
    static void finishCell(const XmlNode& node, bool bare, Cell& cell);
    void readSymbol(const XmlNode& node, const TeiContext& context);
    void readLineBegin(const XmlNode& node);
    void readOffObject(const XmlNode& node);
    void readState(const XmlNode& node, const TeiContext& context);

    Line& line();
    Cell& addCell(Cell cell, const TeiContext& context);
    void addLetter(const std::string& letter, const TeiContext& context);
    void flushBlank(const TeiContext& context);
    std::size_t openMark(const XmlNode& node);
    void closeMark(std::size_t mark);
    void finishEnds();

    TeiText text_;
    std::size_t place_ = 0;     // places so far
    std::size_t depth_ = 0;     // marks open
    bool blank_ahead_ = false;  // a line break in the source that may stand for a space
    bool line_begun_ = false;   // the first line was begun by <lb>
    std::vector<std::pair<bool, bool>> ends_said_;  // left, right, of each line
};

}  // namespace models
