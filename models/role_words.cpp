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
    {"REPAIRED", LineRole::Inspection},  // it was made before, as what is inspected was
    {"REPAIR", LineRole::Inspection},
    {"REPD", LineRole::Inspection},
    {"REP", LineRole::Inspection},
    {"ISSUED", LineRole::Inspection},  // and what is issued
    {"PROPERTY", LineRole::Property},
    {"PROP", LineRole::Property},
    {"NAME", LineRole::Owner},
    {"OWNER", LineRole::Owner},
    {"MAKER", LineRole::Maker},
    {"MADE", LineRole::Maker},
    {"MFD", LineRole::Date},
    {"MFG", LineRole::Date},
    {"DATE", LineRole::Date},
    {"DATED", LineRole::Date},
    {"LOT", LineRole::Other},
    {"BATCH", LineRole::Other},
};

// Before a number, of whatever it is.
constexpr std::string_view number_words[] = {"NO",  "NOS",    "NUMBER",  "NR",    "N\u00B0",
                                             "SER", "SERIAL", "N\u00BA", "\u2116"};

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

// Where a dot or colon parts a leading word from what is set right behind it (NO.1940, DATE:1941);
// nullopt where none does.
std::optional<std::size_t> cellsOfLead(const Line& line, const RoleWord& word)
{
    std::string lead;
    for (std::size_t i = word.first_cell; i + 1 < word.end_cell; ++i) {
        const std::string letter = letterOf(line.cells[i]);
        if ((letter == "." || letter == ":") && leadOf(lead))
            return i + 1;
        lead += letter;
    }
    return std::nullopt;
}

RoleWord wordOf(const Line& line, std::size_t first_cell, std::size_t end_cell)
{
    RoleWord word{{}, first_cell, end_cell};
    for (std::size_t i = first_cell; i < end_cell; ++i)
        word.text += letterOf(line.cells[i]);
    return word;
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
    for (std::size_t i = 0; i < words.size(); ++i)
        if (const auto part = cellsOfLead(line, words[i])) {
            const RoleWord behind = wordOf(line, *part, words[i].end_cell);
            words[i] = wordOf(line, words[i].first_cell, *part);
            words.insert(words.begin() + static_cast<std::ptrdiff_t>(i) + 1, behind);
        }
    return words;
}

std::optional<LineRole> leadOf(const std::string& word)
{
    const std::string_view text = bare(word);
    const auto* const found = std::find_if(std::begin(leads), std::end(leads),
                                           [&](const Lead& lead) { return lead.word == text; });
    if (found != std::end(leads))
        return found->role;
    return leadsNumber(word) ? std::optional(LineRole::Other) : std::nullopt;
}

bool leadsNumber(const std::string& word)
{
    return std::find(std::begin(number_words), std::end(number_words), bare(word)) !=
           std::end(number_words);
}

std::vector<std::string> leadWords()
{
    std::vector<std::string> words(std::begin(number_words), std::end(number_words));
    for (const Lead& lead : leads)
        words.emplace_back(lead.word);
    return words;
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
