#include "vision/found_line.h"

#include <algorithm>

#include <opencv2/imgproc.hpp>

namespace vision {

cv::Point2f spanOf(const FoundLine& line)
{
    const Quad& q = line.corners;
    return ((q[1] + q[2]) - (q[0] + q[3])) / 2;
}

double commonShare(const Quad& a, const Quad& b)
{
    std::vector<cv::Point2f> common;
    const std::vector<cv::Point2f> p(a.begin(), a.end()), q(b.begin(), b.end());
    const double area = cv::intersectConvexConvex(p, q, common);
    const double smaller = std::min(cv::contourArea(p), cv::contourArea(q));
    return smaller > 0 ? area / smaller : 0;
}

}  // namespace vision
