#include "models/spreadsheet_harm.h"

#include <algorithm>
#include <regex>

#include "models/edtf.h"
#include "models/letters.h"

namespace models {

namespace {

constexpr std::size_t longest_harm = 60;  // bytes; no harm known is longer
constexpr std::size_t longest_date = 32;

std::size_t lineOf(const std::string& text, std::size_t at)
{
    std::size_t line = 1;
    for (std::size_t i = 0; i < at && i < text.size(); ++i) {
        const bool lone_return = text[i] == '\r' && (i + 1 == text.size() || text[i + 1] != '\n');
        line += text[i] == '\n' || lone_return ? 1 : 0;
    }
    return line;
}

bool looksLikeUtf16(const std::string& text)
{
    if (text.rfind("\xFF\xFE", 0) == 0 || text.rfind("\xFE\xFF", 0) == 0)
        return true;
    const std::string head = text.substr(0, 200);
    return std::count(head.begin(), head.end(), '\0') * 3 > static_cast<long>(head.size());
}

// Pairs of letters that come about when UTF-8 is read as Windows-1252 and saved again: A with tilde
// or circumflex before another sign that is not ASCII, and the three signs of a curly quote.
std::optional<std::size_t> twiceEncoded(const std::string& text)
{
    for (std::size_t at = 0; at + 2 < text.size(); ++at) {
        const std::string two = text.substr(at, 2);
        const bool not_ascii_behind = (static_cast<unsigned char>(text[at + 2]) & 0x80U) != 0;
        const bool tilde_or_circumflex = two == "\xC3\x83" || two == "\xC3\x82";
        if ((tilde_or_circumflex && not_ascii_behind) ||
            text.compare(at, 5, "\xC3\xA2\xE2\x82\xAC") == 0)
            return at;
    }
    return std::nullopt;
}

// Month names as spreadsheets write them, in English and German, short and whole; Dutch differs in
// two.
constexpr const char* month_names =
    "(Jan|January|Januar|Feb|February|Februar|Mar|March|M\xC3\xA4r|M\xC3\xA4rz|Mrz|Mrt|Apr|April|"
    "May|"
    "Mai|Mei|Jun|June|Juni|Jul|July|Juli|Aug|August|Sep|Sept|September|Oct|October|Okt|Oktober|Nov|"
    "November|Dec|December|Dez|Dezember)";

// Marks are: 3-APR is one, 3-Apr is what a spreadsheet writes.
bool hasTwoCapitals(const std::string& field)
{
    const auto is_capital = [](char c) { return c >= 'A' && c <= 'Z'; };
    return std::count_if(field.begin(), field.end(), is_capital) > 1;
}

bool looksLikeASpreadsheetDate(const std::string& field)
{
    // Regular expressions are slow: most fields are told from a date by their first sign or length.
    if (field.size() < 4 || field.size() > longest_date ||
        std::string("0123456789JFMASONDjfmasond").find(field.front()) == std::string::npos ||
        field.find_first_of("-./ ") == std::string::npos)
        return false;
    constexpr auto any_case = std::regex::ECMAScript | std::regex::icase;
    static const std::regex day_month(
        std::string("\\d{1,2}[-. ]") + month_names + "([-. ]\\d{2,4})?", any_case);
    static const std::regex month_year(std::string(month_names) + "[-. ]\\d{2,4}", any_case);
    static const std::regex in_numbers("\\d{1,2}([./-])\\d{1,2}\\1\\d{4}|\\d{4}-\\d{2}-\\d{2}");
    static const std::regex time_stamp(
        "(\\d{4}-\\d{2}-\\d{2}[ T]|\\d{1,2}([./-])\\d{1,2}\\2\\d{4} )\\d{1,2}:\\d{2}.*");
    const bool is_named = !hasTwoCapitals(field) && (std::regex_match(field, day_month) ||
                                                     std::regex_match(field, month_year));
    return is_named || std::regex_match(field, in_numbers) || std::regex_match(field, time_stamp);
}

// A number in powers of ten: 1.94E+03.
std::optional<Harm> shortenedHarm(const std::string& field)
{
    if (field.size() > longest_harm || field.find("E+") == std::string::npos)
        return std::nullopt;
    static const std::regex powers_of_ten("\\d[.,]?\\d*E\\+\\d+");
    if (!std::regex_match(field, powers_of_ten))
        return std::nullopt;
    return Harm{inQuotes(field) + " looks like a number that a spreadsheet shortened",
                "type in full what stood there and set the column to text"};
}

}  // namespace

std::string inQuotes(const std::string& text)
{
    return std::string(1, '\'').append(text).append(1, '\'');
}

std::optional<CsvFault> encodingHarm(const std::string& text)
{
    if (looksLikeUtf16(text))
        return CsvFault{0, "", "the file is UTF-16, not UTF-8", "save it as UTF-8 (CSV UTF-8)"};
    if (const auto bad = firstBadByte(text))
        return CsvFault{lineOf(text, *bad), "",
                        "the file is not UTF-8 (it may be Windows-1252 or Latin-1)",
                        "save it as UTF-8 (CSV UTF-8)"};
    const std::size_t zero = text.find('\0');
    if (zero != std::string::npos)
        return CsvFault{lineOf(text, zero), "", "a zero byte stands in the text",
                        "open the file in a text editor and save it as UTF-8"};
    if (const auto twice = twiceEncoded(text))
        return CsvFault{lineOf(text, *twice), "",
                        "letters with accents were saved in a wrong encoding (two signs for one)",
                        "open the file again as UTF-8 and restore them"};
    const std::size_t lost = text.find("\xEF\xBF\xBD");
    if (lost != std::string::npos)
        return CsvFault{lineOf(text, lost), "", "a letter was lost to a wrong encoding (U+FFFD)",
                        "type it again"};
    return std::nullopt;
}

std::optional<Harm> errorSignHarm(const std::string& field)
{
    if (field.empty() || field.front() != '#' || field.size() > longest_harm)
        return std::nullopt;
    static const std::regex error_sign("#(NAME|REF|VALUE|N/A|NUM|DIV/0|NULL)[?!]?|#{3,}");
    if (!std::regex_match(field, error_sign))
        return std::nullopt;
    return Harm{inQuotes(field) + " is a spreadsheet's error sign",
                "type what stood there and set the column to text"};
}

std::optional<Harm> markHarm(const std::string& field)
{
    if (auto harm = errorSignHarm(field))
        return harm;
    if (field.size() > longest_harm || field.find_first_of("0123456789") == std::string::npos)
        return std::nullopt;
    if (looksLikeASpreadsheetDate(field))
        return Harm{
            inQuotes(field) + " looks like a date that a spreadsheet made of a mark such as 3/40",
            "type the mark as it is printed and set the column to text; a mark that "
            "does read so begins with a backslash"};
    return shortenedHarm(field);
}

Harm yearHarm(const std::string& field)
{
    if (const auto harm = errorSignHarm(field))
        return *harm;
    if (const auto harm = shortenedHarm(field))
        return *harm;
    static const std::regex about("(?:c|ca|about|circa)\\.? ?(\\d{4})");
    static const std::regex decade("(\\d{3})0'?s");
    static const std::regex span("(\\d{4}) ?(?:-|\xE2\x80\x93) ?(\\d{4})");
    static const std::regex decimal("(\\d{4})[.,]0+");
    static const std::regex thousands("(\\d)[.,' ](\\d{3})");
    static const std::regex numbers("\\d{1,2}[/.-]\\d{1,2}[/.-]\\d{2,4}|\\d{5}");
    std::string problem = inQuotes(field.substr(0, 40)) + " is not EDTF";
    std::smatch found;
    if (field.size() > longest_harm)
        return {problem, "write four digits, such as 1930"};
    if (std::regex_match(field, found, about))
        return {problem, "write " + found[1].str() + "~ for about " + found[1].str()};
    if (std::regex_match(field, found, decade))
        return {problem, "write " + found[1].str() + "X for the decade"};
    if (std::regex_match(field, found, span))
        return {problem, "write " + found[1].str() + "/" + found[2].str() + " for a span"};
    if (std::regex_match(field, found, decimal))
        return {problem + ": a spreadsheet made a decimal number of it", "write " + found[1].str()};
    if (std::regex_match(field, found, thousands))
        return {problem + ": a spreadsheet set a sign between the thousands",
                "write " + found[1].str() + found[2].str() + " and set the column to text"};
    static const std::regex day("\\d{4}-\\d{2}-\\d{2}");  // EDTF writes days so: this one is none
    if (!std::regex_match(field, day) &&
        (looksLikeASpreadsheetDate(field) || std::regex_match(field, numbers)))
        return {problem + ": a spreadsheet may have made a date of a year",
                "write four digits, such as 1930, and set the column to text"};
    return {problem + ": " + whyNoYearBounds(field),
            "write four digits, such as 1930; 1930? in doubt, 1930~ about, 193X a decade"};
}

}  // namespace models
