#include <charconv>
#include <cmath>
#include <stdexcept>
#include <system_error>

#include "models/exchange/xml_tree.h"
#include "models/letters.h"

// Text and numbers as XML writes them.
namespace models {

namespace {

bool isPlainInUri(unsigned char c)
{
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' ||
           c == '.' || c == '_' || c == '~';
}

std::optional<int> hexValue(char c)
{
    if (c >= '0' && c <= '9')
        return c - '0';
    if (c >= 'A' && c <= 'F')
        return c - 'A' + 10;
    if (c >= 'a' && c <= 'f')
        return c - 'a' + 10;
    return std::nullopt;
}

// U+FFFE and U+FFFF, which XML 1.0 leaves out.
bool isNoCharacter(const std::string& text, std::size_t at)
{
    return text.compare(at, 3, "\xEF\xBF\xBE") == 0 || text.compare(at, 3, "\xEF\xBF\xBF") == 0;
}

}  // namespace

std::string escapedXml(const std::string& text)
{
    if (firstBadByte(text))
        throw std::invalid_argument("a text of the reading is not UTF-8");
    std::string escaped;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        if (c == '&')
            escaped += "&amp;";
        else if (c == '<')
            escaped += "&lt;";
        else if (c == '>')
            escaped += "&gt;";
        else if (c == '"')
            escaped += "&quot;";
        else if (c == '\t' || c == '\n' || c == '\r')
            escaped += "&#" + std::to_string(static_cast<int>(c)) + ";";
        else if (static_cast<unsigned char>(c) < 0x20 || isNoCharacter(text, i))
            throw std::invalid_argument("a text of the reading holds a character XML cannot write");
        else
            escaped += c;
    }
    return escaped;
}

std::string percentEncoded(const std::string& text)
{
    constexpr const char* digits = "0123456789ABCDEF";
    std::string encoded;
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        if (isPlainInUri(byte))
            encoded += c;
        else
            encoded.append(1, '%').append(1, digits[byte >> 4]).append(1, digits[byte & 15]);
    }
    return encoded;
}

std::optional<std::string> percentDecoded(const std::string& text)
{
    std::string decoded;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text[i] != '%') {
            decoded += text[i];
            continue;
        }
        if (i + 2 >= text.size())
            return std::nullopt;
        const auto high = hexValue(text[i + 1]), low = hexValue(text[i + 2]);
        if (!high || !low)
            return std::nullopt;
        decoded += static_cast<char>(*high * 16 + *low);
        i += 2;
    }
    return decoded;
}

std::string numberText(double number)
{
    if (!std::isfinite(number))
        throw std::invalid_argument("a number of the reading is not finite");
    char text[40];
    const auto end = std::to_chars(text, text + sizeof text, number);
    return std::string(text, end.ptr);
}

std::optional<double> numberOf(const std::string& text)
{
    double number = 0;
    const auto end = std::from_chars(text.data(), text.data() + text.size(), number);
    if (text.empty() || end.ec != std::errc() || end.ptr != text.data() + text.size() ||
        !std::isfinite(number))
        return std::nullopt;
    return number;
}

std::optional<int> wholeNumberOf(const std::string& text)
{
    if (text.empty() || text.size() > 9 ||
        text.find_first_not_of("0123456789") != std::string::npos)
        return std::nullopt;
    return std::stoi(text);
}

}  // namespace models
