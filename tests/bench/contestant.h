#pragma once

#include <filesystem>
#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "tests/bench/read_marks.h"

namespace bench {

// A way of reading pictures that is judged. Not for two threads at once.
class Contestant {
public:
    virtual ~Contestant() = default;
    virtual ReadPicture read(const vision::Photo& photo, bool single_line) = 0;
};

struct Entry {
    std::string name;                                   // in the table
    std::function<std::unique_ptr<Contestant>()> make;  // one a thread
    bool is_weftmark = true;
    bool single_lines_only = false, pictures_only = false;  // sets that it is not meant for
};

// Weftmark with the readers named, joined by '+' where several read together: "tesseract".
// Throws std::invalid_argument for a reader that does not exist.
Entry weftmark(const std::string& readers, const std::filesystem::path& register_folder);

// Tesseract as it comes, given the picture in grey: whole pictures in several modes of page
// segmentation (of which the table keeps the best for each set), crops as one line. A line's and a
// cell's certainty is Tesseract's own confidence over 100; the makers are ranked by Weftmark from
// what it read.
//   all_modes   also as one block of text, which is slow on cloth and was never the best
std::vector<Entry> plainTesseract(const std::filesystem::path& register_folder, bool all_modes);

}  // namespace bench
