#pragma once

#include <filesystem>
#include <memory>
#include <vector>

#include "vision/finder_network.h"
#include "vision/locate.h"

namespace vision {

// Finds the marks of a photo: with the finder network where there is one, else by the shapes of
// letters (locateStamps). What is found is grouped and outlined alike. Not for two threads at once.
class StampFinder {
public:
    // Without a network.
    StampFinder() = default;
    // Throws WeightsError if the folder's finder network cannot be used.
    explicit StampFinder(const std::filesystem::path& weights_folder);

    bool hasNetwork() const { return network_ != nullptr; }

    // As locateStamps.
    std::vector<StampOutline> find(const Photo& photo, const LocateOptions& options = {});

private:
    std::unique_ptr<FinderNetwork> network_;
};

}  // namespace vision
