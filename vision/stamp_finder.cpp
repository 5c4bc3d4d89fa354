#include "vision/stamp_finder.h"

#include <stdexcept>

#include <opencv2/imgproc.hpp>

#include "vision/finder_search.h"
#include "vision/line_groups.h"

namespace vision {

StampFinder::StampFinder(const std::filesystem::path& weights_folder)
    : network_(std::make_unique<FinderNetwork>(weights_folder))
{
}

std::vector<StampOutline> StampFinder::find(const Photo& photo, const LocateOptions& options)
{
    if (!network_)
        return locateStamps(photo, options);
    if (photo.pixels.empty())
        throw std::invalid_argument("StampFinder: the photo has no pixels");
    cv::Mat grey;
    cv::cvtColor(photo.pixels, grey, cv::COLOR_BGR2GRAY);
    std::vector<FoundLine> lines;
    for (const FinderLine& found : searchLines(grey, *network_))
        if (found.line.height_px >= options.min_letter_px)
            lines.push_back(found.line);
    return stampsOf(lines, grey, options);
}

}  // namespace vision
