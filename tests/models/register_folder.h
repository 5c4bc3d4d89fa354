#pragma once

#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <random>
#include <string>

namespace support {

using RegisterFiles = std::map<std::string, std::string>;

// A register folder of its own, removed at the end.
class RegisterFolder {
public:
    explicit RegisterFolder(const RegisterFiles& files)
        : path(std::filesystem::temp_directory_path() /
               ("weftmark_check_" + std::to_string(std::random_device()())))
    {
        std::filesystem::create_directories(path);
        for (const auto& [name, text] : files)
            std::ofstream(path / name, std::ios::binary) << text;
    }
    ~RegisterFolder() { std::filesystem::remove_all(path); }
    RegisterFolder(const RegisterFolder&) = delete;
    RegisterFolder& operator=(const RegisterFolder&) = delete;

    std::string bytes(const std::string& name) const
    {
        std::ifstream stream(path / name, std::ios::binary);
        return {std::istreambuf_iterator<char>(stream), std::istreambuf_iterator<char>()};
    }

    std::filesystem::path path;
};

}  // namespace support
