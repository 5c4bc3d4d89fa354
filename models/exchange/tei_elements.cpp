#include "models/exchange/tei_elements.h"

#include <algorithm>
#include <string_view>

#include "models/exchange/tei.h"
#include "models/letters.h"

namespace models {

namespace {

struct ElementRule {
    const char* name;
    TeiKind kind;
    std::string_view attributes;  // each between spaces
    const char* needed;           // an attribute that must be there
};

// After the EpiDoc Guidelines and the EpiDoc schema 9.8, narrowed to what marks on objects need.
constexpr ElementRule rules[] = {
    {"gap", TeiKind::Gap, " reason quantity extent atLeast atMost unit precision ", "reason"},
    {"space", TeiKind::Space, " quantity extent unit precision ", nullptr},
    {"unclear", TeiKind::State, " cert reason ", nullptr},
    {"supplied", TeiKind::State, " reason cert evidence ", "reason"},
    {"del", TeiKind::State, " rend ", nullptr},
    {"add", TeiKind::State, " place ", nullptr},
    {"choice", TeiKind::Choice, " ", nullptr},
    {"seg", TeiKind::Segment, " type subtype resp facs cert ", nullptr},
    {"g", TeiKind::Symbol, " type ", "type"},
    {"lb", TeiKind::LineBegin, " n break rend facs cert ana ", nullptr},
    {"certainty", TeiKind::OffObject, " match locus degree cert ", nullptr},
    {"ex", TeiKind::OffObject, " cert ", nullptr},
    {"corr", TeiKind::OffObject, " cert ", nullptr},
    {"reg", TeiKind::OffObject, " cert ", nullptr},
    {"expan", TeiKind::Kept, " cert ", nullptr},
    {"abbr", TeiKind::Kept, " type cert ", nullptr},
    {"am", TeiKind::Kept, " ", nullptr},
    {"sic", TeiKind::Kept, " ", nullptr},
    {"orig", TeiKind::Kept, " ", nullptr},
    {"surplus", TeiKind::Kept, " reason ", nullptr},
    {"subst", TeiKind::Kept, " ", nullptr},
    {"damage", TeiKind::Kept, " degree agent cert ", nullptr},
    {"hi", TeiKind::Kept, " rend ", nullptr},
    {"num", TeiKind::Kept, " value atLeast atMost type ", nullptr},
    {"orgName", TeiKind::Kept, " type ref key cert ", nullptr},
    {"persName", TeiKind::Kept, " type ref key cert ", nullptr},
    {"placeName", TeiKind::Kept, " type ref key cert ", nullptr},
    {"name", TeiKind::Kept, " type ref key cert ", nullptr},
    {"w", TeiKind::Kept, " part lemma ", nullptr},
    {"date", TeiKind::Kept,
     " when notBefore notAfter when-custom notBefore-custom notAfter-custom datingMethod cert "
     "precision type ",
     nullptr},
};

bool isOneOf(std::string_view value, std::string_view words)
{
    return value.find(' ') == std::string_view::npos && !value.empty() &&
           words.find(std::string(" ").append(value).append(" ")) != std::string_view::npos;
}

bool isNumberBetween(std::string_view digits, int least, int most)
{
    const auto number = wholeNumberOf(std::string(digits));
    return number && *number >= least && *number <= most;
}

// A date of XML Schema: year, year-month, year-month-day; the year has four digits here.
bool isSchemaDate(std::string_view date)
{
    if (date.size() != 4 && date.size() != 7 && date.size() != 10)
        return false;
    if (!isNumberBetween(date.substr(0, 4), 1, 9999))
        return false;
    if (date.size() == 4)
        return true;
    if (date[4] != '-' || !isNumberBetween(date.substr(5, 2), 1, 12))
        return false;
    if (date.size() == 7)
        return true;
    const int year = *wholeNumberOf(std::string(date.substr(0, 4)));
    const int month = *wholeNumberOf(std::string(date.substr(5, 2)));
    const bool leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
    const int days = month == 2 ? (leap ? 29 : 28) : 30 + (month + month / 8) % 2;
    return date[7] == '-' && isNumberBetween(date.substr(8, 2), 1, days);
}

// What an attribute's value should be; empty when it is that.
std::string valueFault(const std::string& element, const std::string& name,
                       const std::string& value)
{
    if (name == "cert" && !certaintyOf(value))
        return "a number from 0 to 1, or low, medium, high or unknown";
    if ((name == "quantity" || name == "atLeast" || name == "atMost") && !wholeNumberOf(value))
        return "a whole number";
    if ((name == "when" || name == "notBefore" || name == "notAfter") && !isSchemaDate(value))
        return "a date such as 1940, 1940-03 or 1940-03-15 (doubt goes into when-custom)";
    if (name == "unit" && !isOneOf(value, " character line "))
        return "character or line";
    if (name == "extent" && value != "unknown")
        return "unknown";
    if (name == "precision" && !isOneOf(value, " low "))
        return "low";
    if (element == "gap" && name == "reason" && !isOneOf(value, " lost illegible "))
        return "lost or illegible";
    if (element == "supplied" && name == "reason" &&
        !isOneOf(value, " lost omitted explanation subaudible undefined "))
        return "lost, omitted, explanation, subaudible or undefined";
    if (name == "break" && value != "no")
        return "no";
    return {};
}

const ElementRule* ruleOf(const std::string& name)
{
    const auto* const found =
        std::find_if(std::begin(rules), std::end(rules),
                     [&](const ElementRule& rule) { return rule.name == name; });
    return found == std::end(rules) ? nullptr : found;
}

// Counts that the schema lets pass though they say two things, or nothing.
void checkCounts(const XmlNode& node)
{
    const bool quantity = attributeOf(node, "quantity").has_value();
    const bool extent = attributeOf(node, "extent").has_value();
    const bool least = attributeOf(node, "atLeast").has_value();
    const bool range = least || attributeOf(node, "atMost").has_value();
    if (quantity + extent + range != 1)
        refuseNode(node,
                   "one of quantity, extent=\"unknown\" or atLeast with atMost says how many");
    if (!attributeOf(node, "unit"))
        refuseNode(node, "a count needs its unit: unit=\"character\" or unit=\"line\"");
    if (range && !least)
        refuseNode(node, "atMost needs atLeast beside it");
}

}  // namespace

const std::vector<TeiSymbol>& teiSymbols()
{
    static const std::vector<TeiSymbol> symbols = {{property_arrow, "broad-arrow"}};
    return symbols;
}

void refuseNode(const XmlNode& node, const std::string& why)
{
    const std::string what = node.name.empty() ? "text" : "<" + node.name + ">";
    throw TeiError("line " + std::to_string(node.line) + ", " + what + ": " + why);
}

std::optional<double> certaintyOf(const std::string& cert)
{
    if (cert == "low")
        return 0.3;
    if (cert == "medium" || cert == "unknown")
        return 0.6;
    if (cert == "high")
        return 0.9;
    const auto number = numberOf(cert);
    return number && *number >= 0 && *number <= 1 ? number : std::nullopt;
}

TeiKind checkedKind(const XmlNode& node)
{
    const ElementRule* rule = ruleOf(node.name);
    if (!rule)
        refuseNode(node, "this element has no place in the edition of a mark");
    for (const auto& [name, value] : node.attributes) {
        if (!isOneOf(name, rule->attributes))
            refuseNode(node, "the attribute " + name + " is not known here");
        const std::string fault = valueFault(node.name, name, value);
        if (!fault.empty())
            refuseNode(node, name + "=\"" + value + "\" should be " + fault);
    }
    if (rule->needed && !attributeOf(node, rule->needed))
        refuseNode(node, std::string("the attribute ") + rule->needed + " is missing");
    if (rule->kind == TeiKind::Gap || rule->kind == TeiKind::Space)
        checkCounts(node);
    if (node.name == "supplied" && attributeOf(node, "reason") != "lost")
        return TeiKind::OffObject;
    return rule->kind;
}

TeiContext contextInside(const std::string& element, const TeiAttributes& attributes,
                         const TeiContext& outside)
{
    const auto valueOf = [&](const char* name) -> std::string {
        for (const auto& [key, value] : attributes)
            if (key == name)
                return value;
        return {};
    };
    TeiContext inside = outside;
    if (element == "del")
        inside.erased = true;
    if (element == "add" && valueOf("place") == "overstrike")
        inside.struck_over = true;
    if (element == "unclear") {
        inside.unclear = true;
        inside.unclear_certainty = certaintyOf(valueOf("cert")).value_or(0.6);
    }
    if (element == "supplied" && valueOf("evidence") == "previouseditor") {
        inside.seen_earlier = true;
    } else if (element == "supplied") {
        inside.restored = true;
        inside.doubted = inside.doubted || valueOf("cert") == "low";
    }
    return inside;
}

}  // namespace models
