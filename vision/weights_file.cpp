#include "vision/weights_file.h"

#include <fstream>
#include <iterator>
#include <system_error>

#include "vision/sha256.h"

namespace vision {

namespace {

constexpr const char* sums_name = "SHA256SUMS";

// The sum that the folder's list holds for a file, as sha256sum writes it; empty when there is
// none.
std::string sumOf(const std::filesystem::path& folder, const std::string& name)
{
    std::error_code trouble;
    if (!std::filesystem::is_regular_file(folder / sums_name, trouble))
        return {};
    std::ifstream in(folder / sums_name);
    for (std::string sum, file; in >> sum >> file;)
        if (file == name)
            return sum;
    return {};
}

}  // namespace

std::vector<unsigned char> checkedWeights(const std::filesystem::path& folder,
                                          const std::string& name, const std::string& without)
{
    const std::filesystem::path file = folder / name;
    std::error_code trouble;
    if (!std::filesystem::is_regular_file(file, trouble))
        throw unusableWeights(file, "is missing or no file", without);
    std::ifstream in(file, std::ios::binary);
    std::vector<unsigned char> bytes{std::istreambuf_iterator<char>(in), {}};
    if (bytes.empty() || (!in.good() && !in.eof()))
        throw unusableWeights(file, "is empty or cannot be read", without);
    const std::string sum = sumOf(folder, name);
    if (sum.empty())
        throw unusableWeights(
            file, std::string("cannot be checked (") + sums_name + " beside it does not name it)",
            without);
    if (sum != sha256Hex(bytes))
        throw unusableWeights(
            file, std::string("is damaged (its SHA-256 is not the one in ") + sums_name + ")",
            without);
    return bytes;
}

WeightsError unusableWeights(const std::filesystem::path& file, const std::string& what,
                             const std::string& without)
{
    return WeightsError(file.string() + " " + what + "; without it " + without +
                        "; take it anew from the project");
}

}  // namespace vision
