#pragma once

#include <span>
#include <string>

namespace vision {

enum class FileKind { Jpeg, Png, Tiff, WebP, Bmp, Heic, OtherPicture, Text, Zeros, Unknown };

struct FileKindFound {
    FileKind kind = FileKind::Unknown;
    std::string name;  // for the person: "JPEG", "TIFF", "GIF"; empty when not a known picture
};

// Tells a file's kind from its first bytes (a few hundred are enough), never from its name.
FileKindFound fileKind(std::span<const unsigned char> head);

}  // namespace vision
