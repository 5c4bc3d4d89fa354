#pragma once

#include <filesystem>
#include <map>
#include <optional>
#include <stdexcept>
#include <string>
#include <vector>

#include "app/gui/photo_work.h"

namespace gui {

// Work on one photo that has not been filed, as it is kept on disk.
struct Draft {
    std::filesystem::path photo;
    std::string photo_sha256;
    std::string saved_at;           // UTC
    std::string record_id;          // of the record being corrected; empty for a new one
    std::vector<StampWork> stamps;  // without examinations
    FilingFields fields;
    int current = 0;  // the stamp in hand
    CellPlace place;  // the cell in hand
};

// A draft cannot be kept or read. what() is one sentence that names the file and the remedy.
class DraftError : public std::runtime_error {
public:
    using std::runtime_error::runtime_error;
};

// Drafts, a JSON file for each photo, in a folder that is made when the first is kept. A file is
// replaced as a whole, so that a crash leaves the old one or the new one.
class DraftFolder {
public:
    explicit DraftFolder(std::filesystem::path folder) : folder_(std::move(folder)) {}

    // Throws DraftError if the folder cannot be written.
    //   at_once  survives the end of the program at any moment, but is not waited for to reach the
    //            disk
    void keep(const Draft& draft, bool at_once = false) const;
    void discard(const std::string& photo_sha256) const;

    struct Found {
        std::vector<Draft> drafts;          // newest first
        std::vector<std::string> troubles;  // a sentence for each file that is not a draft
    };
    Found readAll() const;
    // The draft of the photo with this hash, or of the one in this file; nothing where there is
    // none or it cannot be read.
    std::optional<Draft> of(const std::string& photo_sha256) const;
    std::optional<Draft> of(const std::filesystem::path& photo) const;

private:
    std::filesystem::path fileOf(const std::string& photo_sha256) const;

    std::filesystem::path folder_;
    // Which draft is of which file, so that not all are read whenever a photo is opened; filled
    // when it is first asked for.
    mutable std::optional<std::map<std::filesystem::path, std::string>> sha256_of_;
};

// The text of a draft's file, and back. Throws DraftError for text that is not a draft.
std::string draftText(const Draft& draft);
Draft draftFromText(const std::string& text);

}  // namespace gui
