#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

// A small XML document as a tree; the XML library stays in xml_tree.cpp.
namespace models {

struct XmlNode {
    std::string name;  // of an element of TEI's namespace; empty for text
    std::string text;  // when it is text
    std::vector<std::pair<std::string, std::string>> attributes;  // xml:id and the like by prefix
    std::vector<XmlNode> children;
    long line = 0;  // from 1
};

// Parses foreign XML whose elements are all of TEI's namespace. Comments and processing
// instructions are left out, CDATA is text. Nothing outside the text is opened; a document type is
// refused, so there are no entities but XML's own five. Throws TeiError where the text is longer
// than `most_xml_bytes`, is not UTF-8, is not well formed, or nests deeper than `deepest_nesting`.
XmlNode parseXml(const std::string& xml);

constexpr std::size_t most_xml_bytes = 8u << 20;
constexpr int deepest_nesting = 60;

// The value of an attribute; nullopt when it is not there.
std::optional<std::string> attributeOf(const XmlNode& node, const std::string& name);

// All text below the node.
std::string textOf(const XmlNode& node);

// Text and attribute values as XML. Throws std::invalid_argument where the text is not UTF-8 or
// holds a character that XML 1.0 has no way to write.
std::string escapedXml(const std::string& text);

// Any text as part of a URI and back; nullopt for a malformed one.
std::string percentEncoded(const std::string& text);
std::optional<std::string> percentDecoded(const std::string& text);

// The shortest text that is read as the same number. Throws std::invalid_argument if not finite.
std::string numberText(double number);
std::optional<double> numberOf(const std::string& text);

// A whole number of at most nine digits.
std::optional<int> wholeNumberOf(const std::string& text);

}  // namespace models
