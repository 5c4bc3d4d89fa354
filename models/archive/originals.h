#pragma once

#include <cstdint>
#include <filesystem>
#include <string>
#include <vector>

namespace models {

// Where an original lies: originals/<first two digits>/<sha256>.<extension>.
std::filesystem::path originalPathIn(const std::filesystem::path& archive_folder,
                                     const std::string& sha256, const std::string& extension);

// The extension under which a file of this name is kept, without its dot: lower case, "jpg" for
// "JPEG", "bin" where the name has none that can be kept.
std::string originalExtension(const std::string& original_name);

// The hash of a file's bytes, 64 hexadecimal digits. Throws ArchiveError if it cannot be read.
std::string sha256OfFile(const std::filesystem::path& file);

struct CopiedOriginal {
    std::string sha256, extension;
    std::uintmax_t byte_count = 0;
};

// Copies originals into an archive. What was copied is taken away again unless keep() was called.
class OriginalsCopy {
public:
    explicit OriginalsCopy(std::filesystem::path archive_folder);
    ~OriginalsCopy();
    OriginalsCopy(const OriginalsCopy&) = delete;
    OriginalsCopy& operator=(const OriginalsCopy&) = delete;

    // Copies a file in under its hash, which is taken while copying; a whole copy that is there is
    // left as it is. The copy is on the disk under its name, or not there at all.
    //   expected_sha256  what the file's hash must be; empty takes any
    // Throws ArchiveError naming the file if it is missing, has another hash, or cannot be copied.
    CopiedOriginal add(const std::filesystem::path& file, const std::string& expected_sha256,
                       const std::string& original_name);

    void keep();

private:
    std::filesystem::path archive_folder_;
    std::vector<std::filesystem::path> made_;
};

}  // namespace models
