#include "tests/support/synthetic/surface.h"

#include <cmath>

namespace synthetic {

Surface blankSurface(cv::Size size)
{
    return {cv::Mat::zeros(size, CV_32FC1), cv::Mat::zeros(size, CV_32FC3),
            cv::Mat::ones(size, CV_32FC1), cv::Mat::zeros(size, CV_32FC1)};
}

cv::Vec3f linearColour(const cv::Vec3b& bgr)
{
    cv::Vec3f linear;
    for (int c = 0; c < 3; ++c) {
        const float value = static_cast<float>(bgr[c]) / 255;
        linear[c] = value <= 0.04045F ? value / 12.92F : std::pow((value + 0.055F) / 1.055F, 2.4F);
    }
    return linear;
}

}  // namespace synthetic
