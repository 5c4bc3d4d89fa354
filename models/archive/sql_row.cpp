#include "models/archive/sql_row.h"

#include <algorithm>
#include <array>
#include <charconv>

#include "models/archive/archive.h"

namespace models::sql {

namespace {

// The text that stands for a value in the sum: its kind, its length, itself.
std::string summed(const Value& value)
{
    std::array<char, 40> digits{};
    char* const begin = digits.data();
    char* const end = begin + digits.size();
    std::string text;
    if (const auto* words = std::get_if<std::string>(&value)) {
        text.append("t").append(std::to_string(words->size())).append(":").append(*words);
    } else if (const auto* whole = std::get_if<std::int64_t>(&value)) {
        text.append("w").append(begin, std::to_chars(begin, end, *whole).ptr);
    } else {
        text.append("r").append(begin, std::to_chars(begin, end, std::get<double>(value)).ptr);
    }
    return text;
}

// FNV-1a of 64 bits (Fowler, Noll and Vo; constants as in IETF draft-eastlake-fnv, from memory):
// each step can be undone, so one changed byte always changes the sum.
void addTo(std::uint64_t& sum, const std::string& text)
{
    for (const char byte : text) {
        sum ^= static_cast<unsigned char>(byte);
        sum *= 0x100000001b3U;
    }
}

}  // namespace

void Row::refuse(const std::string& column) const
{
    throw ArchiveError(file_ + " is damaged (a row at '" + column +
                       "'); work on with a copy of it from your backup");
}

const Value& Row::value(const std::string& column) const
{
    const auto found = std::find_if(fields_.begin(), fields_.end(),
                                    [&](const Field& field) { return field.column == column; });
    if (found == fields_.end())
        refuse(column);
    return found->value;
}

std::string Row::text(const std::string& column) const
{
    const Value& found = value(column);
    if (std::holds_alternative<std::monostate>(found))
        return {};
    const auto* text = std::get_if<std::string>(&found);
    if (!text)
        refuse(column);
    return *text;
}

std::int64_t Row::whole(const std::string& column) const
{
    const auto* whole = std::get_if<std::int64_t>(&value(column));
    if (!whole)
        refuse(column);
    return *whole;
}

double Row::real(const std::string& column) const
{
    const std::optional<double> number = realOrNone(column);
    if (!number)
        refuse(column);
    return *number;
}

std::optional<double> Row::realOrNone(const std::string& column) const
{
    const Value& found = value(column);
    if (std::holds_alternative<std::monostate>(found))
        return std::nullopt;
    const auto* number = std::get_if<double>(&found);
    if (!number)
        refuse(column);
    return *number;
}

bool Row::flag(const std::string& column) const
{
    return whole(column) != 0;
}

std::optional<bool> Row::flagOrNone(const std::string& column) const
{
    if (std::holds_alternative<std::monostate>(value(column)))
        return std::nullopt;
    return flag(column);
}

Value textOrNull(const std::string& text)
{
    return text.empty() ? Value{} : Value{text};
}

Value realOrNull(const std::optional<double>& number)
{
    return number ? Value{*number} : Value{};
}

Value flagOrNull(const std::optional<bool>& on)
{
    return on ? flag(*on) : Value{};
}

Value flag(bool on)
{
    return std::int64_t{on ? 1 : 0};
}

std::string rowSum(const std::vector<Field>& fields)
{
    std::vector<const Field*> ordered;
    for (const Field& field : fields)
        if (field.column != "row_sum" && !std::holds_alternative<std::monostate>(field.value))
            ordered.push_back(&field);
    std::sort(ordered.begin(), ordered.end(),
              [](const Field* one, const Field* other) { return one->column < other->column; });

    std::uint64_t sum = 0xcbf29ce484222325U;
    for (const Field* field : ordered) {
        addTo(sum, field->column + "=");
        addTo(sum, summed(field->value));
    }
    std::string text(16, '0');
    for (std::size_t digit = 16; digit-- > 0; sum >>= 4U)
        text[digit] = "0123456789abcdef"[sum & 0xfU];
    return text;
}

}  // namespace models::sql
