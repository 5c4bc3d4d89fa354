#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "models/exchange/xml_tree.h"

// Which elements and attributes of EpiDoc a reading's edition may hold, and what they mean for the
// cells in them; shared by the writer and the parser of TEI.
namespace models {

using TeiAttributes = std::vector<std::pair<std::string, std::string>>;

// What the elements around a place say of its cells.
struct TeiContext {
    bool erased = false, struck_over = false, seen_earlier = false;
    bool restored = false, doubted = false;
    bool unclear = false;
    double unclear_certainty = 0;
    std::string by;
};

// What becomes of an element.
enum class TeiKind {
    State,      // says what a reading says itself
    Kept,       // a mark around cells
    OffObject,  // a mark whose text does not stand on the object
    Gap,        // unread letters
    Space,      // blank letters
    Choice,     // one letter of several, or a mark
    Segment,    // <seg>: what a cell has beyond everyday markup
    Symbol,     // <g>
    LineBegin,  // <lb>
};

// The kind of an element with these attributes, or a TeiError that names what is wrong: an element
// or attribute that is not known here, a value outside its list, one that is missing.
TeiKind checkedKind(const XmlNode& node);

// The context inside an element that says something of its cells; others change nothing.
TeiContext contextInside(const std::string& element, const TeiAttributes& attributes,
                         const TeiContext& outside);

// A value of `cert`: a number from 0 to 1, or low 0.3, medium 0.6, high 0.9 (common practice, no
// source), unknown 0.6.
std::optional<double> certaintyOf(const std::string& cert);

// "line 3, <gap>: ..."
[[noreturn]] void refuseNode(const XmlNode& node, const std::string& why);

// Symbols that stand as characters in a reading and by name in TEI.
struct TeiSymbol {
    const char* character;
    const char* name;
};
const std::vector<TeiSymbol>& teiSymbols();

}  // namespace models
