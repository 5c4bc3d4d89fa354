#pragma once

#include <string>
#include <vector>

#include <opencv2/core.hpp>

#include "vision/rectify.h"

namespace vision {

// One enhanced rendering of a rectified stamp.
struct Layer {
    std::string name;  // stable, for records: "grey", "flat", "contrast", "ink", "reversed"
    cv::Mat grey;      // CV_8UC1, the size of the rectified stamp, ink dark
};

struct EnhancedStamp {
    RectifiedStamp rectified;
    std::vector<Layer> layers;  // in the order in which a person would flip through them
    bool light_ink = false;  // the ink was lighter than its ground; layers are turned to dark ink

    // Throws std::out_of_range naming the layer if there is none.
    const cv::Mat& layer(const std::string& name) const;
};

struct EnhanceOptions {
    double flatten_radius = 1.5;  // light is averaged over this many letter heights
    double clip_limit = 3.0;      // of contrast-limited histogram equalisation
};

// Makes the ink easier to see without inventing any: the light is divided out, contrast stretched,
// polarity settled. Every step stays as a layer.
// Throws std::invalid_argument if the stamp is empty or an option is out of range.
EnhancedStamp enhanceStamp(const RectifiedStamp& stamp, const EnhanceOptions& options = {});

}  // namespace vision
