#include <stdexcept>

#include "tests/support/picture_files.h"

namespace picture_files {

bool canWriteHeic()
{
    return false;
}

Bytes heic(const cv::Mat&, int, const Bytes&, const Bytes&)
{
    throw std::logic_error("a test asked for HEIC although there is no encoder");
}

}  // namespace picture_files
