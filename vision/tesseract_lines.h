#pragma once

#include <vector>

#include <opencv2/core.hpp>

#include "vision/line_certainty.h"
#include "vision/tesseract_engine.h"

namespace vision {

// Reads rows of a layer, each from two renderings of it, in two threads.
class TesseractLines {
public:
    // Throws ImageError, naming the package to install, if the language data is missing.
    TesseractLines() = default;

    //   layer    CV_8UC1, ink dark; not changed
    //   returns  the rows in which ink stands, in the order given; `chosen` is empty where
    //            Tesseract answered nothing
    std::vector<LineReadings> read(const cv::Mat& layer, const std::vector<LineRow>& rows);

private:
    TesseractEngine first_, second_;
};

}  // namespace vision
