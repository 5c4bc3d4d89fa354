#pragma once

#include <filesystem>
#include <string>

namespace support {

// An empty folder, with a name that is not ASCII, that is gone at the end of its scope.
class TemporaryFolder {
public:
    TemporaryFolder();
    ~TemporaryFolder();
    TemporaryFolder(const TemporaryFolder&) = delete;
    TemporaryFolder& operator=(const TemporaryFolder&) = delete;

    const std::filesystem::path& path() const { return path_; }

    // Makes a file in it and returns its path.
    std::filesystem::path write(const std::string& name, const std::string& bytes) const;

private:
    std::filesystem::path path_;
};

// A file's bytes.
std::string bytesOf(const std::filesystem::path& file);

}  // namespace support
