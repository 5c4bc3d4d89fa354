#pragma once

#include <stdexcept>

namespace vision {

// A picture cannot be used. what() is one sentence that names the file and the remedy.
class ImageError : public std::runtime_error {
public:
    using std::runtime_error::runtime_error;
};

}  // namespace vision
