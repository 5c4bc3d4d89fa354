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
};

// A truth file that is there but is none. what() names the file and the remedy.
class TruthError : public std::runtime_error {
public:
    using std::runtime_error::runtime_error;
};

// nullopt when there is no such file.
std::optional<Truth> truthBeside(const std::filesystem::path& photo);

// How often the true maker came out, over the photographs whose maker is known.
class TruthTally {
public:
    void count(const Truth& truth, const models::CandidateList& candidates);
    bool isEmpty() const { return of_ == 0; }

    // "true maker first: 5 of 6, among three: 6 of 6"
    std::string sentence() const;

private:
    int first_ = 0, among_three_ = 0, of_ = 0;
};

}  // namespace cli
