#include "app/flow/register_hash.h"

#include <algorithm>
#include <fstream>
#include <iterator>
#include <span>
#include <system_error>
#include <vector>

#include "models/maker_register.h"
#include "vision/sha256.h"

namespace flow {

namespace {

std::string bytesOf(const std::filesystem::path& file)
{
    std::ifstream stream(file, std::ios::binary);
    if (!stream)
        throw models::RegisterError({{.file = file,
                                      .line = 0,
                                      .column = {},
                                      .problem = "the file cannot be read",
                                      .remedy = "allow reading it"}});
    return {std::istreambuf_iterator<char>(stream), std::istreambuf_iterator<char>()};
}

}  // namespace

std::string registerSha256(const std::filesystem::path& register_folder)
{
    std::vector<std::filesystem::path> files;
    std::error_code trouble;
    for (const auto& entry : std::filesystem::directory_iterator(register_folder, trouble))
        if (entry.path().extension() == ".csv")
            files.push_back(entry.path());
    if (trouble)
        throw models::RegisterError({{.file = register_folder,
                                      .line = 0,
                                      .column = {},
                                      .problem = "the register's folder cannot be read",
                                      .remedy = "name a folder with makers.csv and marks.csv"}});
    std::sort(files.begin(), files.end());

    std::string bytes;
    for (const std::filesystem::path& file : files) {
        bytes += file.filename().string();
        bytes += bytesOf(file);
    }
    return vision::sha256Hex(
        std::span(reinterpret_cast<const unsigned char*>(bytes.data()), bytes.size()));
}

}  // namespace flow
