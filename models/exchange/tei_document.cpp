#include <stdexcept>

#include "models/archive/record_names.h"
#include "models/exchange/tei.h"
#include "models/exchange/tei_elements.h"
#include "models/exchange/tei_parser.h"
#include "models/exchange/xml_tree.h"

// Whole TEI documents around a reading.
namespace models {

namespace {

struct Note {
    const char* type;
    std::string text;
};

std::vector<Note> notesOf(const Reading& reading)
{
    std::vector<Note> notes;
    if (reading.basis != Basis::Unknown)
        notes.push_back({"basis", nameOf(reading.basis)});
    if (!reading.read_at.empty())
        notes.push_back({"read-at", reading.read_at});
    if (reading.candidates_were_shown)
        notes.push_back({"candidates-were-shown", *reading.candidates_were_shown ? "yes" : "no"});
    if (!reading.layer.empty())
        notes.push_back({"layer", reading.layer});
    if (!reading.options.empty())
        notes.push_back({"options", reading.options});
    if (!reading.weights_sha256.empty())
        notes.push_back({"weights-sha256", reading.weights_sha256});
    return notes;
}

// The private prefixes in the edition, told to other programs in TEI's own way.
constexpr const char* prefixes =
    "    <encodingDesc>\n"
    "      <listPrefixDef>\n"
    "        <prefixDef ident=\"by\" matchPattern=\"(.*)\" replacementPattern=\"#$1\">"
    "<p>Who vouches for these letters: a person or a program by name, percent-encoded.</p>"
    "</prefixDef>\n"
    "        <prefixDef ident=\"px\" matchPattern=\"(.+)\" replacementPattern=\"#$1\">"
    "<p>Place in the straightened picture, in pixels: left and right edge of a letter; left, top, "
    "width and height of a line.</p></prefixDef>\n"
    "        <prefixDef ident=\"role\" matchPattern=\"([a-z]+)/(\\d+)-(\\d+)(/.+)?\" "
    "replacementPattern=\"#$1\"><p>What a stretch of the line is for: its first letter, counted "
    "from 0, the letter behind its last, and how probably.</p></prefixDef>\n"
    "      </listPrefixDef>\n"
    "    </encodingDesc>\n";

std::string headerOf(const TeiDocument& document)
{
    const Reading& reading = document.text.reading;
    std::string header = "  <teiHeader>\n    <fileDesc>\n      <titleStmt><title>" +
                         escapedXml(document.title) + "</title>";
    if (!reading.reader.empty())
        header += "<respStmt><resp>read by</resp><name>" + escapedXml(reading.reader) +
                  "</name></respStmt>";
    header += "</titleStmt>\n      <publicationStmt><p/></publicationStmt>\n";
    const std::vector<Note> notes = notesOf(reading);
    if (!notes.empty()) {
        header += "      <notesStmt>";
        for (const Note& note : notes)
            header += std::string("<note type=\"") + note.type + "\">" + escapedXml(note.text) +
                      "</note>";
        header += "</notesStmt>\n";
    }
    header += "      <sourceDesc><msDesc><msIdentifier><repository>" +
              escapedXml(document.repository) + "</repository><idno>" + escapedXml(document.idno) +
              "</idno></msIdentifier></msDesc></sourceDesc>\n    </fileDesc>\n";
    return header + prefixes + "  </teiHeader>\n";
}

const std::string xml_declaration = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";

std::string teiElement(const TeiDocument& document)
{
    return "<TEI xmlns=\"http://www.tei-c.org/ns/1.0\">\n" + headerOf(document) +
           "  <text><body><div type=\"edition\" xml:space=\"preserve\"><ab>" +
           writeTei(document.text) + "</ab></div></body></text>\n</TEI>\n";
}

// Elements of that name below the node, not those inside one another.
void collect(const XmlNode& node, const std::string& name, std::vector<const XmlNode*>& found)
{
    for (const XmlNode& child : node.children) {
        if (child.name == name)
            found.push_back(&child);
        else
            collect(child, name, found);
    }
}

std::vector<const XmlNode*> allOf(const XmlNode& node, const std::string& name)
{
    std::vector<const XmlNode*> found;
    collect(node, name, found);
    return found;
}

std::string firstText(const XmlNode& node, const std::string& name)
{
    const auto found = allOf(node, name);
    return found.empty() ? "" : textOf(*found.front());
}

void readNote(const XmlNode& note, Reading& reading)
{
    const std::string type = attributeOf(note, "type").value_or(""), text = textOf(note);
    if (type == "basis") {
        const auto basis = basisNamed(text);
        if (!basis)
            refuseNode(note, "'" + text + "' is not a basis of a reading");
        reading.basis = *basis;
    } else if (type == "candidates-were-shown") {
        if (text != "yes" && text != "no")
            refuseNode(note, "'" + text + "' should be yes or no");
        reading.candidates_were_shown = text == "yes";
    } else if (type == "read-at") {
        reading.read_at = text;
    } else if (type == "layer") {
        reading.layer = text;
    } else if (type == "options") {
        reading.options = text;
    } else if (type == "weights-sha256") {
        reading.weights_sha256 = text;
    }
}

void readReader(const XmlNode& header, Reading& reading)
{
    for (const XmlNode* statement : allOf(header, "respStmt"))
        if (firstText(*statement, "resp") == "read by")
            reading.reader = firstText(*statement, "name");
}

// The one edition of the document; deeper than `div` in `div` nothing is looked for.
const XmlNode& editionBlock(const XmlNode& root)
{
    std::vector<const XmlNode*> editions;
    for (const XmlNode* text : allOf(root, "text"))
        for (const XmlNode* div : allOf(*text, "div"))
            if (attributeOf(*div, "type") == "edition")
                editions.push_back(div);
    if (editions.size() != 1)
        refuseNode(root, "there should be one <div type=\"edition\">, there are " +
                             std::to_string(editions.size()));
    const auto blocks = allOf(*editions.front(), "ab");
    if (blocks.size() != 1)
        refuseNode(*editions.front(),
                   "there should be one <ab> in it, there are " + std::to_string(blocks.size()));
    return *blocks.front();
}

}  // namespace

std::string writeTeiDocument(const TeiDocument& document)
{
    return xml_declaration + teiElement(document);
}

std::string writeTeiCorpus(const std::string& title, const std::vector<TeiDocument>& documents)
{
    std::string corpus = xml_declaration +
                         "<teiCorpus xmlns=\"http://www.tei-c.org/ns/1.0\">\n"
                         "  <teiHeader><fileDesc><titleStmt><title>" +
                         escapedXml(title) +
                         "</title></titleStmt><publicationStmt><p/></publicationStmt>"
                         "<sourceDesc><p/></sourceDesc></fileDesc></teiHeader>\n";
    for (const TeiDocument& document : documents)
        corpus += teiElement(document);
    return corpus + "</teiCorpus>\n";
}

TeiDocument parseTeiDocument(const std::string& xml)
{
    const XmlNode root = parseXml(xml);
    if (root.name != "TEI")
        refuseNode(root, "a TEI document begins with <TEI>");
    TeiDocument document;
    document.text = TeiParser().parse(editionBlock(root));
    for (const XmlNode* header : allOf(root, "teiHeader")) {
        document.title = firstText(*header, "title");
        document.repository = firstText(*header, "repository");
        document.idno = firstText(*header, "idno");
        readReader(*header, document.text.reading);
        for (const XmlNode* note : allOf(*header, "note"))
            readNote(*note, document.text.reading);
    }
    return document;
}

}  // namespace models
