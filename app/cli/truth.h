#pragma once

#include <filesystem>
#include <optional>
#include <stdexcept>
#include <string>
#include <vector>

#include "models/candidates.h"

// What is true of a photograph that was made or whose piece is known: NAME.truth.json beside NAME.
namespace cli {

struct Truth {
    std::string item_type, maker_id, edtf;
    std::vector<std::vector<std::string>> stamps;  // each its lines, in the typed notation
    bool no_stamp = false;                         // it is known that the photograph shows none
};

// A truth file that is there but is none. what() names the file and the remedy.
class TruthError : public std::runtime_error {
public:
    using std::runtime_error::runtime_error;
};

// nullopt when there is no such file.
std::optional<Truth> truthBeside(const std::filesystem::path& photo);

// How often the true maker came out, over the photographs whose maker is known, and how often
// something was read where there is no stamp.
class TruthTally {
public:
    //   surest_line  certainty of the line that was read most surely; 0 if none was
    void count(const Truth& truth, const models::CandidateList& candidates, double surest_line);
    bool isEmpty() const { return of_ + no_stamp_of_ == 0; }

    // "true maker first: 5 of 6, among three: 6 of 6; of 8 without a stamp, 0 gave a line with
    // certainty 0.5 or more"; the parts that there are photographs for
    std::string sentence() const;

private:
    int first_ = 0, among_three_ = 0, of_ = 0;
    int misled_ = 0, no_stamp_of_ = 0;
};

}  // namespace cli
