#include "models/role_words.h"

#include <algorithm>
#include <cctype>
#include <sstream>
#include <string_view>

#include "models/letters.h"

namespace models {

namespace {

struct Lead {
    std::string_view word;
    LineRole role;
};

// Common practice, no source.
constexpr Lead leads[] = {
    {"SIZE", LineRole::Size},
    {"SZ", LineRole::Size},
    {"LENGTH", LineRole::Size},
    {"WAIST", LineRole::Size},
    {"CHEST", LineRole::Size},
    {"HEIGHT", LineRole::Size},
    {"PATTERN", LineRole::Pattern},
    {"PATT", LineRole::Pattern},
    {"PAT", LineRole::Pattern},
    {"MARK", LineRole::Pattern},
    {"MK", LineRole::Pattern},
    {"SPEC", LineRole::Pattern},
    {"CONTRACT", LineRole::Contract},
    {"CONT", LineRole::Contract},
    {"ORDER", LineRole::Contract},
    {"REQN", LineRole::Contract},
    {"DEMAND", LineRole::Contract},
    {"TENDER", LineRole::Contract},
    {"INSP", LineRole::Inspection},
    {"INSPECTED", LineRole::Inspection},
    {"INSPECTION", LineRole::Inspection},
    {"EXAMINED", LineRole::Inspection},
    {"EXAM", LineRole::Inspection},
    {"EXD", LineRole::Inspection},
    {"VIEWED", LineRole::Inspection},
    {"PASSED", LineRole::Inspection},
    {"TESTED", LineRole::Inspection},
    {"TEST", LineRole::Inspection},
    {"NAME", LineRole::Owner},
    {"OWNER", LineRole::Owner},
    {"ISSUED", LineRole::Owner},
    {"MAKER", LineRole::Maker},
    {"MADE", LineRole::Maker},
    {"MFD", LineRole::Date},
    {"MFG", LineRole::Date},
    {"DATE", LineRole::Date},
    {"DATED", LineRole::Date},
    {"LOT", LineRole::Other},
    {"BATCH", LineRole::Other},
};

constexpr std::string_view firm_words[] = {"LTD",  "LIMITED",  "CO",  "COY",  "COMPANY",
                                           "BROS", "BROTHERS", "SON", "SONS", "WORKS",
                                           "MFG",  "MILLS",    "INC"};

// Without the dots and the colon behind it.
std::string_view bare(std::string_view word)
{
    while (!word.empty() && (word.back() == '.' || word.back() == ':' || word.back() == ','))
        word.remove_suffix(1);
    return word;
}

std::string letterOf(const Cell& cell)
{
    return cell.alternatives.empty() ? "\uFFFD" : capitalOf(cell.alternatives.front().text);
}

}  // namespace

std::vector<RoleWord> roleWordsOf(const Line& line)
{
    std::vector<RoleWord> words;
    bool within = false;
    for (std::size_t i = 0; i < line.cells.size(); ++i) {
        const std::string letter = letterOf(line.cells[i]);
        if (letter == " ") {
            within = false;
            continue;
        }
        if (!within)
            words.push_back({{}, i, i});
        within = true;
        words.back().text += letter;
        words.back().end_cell = i + 1;
    }
    return words;
}

std::optional<LineRole> leadOf(const std::string& word)
{
    const std::string_view text = bare(word);
    const auto* const found = std::find_if(std::begin(leads), std::end(leads),
                                           [&](const Lead& lead) { return lead.word == text; });
    return found == std::end(leads) ? std::nullopt : std::optional(found->role);
}

TextForm formOf(const std::string& text)
{
    TextForm form;
    for (const std::string& character : charactersOf(text)) {
        if (character.size() == 1 && std::isdigit(static_cast<unsigned char>(character[0])) != 0)
            ++form.digits;
        else if (character == "&")
            form.ampersand = true;
        else if (capitalOf(character) != character ||
                 (character.size() == 1 &&
                  std::isupper(static_cast<unsigned char>(character[0])) != 0))
            ++form.letters;
    }
    std::istringstream words(text);
    for (std::string word; words >> word;)
        if (std::find(std::begin(firm_words), std::end(firm_words), bare(word)) !=
            std::end(firm_words))
            ++form.firm_words;
    return form;
}

}  // namespace models
