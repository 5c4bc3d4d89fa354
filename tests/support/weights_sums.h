#pragma once

#include <filesystem>
#include <fstream>
#include <iterator>
#include <vector>

#include "vision/sha256.h"

namespace support {

// Writes the folder's SHA256SUMS anew, as sha256sum does: of every other file in it.
inline void listSums(const std::filesystem::path& folder)
{
    std::filesystem::remove(folder / "SHA256SUMS");
    std::vector<std::filesystem::path> files;
    for (const auto& entry : std::filesystem::directory_iterator(folder))
        if (entry.is_regular_file())
            files.push_back(entry.path());
    std::ofstream sums(folder / "SHA256SUMS");
    for (const std::filesystem::path& file : files) {
        std::ifstream in(file, std::ios::binary);
        const std::vector<unsigned char> bytes{std::istreambuf_iterator<char>(in), {}};
        sums << vision::sha256Hex(bytes) << "  " << file.filename().string() << '\n';
    }
}

}  // namespace support
