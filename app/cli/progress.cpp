#include "app/cli/progress.h"

#include <filesystem>

namespace cli {

namespace {

constexpr const char* clear_line = "\r\x1b[K";

}  // namespace

ProgressLine::ProgressLine(Surroundings& around, std::size_t number, std::size_t of,
                           const std::string& photo)
    : around_(around),
      begins_with_(std::to_string(number) + "/" + std::to_string(of) + " " +
                   std::filesystem::path(photo).filename().string() + ": ")
{
}

ProgressLine::~ProgressLine()
{
    if (around_.progress_shown)
        around_.err << clear_line << std::flush;
}

void ProgressLine::tell(const std::string& stage) const
{
    if (around_.progress_shown)
        around_.err << clear_line << begins_with_ << stage << std::flush;
}

}  // namespace cli
