#pragma once

#include <cstddef>
#include <filesystem>
#include <string_view>

// Writing to disk so that a power cut loses nothing that was said to be written.
namespace models {

// A file descriptor that is closed at the end of its scope. errno tells why one did not open.
class OpenFile {
public:
    // Flags and mode as open(2) has them; closed when another program is started.
    OpenFile(const std::filesystem::path& file, int flags, unsigned mode = 0);
    ~OpenFile() { close(); }
    OpenFile(const OpenFile&) = delete;
    OpenFile& operator=(const OpenFile&) = delete;

    bool isOpen() const { return descriptor_ >= 0; }
    int get() const { return descriptor_; }
    bool close();  // false where the system says only now that a write failed

private:
    int descriptor_;
};

bool writeAll(const OpenFile& file, std::string_view bytes);

// Makes a new file of these bytes and waits until the disk has them; false, with errno set, where
// that fails or a file of that name is there.
bool writeNewFile(const std::filesystem::path& file, std::string_view bytes);

// Waits until the disk has the folder's names as they are now: after a file was renamed into it.
void syncFolder(const std::filesystem::path& folder);

}  // namespace models
