#include "models/archive/originals.h"

#include <cctype>
#include <cerrno>
#include <system_error>
#include <utility>

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <QCryptographicHash>

#include "models/archive/archive.h"
#include "models/open_file.h"

namespace models {

namespace {

std::string reason(int error)
{
    return std::generic_category().message(error);
}

struct HashedBytes {
    std::string sha256;
    std::uintmax_t byte_count = 0;
};

// Reads the file to its end, hashes it, and writes it to `copy` unless that is nullptr.
HashedBytes hashFile(const std::filesystem::path& file, const OpenFile* copy)
{
    const OpenFile original(file, O_RDONLY);
    struct stat facts {};
    if (!original.isOpen())
        throw ArchiveError(file.string() + " cannot be read (" + reason(errno) +
                           "); check that it is there and may be read");
    if (::fstat(original.get(), &facts) != 0 || !S_ISREG(facts.st_mode))
        throw ArchiveError(file.string() + " is not a file; name a photograph");

    QCryptographicHash hash(QCryptographicHash::Sha256);
    HashedBytes result;
    std::vector<char> bytes(std::size_t{1} << 20U);
    for (;;) {
        const ssize_t count = ::read(original.get(), bytes.data(), bytes.size());
        if (count < 0 && errno == EINTR)
            continue;
        if (count < 0)
            throw ArchiveError(file.string() + " cannot be read (" + reason(errno) +
                               "); copy it from its card or disk again");
        if (count == 0)
            break;
        hash.addData(QByteArrayView(bytes.data(), count));
        result.byte_count += static_cast<std::uintmax_t>(count);
        if (copy && !writeAll(*copy, {bytes.data(), static_cast<std::size_t>(count)}))
            throw ArchiveError(file.string() + " cannot be copied into the archive (" +
                               reason(errno) + "); free some room and try again");
    }
    result.sha256 = hash.result().toHex().toStdString();
    return result;
}

bool isWhole(const std::filesystem::path& copy, const std::string& sha256)
{
    std::error_code ignored;
    return std::filesystem::is_regular_file(copy, ignored) &&
           hashFile(copy, nullptr).sha256 == sha256;
}

// A file that is taken away at the end of its scope, whatever became of it.
struct TemporaryFile {
    std::filesystem::path path;
    ~TemporaryFile()
    {
        std::error_code ignored;
        std::filesystem::remove(path, ignored);
    }
};

}  // namespace

std::filesystem::path originalPathIn(const std::filesystem::path& archive_folder,
                                     const std::string& sha256, const std::string& extension)
{
    return archive_folder / "originals" / sha256.substr(0, 2) / (sha256 + "." + extension);
}

std::string originalExtension(const std::string& original_name)
{
    const std::string::size_type dot = original_name.rfind('.');
    std::string extension = dot == std::string::npos ? "" : original_name.substr(dot + 1);
    for (char& letter : extension) {
        if (!std::isalnum(static_cast<unsigned char>(letter)))
            return "bin";
        letter = static_cast<char>(std::tolower(static_cast<unsigned char>(letter)));
    }
    if (extension.empty() || extension.size() > 8)
        return "bin";
    return extension == "jpeg" ? "jpg" : extension;
}

std::string sha256OfFile(const std::filesystem::path& file)
{
    return hashFile(file, nullptr).sha256;
}

OriginalsCopy::OriginalsCopy(std::filesystem::path archive_folder)
    : archive_folder_(std::move(archive_folder))
{
}

OriginalsCopy::~OriginalsCopy()
{
    for (const std::filesystem::path& file : made_) {
        std::error_code ignored;
        std::filesystem::remove(file, ignored);
        std::filesystem::remove(file.parent_path(), ignored);  // only if it is empty now
    }
}

CopiedOriginal OriginalsCopy::add(const std::filesystem::path& file,
                                  const std::string& expected_sha256,
                                  const std::string& original_name)
{
    const std::filesystem::path originals = archive_folder_ / "originals";
    std::error_code trouble;
    std::filesystem::create_directories(originals, trouble);
    const TemporaryFile temporary{originals / ("copying-" + std::to_string(::getpid()))};
    OpenFile copy(temporary.path, O_WRONLY | O_CREAT | O_TRUNC, 0644);
    if (!copy.isOpen())
        throw ArchiveError(originals.string() + " may not be written (" + reason(errno) +
                           "); allow writing to it, or name another archive folder");

    const HashedBytes hashed = hashFile(file, &copy);
    if (!expected_sha256.empty() && hashed.sha256 != expected_sha256)
        throw ArchiveError(file.string() + " has changed since it was read; read it again");
    const CopiedOriginal result{hashed.sha256, originalExtension(original_name), hashed.byte_count};
    const std::filesystem::path target =
        originalPathIn(archive_folder_, result.sha256, result.extension);
    if (isWhole(target, result.sha256))
        return result;

    std::filesystem::create_directories(target.parent_path(), trouble);
    ::fchmod(copy.get(), 0444);  // an original is never written again
    if (::fsync(copy.get()) != 0 || !copy.close() ||
        ::rename(temporary.path.c_str(), target.c_str()) != 0)
        throw ArchiveError(file.string() + " cannot be copied to " + target.string() + " (" +
                           reason(errno) + "); free some room or allow writing, and try again");
    made_.push_back(target);
    syncFolder(target.parent_path());
    syncFolder(originals);
    return result;
}

void OriginalsCopy::keep()
{
    made_.clear();
}

}  // namespace models
