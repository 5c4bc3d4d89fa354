#pragma once

#include <cstddef>
#include <string>

#include "app/cli/surroundings.h"

namespace cli {

// One line on a terminal that tells what is being done, and is gone at the end of its scope.
class ProgressLine {
public:
    ProgressLine(Surroundings& around, std::size_t number, std::size_t of,
                 const std::string& photo);
    ~ProgressLine();
    ProgressLine(const ProgressLine&) = delete;
    ProgressLine& operator=(const ProgressLine&) = delete;

    void tell(const std::string& stage) const;

private:
    Surroundings& around_;
    std::string begins_with_;
};

}  // namespace cli
