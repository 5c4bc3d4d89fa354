#include "models/exchange/tei_line_attributes.h"

#include <algorithm>
#include <sstream>
#include <vector>

#include "models/archive/record_names.h"
#include "models/choice_weights.h"

// The attributes that say what everyday TEI has no word for.
namespace models {

namespace {

// Numbers of "px:1,2.5"; refuses another count of them.
std::vector<double> pixelsOf(const XmlNode& node, std::size_t count)
{
    const std::string value = attributeOf(node, "facs").value_or("");
    std::vector<double> numbers;
    std::istringstream parts(value.rfind("px:", 0) == 0 ? value.substr(3) : "");
    for (std::string part; std::getline(parts, part, ',');)
        if (const auto number = numberOf(part))
            numbers.push_back(*number);
    if (numbers.size() != count ||
        std::count(value.begin(), value.end(), ',') + 1 != static_cast<std::ptrdiff_t>(count))
        refuseNode(node, "facs should be px: and " + std::to_string(count) +
                             " numbers with commas between");
    return numbers;
}

RoleSpan spanOf(const XmlNode& node, const std::string& word)
{
    std::istringstream parts(word.rfind("role:", 0) == 0 ? word.substr(5) : "");
    std::string name, cells, probability;
    std::getline(parts, name, '/');
    std::getline(parts, cells, '/');
    std::getline(parts, probability);
    const std::size_t dash = cells.find('-');
    const auto role = lineRoleNamed(name);
    const auto first = wholeNumberOf(cells.substr(0, dash));
    const auto end =
        dash == std::string::npos ? std::nullopt : wholeNumberOf(cells.substr(dash + 1));
    const auto weight = probability.empty() ? std::optional<double>(1) : numberOf(probability);
    if (!role || !first || !end || !weight || !(*weight >= 0 && *weight <= 1))
        refuseNode(node, "ana=\"" + word + "\" should be a role such as role:maker/0-5/0.9");
    return {.first_cell = static_cast<std::size_t>(*first),
            .end_cell = static_cast<std::size_t>(*end),
            .role = *role,
            .probability = *weight};
}

// Whether the word is of this side of the line; sets the end.
bool readEnd(const std::string& word, const std::string& side, LineEnd& end)
{
    if (word == side + "-complete")
        end = LineEnd::Complete;
    else if (word == side + "-cut-off")
        end = LineEnd::CutOff;
    else if (word == side + "-open")
        end = LineEnd::Unknown;
    else
        return false;
    return true;
}

}  // namespace

std::pair<bool, bool> readLineAttributes(const XmlNode& node, Line& line)
{
    std::pair<bool, bool> said;
    std::istringstream words(attributeOf(node, "rend").value_or(""));
    for (std::string word; words >> word;) {
        const bool left = readEnd(word, "left", line.left_end);
        const bool right = !left && readEnd(word, "right", line.right_end);
        if (!left && !right)
            refuseNode(node, "rend=\"" + word +
                                 "\" should be left- or right- with complete, "
                                 "cut-off or open");
        said.first = said.first || left;
        said.second = said.second || right;
    }
    if (attributeOf(node, "facs")) {
        const std::vector<double> box = pixelsOf(node, 4);
        line.box_px = {.x = box[0], .y = box[1], .width = box[2], .height = box[3]};
    }
    if (const auto cert = attributeOf(node, "cert"))
        line.certainty = certaintyOf(*cert);
    std::istringstream roles(attributeOf(node, "ana").value_or(""));
    for (std::string word; roles >> word;)
        line.spans.push_back(spanOf(node, word));
    return said;
}

std::pair<double, double> cellExtent(const XmlNode& node)
{
    if (!attributeOf(node, "facs"))
        return {0, 0};
    const std::vector<double> edges = pixelsOf(node, 2);
    return {edges[0], edges[1]};
}

std::string readerOf(const XmlNode& node)
{
    const std::string value = attributeOf(node, "resp").value_or("");
    const auto name = value.rfind("by:", 0) == 0 ? percentDecoded(value.substr(3)) : std::nullopt;
    if (!name)
        refuseNode(node, "resp=\"" + value + "\" should be by: and a percent-encoded name");
    return *name;
}

std::string symbolCharacter(const XmlNode& node)
{
    if (!node.children.empty())
        refuseNode(node, "a symbol goes by its type and holds nothing");
    for (const TeiSymbol& symbol : teiSymbols())
        if (attributeOf(node, "type") == symbol.name)
            return symbol.character;
    refuseNode(node, "no symbol of this type is known; broad-arrow is");
}

std::string guessOf(const XmlNode& node)
{
    for (const auto& [name, value] : node.attributes)
        if ((name != "type" || value != "guess") && (name != "cert" || !certaintyOf(value)))
            refuseNode(node, name + "=\"" + value + "\" is not known here");
    for (const XmlNode& child : node.children)
        if (!child.name.empty())
            refuseNode(child, "only letters may stand in a guess");
    if (attributeOf(node, "type") != "guess")
        refuseNode(node, "a gap holds guesses alone: type=\"guess\"");
    return textOf(node);
}

// The letter of an element that holds text or a symbol alone, as it stands.
std::string letterIn(const XmlNode& node)
{
    std::string letter;
    for (const XmlNode& child : node.children) {
        if (child.name.empty()) {
            letter += child.text;
            continue;
        }
        if (child.name != "g")
            refuseNode(child, "only letters or <g> may stand in <" + node.name + "> here");
        checkedKind(child);
        letter += symbolCharacter(child);
    }
    return letter;
}

bool sameAttributes(const TeiAttributes& attributes, const TeiAttributes& usual)
{
    TeiAttributes a = attributes, b = usual;
    std::sort(a.begin(), a.end());
    std::sort(b.begin(), b.end());
    return a == b;
}

// Letters with their certainties: all said, or none.
std::vector<Alternative> weighedLetters(std::vector<Alternative> letters,
                                        const std::vector<const XmlNode*>& nodes)
{
    std::vector<std::string> texts;
    for (const Alternative& letter : letters)
        texts.push_back(letter.text);
    const std::vector<Alternative> usual = weighedChoice(texts);
    for (std::size_t i = 0; i < letters.size(); ++i) {
        const auto cert = attributeOf(*nodes[i], "cert");
        letters[i].certainty = cert ? *certaintyOf(*cert) : usual[i].certainty;
    }
    return letters;
}

bool isOnlyBlank(const std::string& text)
{
    return text.find_first_not_of(" \t\r\n") == std::string::npos;
}

}  // namespace models
