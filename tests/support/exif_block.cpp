#include <algorithm>

#include "tests/support/picture_files.h"

// The layout is that of TIFF 6.0, section 2, as Exif 2.2 (JEITA CP-3451), section 4.6, uses it.
namespace picture_files {
namespace {

constexpr std::uint16_t ascii_type = 2, short_type = 3, long_type = 4, rational_type = 5;

struct Entry {
    std::uint16_t tag, type;
    std::uint32_t count;
    Bytes value;
};

class Writer {
public:
    explicit Writer(bool big_endian) : big_endian_(big_endian) {}

    Bytes number(std::uint32_t value, int bytes) const
    {
        Bytes out;
        for (int i = 0; i < bytes; ++i) {
            const int shift = 8 * (big_endian_ ? bytes - 1 - i : i);
            out.push_back(static_cast<unsigned char>(value >> shift));
        }
        return out;
    }

    Entry text(const ExifText& from) const
    {
        Bytes value(from.text.begin(), from.text.end());
        value.push_back(0);
        return {from.tag, ascii_type, static_cast<std::uint32_t>(value.size()), value};
    }

    Entry rational(const ExifRational& from) const
    {
        Bytes value = number(from.numerator, 4);
        const Bytes denominator = number(from.denominator, 4);
        value.insert(value.end(), denominator.begin(), denominator.end());
        return {from.tag, rational_type, 1, value};
    }

    Entry shortNumber(std::uint16_t tag, int value) const
    {
        return {tag, short_type, 1, number(static_cast<std::uint32_t>(value), 2)};
    }

    // A directory that stands at `offset`, its long values behind it; no next directory.
    Bytes directory(std::vector<Entry> entries, std::uint32_t offset) const
    {
        std::sort(entries.begin(), entries.end(),
                  [](const Entry& a, const Entry& b) { return a.tag < b.tag; });
        Bytes table = number(static_cast<std::uint32_t>(entries.size()), 2);
        Bytes values;
        const auto values_at = offset + static_cast<std::uint32_t>(2 + 12 * entries.size() + 4);
        for (const Entry& entry : entries) {
            put(table, number(entry.tag, 2));
            put(table, number(entry.type, 2));
            put(table, number(entry.count, 4));
            Bytes field = entry.value;
            if (field.size() > 4) {
                field = number(values_at + static_cast<std::uint32_t>(values.size()), 4);
                put(values, entry.value);
            }
            field.resize(4);
            put(table, field);
        }
        put(table, number(0, 4));
        put(table, values);
        return table;
    }

    static void put(Bytes& to, const Bytes& what) { to.insert(to.end(), what.begin(), what.end()); }

private:
    bool big_endian_;
};

}  // namespace

Bytes ExifBlock::bytes() const
{
    constexpr std::uint16_t orientation_tag = 0x0112, exposure_tag = 0x8769, iso_tag = 0x8827;
    constexpr std::uint32_t first_directory = 8;
    const Writer writer(big_endian);

    std::vector<Entry> first = {writer.shortNumber(orientation_tag, orientation)};
    for (const ExifText& text : camera)
        first.push_back(writer.text(text));
    first.push_back({exposure_tag, long_type, 1, writer.number(0, 4)});
    const auto exposure_at = first_directory + static_cast<std::uint32_t>(
                                                   writer.directory(first, first_directory).size());
    first.back().value = writer.number(exposure_at, 4);

    std::vector<Entry> second;
    for (const ExifText& text : exposure)
        second.push_back(writer.text(text));
    for (const ExifRational& rational : exposure_rationals)
        second.push_back(writer.rational(rational));
    if (iso != 0)
        second.push_back(writer.shortNumber(iso_tag, iso));

    Bytes block = big_endian ? Bytes{'M', 'M', 0, 42} : Bytes{'I', 'I', 42, 0};
    Writer::put(block, writer.number(first_directory, 4));
    Writer::put(block, writer.directory(first, first_directory));
    Writer::put(block, writer.directory(second, exposure_at));
    return block;
}

}  // namespace picture_files
