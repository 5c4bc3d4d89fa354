#include "models/exchange/xml_tree.h"

#include <libxml/parser.h>
#include <libxml/tree.h>

#include <cmath>
#include <memory>

#include "models/exchange/tei.h"
#include "models/letters.h"

namespace models {

namespace {

constexpr const char* tei_namespace = "http://www.tei-c.org/ns/1.0";

using DocumentPointer = std::unique_ptr<xmlDoc, decltype(&xmlFreeDoc)>;
using ContextPointer = std::unique_ptr<xmlParserCtxt, decltype(&xmlFreeParserCtxt)>;

std::string stringOf(const xmlChar* text)
{
    return text ? reinterpret_cast<const char*>(text) : "";
}

[[noreturn]] void refuseAt(long line, const std::string& why)
{
    throw TeiError("line " + std::to_string(line) + ": " + why);
}

DocumentPointer parsedDocument(const std::string& xml)
{
    const ContextPointer context(xmlNewParserCtxt(), &xmlFreeParserCtxt);
    if (!context)
        throw std::bad_alloc();
    // Some complaints (an xml:id that is no name) would reach standard error past the options.
    context->sax->serror = [](void*, auto*) {};
    DocumentPointer document(
        xmlCtxtReadMemory(context.get(), xml.data(), static_cast<int>(xml.size()), nullptr, "UTF-8",
                          XML_PARSE_NONET | XML_PARSE_NOERROR | XML_PARSE_NOWARNING |
                              XML_PARSE_NOCDATA | XML_PARSE_COMPACT),
        &xmlFreeDoc);
    if (document)
        return document;
    const xmlError* error = xmlCtxtGetLastError(context.get());
    std::string why = error && error->message ? error->message : "it is not well-formed XML";
    while (!why.empty() && why.back() == '\n')
        why.pop_back();
    refuseAt(error ? error->line : 1, "not well-formed XML: " + why);
}

XmlNode elementOf(xmlNode* node)
{
    XmlNode element;
    element.line = xmlGetLineNo(node);
    element.name = stringOf(node->name);
    if (!node->ns || stringOf(node->ns->href) != tei_namespace)
        refuseAt(element.line, "<" + element.name + ">: not of TEI's namespace " + tei_namespace);
    for (xmlAttr* attribute = node->properties; attribute; attribute = attribute->next) {
        const std::unique_ptr<xmlChar, void (*)(void*)> value(
            xmlNodeListGetString(node->doc, attribute->children, 1), [](void* p) { xmlFree(p); });
        const std::string prefix =
            attribute->ns && attribute->ns->prefix ? stringOf(attribute->ns->prefix) + ":" : "";
        element.attributes.emplace_back(prefix + stringOf(attribute->name), stringOf(value.get()));
    }
    return element;
}

void addText(XmlNode& parent, const xmlNode* node)
{
    if (parent.children.empty() || !parent.children.back().name.empty()) {
        parent.children.emplace_back();
        parent.children.back().line = parent.line;
    }
    parent.children.back().text += stringOf(node->content);
}

XmlNode treeOf(xmlNode* node, int depth)
{
    XmlNode element = elementOf(node);
    if (depth > deepest_nesting)
        refuseAt(element.line, "<" + element.name + ">: elements nest too deep");
    for (xmlNode* child = node->children; child; child = child->next) {
        if (child->type == XML_ELEMENT_NODE)
            element.children.push_back(treeOf(child, depth + 1));
        else if (child->type == XML_TEXT_NODE || child->type == XML_CDATA_SECTION_NODE)
            addText(element, child);
        else if (child->type != XML_COMMENT_NODE && child->type != XML_PI_NODE)
            refuseAt(element.line, "<" + element.name + ">: only elements and text may stand here");
    }
    return element;
}

}  // namespace

XmlNode parseXml(const std::string& xml)
{
    if (xml.size() > most_xml_bytes)
        throw TeiError("the text is too long: at most " + std::to_string(most_xml_bytes) +
                       " bytes are read");
    if (const auto bad = firstBadByte(xml))
        throw TeiError("byte " + std::to_string(*bad + 1) + " is not UTF-8");
    if (xml.find("<!DOCTYPE") != std::string::npos || xml.find("<!ENTITY") != std::string::npos)
        throw TeiError("a document type is not taken: leave <!DOCTYPE ...> out");
    const DocumentPointer document = parsedDocument(xml);
    if (document->intSubset || document->extSubset)
        throw TeiError("a document type is not taken: leave <!DOCTYPE ...> out");
    xmlNode* root = xmlDocGetRootElement(document.get());
    if (!root)
        throw TeiError("there is no element");
    return treeOf(root, 0);
}

std::optional<std::string> attributeOf(const XmlNode& node, const std::string& name)
{
    for (const auto& [key, value] : node.attributes)
        if (key == name)
            return value;
    return std::nullopt;
}

std::string textOf(const XmlNode& node)
{
    std::string text = node.text;
    for (const XmlNode& child : node.children)
        text += textOf(child);
    return text;
}

}  // namespace models
