#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace models {

// What a piece is and which pattern it belongs to. Years are EDTF strings, as written; empty when
// unknown.
struct ItemType {
    std::string type_id, name, pattern;
    std::string introduced, withdrawn;
    std::vector<std::string> parts, sizes;
    std::string notes, source_id;
    std::size_t file_line = 0;  // of item_types.csv, 1-based; 0 when it was read from none

    // "Body belt, Pattern 1937"
    std::string nameWithPattern() const { return pattern.empty() ? name : name + ", " + pattern; }
};

// A construction detail that can be seen, and the years in which it was made so.
struct Feature {
    std::string feature_id, type_id, name;
    std::string from, to;
    std::string maker_id;  // empty: not tied to a maker
    std::string notes, source_id;
    std::size_t file_line = 0;  // of features.csv
};

}  // namespace models
