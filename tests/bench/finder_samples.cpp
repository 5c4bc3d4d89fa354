#include "tests/bench/finder_samples.h"

#include <algorithm>

#include <opencv2/imgproc.hpp>

#include "tests/bench/level_photos.h"
#include "vision/finder_search.h"

namespace bench {

void addFinderLines(const LabelledPhoto& labelled, int group, vision::FinderNetwork& network,
                    std::vector<Sample>& samples)
{
    constexpr double is_line = 0.45, is_beside = 0.1;
    cv::Mat grey;
    cv::cvtColor(labelled.photo.pixels, grey, cv::COLOR_BGR2GRAY);
    for (const vision::FinderLine& found : vision::searchLines(grey, network)) {
        double overlap = 0, common = 0;
        for (const LabelledLine& line : labelled.lines) {
            overlap = std::max(overlap, overlapOf(found.line.corners, line.corners));
            common = std::max(common, vision::commonShare(found.line.corners, line.corners));
        }
        if (overlap < is_line && common > is_beside)
            continue;
        samples.push_back({vision::termsOf(found.traits), overlap >= is_line, group});
    }
}

void eachLevelPhoto(std::uint32_t seed, int count, const PhotoTask& task)
{
    for (std::uint32_t i = 0; i < static_cast<std::uint32_t>(count); ++i) {
        for (const SampleLevel level : {SampleLevel::Easy, SampleLevel::Medium, SampleLevel::Hard})
            task(labelled(levelPhoto(level, seed + i), folderOf(level) + std::to_string(seed + i)));
        task(labelled(barePhoto(seed + i), "bare" + std::to_string(seed + i)));
    }
}

}  // namespace bench
