#pragma once

#include <filesystem>
#include <set>
#include <string>

#include "app/flow/examine.h"

namespace cli {

// A folder for the enhanced pictures: PHOTO-stamp1-flat.png and so on, with a number behind PHOTO
// where two photographs of one run have the same name. An empty folder name writes nothing.
class LayerFolder {
public:
    explicit LayerFolder(std::filesystem::path folder);

    // Throws vision::ImageError if a picture cannot be written.
    void write(const std::filesystem::path& photo, const flow::Examination& examination);

private:
    std::string freshStem(const std::filesystem::path& photo);

    std::filesystem::path folder_;
    std::set<std::string> used_;
};

}  // namespace cli
