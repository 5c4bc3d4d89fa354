#pragma once

#include <stdexcept>

namespace vision {

// A network's weights, or a table beside them, cannot be used. what() is one sentence that names
// the file and the remedy.
class WeightsError : public std::runtime_error {
public:
    using std::runtime_error::runtime_error;
};

}  // namespace vision
