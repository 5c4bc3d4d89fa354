#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "tests/bench/bench_sets.h"
#include "tests/bench/read_marks.h"

namespace bench {

// Writes NAME-1.jpg, NAME-2.jpg ... into `folder`: every line that was read wrongly, not at all, or
// where none stands, cut out of its picture and laid straight, with the truth and the reading under
// it ("-" for none). Nothing is written when there is no such line.
//   returns  how many lines are shown
// Throws std::runtime_error naming a file that cannot be written.
std::size_t writeContactSheets(const std::filesystem::path& folder, const std::string& name,
                               const std::vector<Picture>& pictures,
                               const std::vector<ReadPicture>& reads);

}  // namespace bench
