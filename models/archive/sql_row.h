#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

// Rows of the archive as plain values, whatever database they lie in.
namespace models::sql {

// NULL, whole number, real number, UTF-8 text.
using Value = std::variant<std::monostate, std::int64_t, double, std::string>;

struct Field {
    std::string column;
    Value value;
};

// One row that was read.
class Row {
public:
    // `file` is where it was read, for complaints.
    Row(std::vector<Field> fields, std::string file)
        : fields_(std::move(fields)), file_(std::move(file))
    {
    }

    // A column's value; NULL is empty text, no number. Throws ArchiveError if the row has no such
    // column or it holds another kind of value: then the file is damaged.
    std::string text(const std::string& column) const;
    std::int64_t whole(const std::string& column) const;
    double real(const std::string& column) const;
    std::optional<double> realOrNone(const std::string& column) const;
    bool flag(const std::string& column) const;
    std::optional<bool> flagOrNone(const std::string& column) const;

    const std::vector<Field>& fields() const { return fields_; }

    // Throws ArchiveError: what stands in `column` cannot be.
    [[noreturn]] void refuse(const std::string& column) const;

private:
    const Value& value(const std::string& column) const;
    std::vector<Field> fields_;
    std::string file_;
};

// Text, or NULL if it is empty: for references and for what must be unique where it is given.
Value textOrNull(const std::string& text);
Value realOrNull(const std::optional<double>& number);
Value flagOrNull(const std::optional<bool>& flag);
Value flag(bool on);

// A sum over a row's values that changes when any of them does: every row carries its own, so that
// a bit turned in the file is noticed. NULL columns do not count, so that a later version may add
// columns; `row_sum` itself does not either.
std::string rowSum(const std::vector<Field>& fields);

}  // namespace models::sql
