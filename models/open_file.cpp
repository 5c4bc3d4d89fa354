#include "models/open_file.h"

#include <cerrno>
#include <utility>

#include <fcntl.h>
#include <unistd.h>

namespace models {

OpenFile::OpenFile(const std::filesystem::path& file, int flags, unsigned mode)
    : descriptor_(::open(file.c_str(), flags | O_CLOEXEC, mode))
{
}

bool OpenFile::close()
{
    return descriptor_ < 0 || ::close(std::exchange(descriptor_, -1)) == 0;
}

bool writeAll(const OpenFile& file, std::string_view bytes)
{
    while (!bytes.empty()) {
        const ssize_t written = ::write(file.get(), bytes.data(), bytes.size());
        if (written < 0 && errno == EINTR)
            continue;
        if (written <= 0)
            return false;
        bytes.remove_prefix(static_cast<std::size_t>(written));
    }
    return true;
}

bool writeNewFile(const std::filesystem::path& file, std::string_view bytes)
{
    OpenFile created(file, O_WRONLY | O_CREAT | O_EXCL, 0666);
    return created.isOpen() && writeAll(created, bytes) && ::fsync(created.get()) == 0 &&
           created.close();
}

void syncFolder(const std::filesystem::path& folder)
{
    const OpenFile opened(folder, O_RDONLY | O_DIRECTORY);
    if (opened.isOpen())
        ::fsync(opened.get());
}

}  // namespace models
