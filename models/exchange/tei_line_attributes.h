#pragma once

#include <string>
#include <utility>
#include <vector>

#include "models/exchange/tei_elements.h"
#include "models/exchange/xml_tree.h"
#include "models/reading.h"

namespace models {

// What <lb> says of its line beyond number and break. Returns of which ends it spoke, left and
// right. Throws TeiError.
std::pair<bool, bool> readLineAttributes(const XmlNode& node, Line& line);

// A cell's left and right edge from facs="px:L,R". Throws TeiError.
std::pair<double, double> cellExtent(const XmlNode& node);

// The reader of resp="by:X". Throws TeiError.
std::string readerOf(const XmlNode& node);

// The character of a <g>. Throws TeiError for a symbol that is not known.
std::string symbolCharacter(const XmlNode& node);

// The letter of an element that holds text or symbols alone, as it stands. Throws TeiError.
std::string letterIn(const XmlNode& node);

// The letter of a <desc type="guess">. Throws TeiError.
std::string guessOf(const XmlNode& node);

// Letters with the certainties that their elements say, or the usual ones.
std::vector<Alternative> weighedLetters(std::vector<Alternative> letters,
                                        const std::vector<const XmlNode*>& nodes);

// The same attributes in any order.
bool sameAttributes(const TeiAttributes& one, const TeiAttributes& other);

bool isOnlyBlank(const std::string& text);

}  // namespace models
