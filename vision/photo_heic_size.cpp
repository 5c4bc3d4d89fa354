#include "vision/photo_heic_size.h"

#include <algorithm>
#include <cstdint>
#include <map>
#include <string>

namespace vision {
namespace {

using Bytes = std::span<const unsigned char>;

// Numbers with the greatest byte first; beyond the end there is nothing but zeros.
class Reader {
public:
    explicit Reader(Bytes bytes) : bytes_(bytes) {}

    std::uint64_t number(std::size_t count)
    {
        std::uint64_t value = 0;
        for (; count > 0; --count, ++at_)
            value = value << 8 | (at_ < bytes_.size() ? bytes_[at_] : 0);
        return value;
    }
    std::string name()
    {
        std::string letters;
        for (int i = 0; i < 4; ++i)
            letters += static_cast<char>(number(1));
        return letters;
    }
    void skip(std::size_t count) { at_ += count; }
    bool isAtEnd() const { return at_ >= bytes_.size(); }
    Bytes rest() const { return bytes_.subspan(std::min(at_, bytes_.size())); }

private:
    Bytes bytes_;
    std::size_t at_ = 0;
};

struct Box {
    std::string name;
    Bytes content;
};

// The next box at the reader, which is moved behind it; an empty name at the end or at damage.
Box nextBox(Reader& reader)
{
    const Bytes rest = reader.rest();
    std::uint64_t length = reader.number(4), header = 8;
    Box box{reader.name(), {}};
    if (length == 1) {
        length = reader.number(8);
        header = 16;
    }
    if (length == 0)
        length = rest.size();
    if (rest.size() < header || length < header)
        return {};
    length = std::min<std::uint64_t>(length, rest.size());
    box.content = rest.subspan(header, length - header);
    reader.skip(box.content.size());
    return box;
}

Bytes contentOf(Bytes boxes, const std::string& name)
{
    for (Reader reader(boxes); !reader.isAtEnd();) {
        const Box box = nextBox(reader);
        if (box.name.empty() || box.name == name)
            return box.content;
    }
    return {};
}

// The kind of each item: "hvc1", "grid", "Exif".
std::map<std::uint64_t, std::string> itemKinds(Bytes infos)
{
    std::map<std::uint64_t, std::string> kinds;
    Reader reader(infos);
    const std::uint64_t version = reader.number(1);
    reader.skip(3);
    reader.skip(version == 0 ? 2 : 4);
    while (!reader.isAtEnd()) {
        const Box box = nextBox(reader);
        if (box.name.empty())
            break;
        Reader entry(box.content);
        const std::uint64_t entry_version = entry.number(1);
        entry.skip(3);
        const std::uint64_t item = entry.number(entry_version == 3 ? 4 : 2);
        entry.skip(2);
        kinds[item] = entry.name();
    }
    return kinds;
}

struct Place {
    bool in_meta = false;  // in the box "idat", not counted from the file's beginning
    std::uint64_t at = 0;
};

// Where the first piece of each item stands.
std::map<std::uint64_t, Place> itemPlaces(Bytes locations)
{
    std::map<std::uint64_t, Place> places;
    Reader reader(locations);
    const std::uint64_t version = reader.number(1);
    reader.skip(3);
    const std::uint64_t sizes = reader.number(2);
    const std::size_t offset_size = sizes >> 12, length_size = sizes >> 8 & 15;
    const std::size_t base_size = sizes >> 4 & 15, index_size = version > 0 ? sizes & 15 : 0;
    std::uint64_t items = reader.number(version < 2 ? 2 : 4);
    for (; items > 0 && !reader.isAtEnd(); --items) {
        const std::uint64_t item = reader.number(version < 2 ? 2 : 4);
        Place place;
        if (version > 0)
            place.in_meta = (reader.number(2) & 15) == 1;
        reader.skip(2);
        const std::uint64_t base = reader.number(base_size);
        std::uint64_t pieces = reader.number(2);
        for (bool first = true; pieces > 0 && !reader.isAtEnd(); --pieces, first = false) {
            reader.skip(index_size);
            const std::uint64_t offset = reader.number(offset_size);
            reader.skip(length_size);
            if (first)
                place.at = base + offset;
        }
        places[item] = place;
    }
    return places;
}

// Of a grid: version, flags, rows, columns, width, height. Of an overlay: version, flags, four
// numbers of its ground's colour, width, height. The lowest flag makes width and height four bytes.
double pixelsOf(const std::string& kind, Bytes data)
{
    Reader reader(data);
    reader.skip(1);
    const std::size_t size = (reader.number(1) & 1) != 0 ? 4 : 2;
    reader.skip(kind == "grid" ? 2 : 8);
    const auto width = static_cast<double>(reader.number(size));
    return width * static_cast<double>(reader.number(size));
}

}  // namespace

double mostDerivedPixels(Bytes bytes)
{
    Bytes meta = contentOf(bytes, "meta");
    meta = meta.subspan(std::min<std::size_t>(4, meta.size()));  // version and flags
    // libheif reads on beyond the box's end, and so does this.
    const Bytes inside = contentOf(meta, "idat");
    const Bytes data = inside.empty()
                           ? inside
                           : bytes.subspan(static_cast<std::size_t>(inside.data() - bytes.data()));
    const auto places = itemPlaces(contentOf(meta, "iloc"));
    double most = 0;
    for (const auto& [item, kind] : itemKinds(contentOf(meta, "iinf"))) {
        const auto place = places.find(item);
        if ((kind != "grid" && kind != "iovl") || place == places.end())
            continue;
        const Bytes from = place->second.in_meta ? data : bytes;
        if (place->second.at < from.size())
            most = std::max(most, pixelsOf(kind, from.subspan(place->second.at)));
    }
    return most;
}

}  // namespace vision
