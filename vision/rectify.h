#pragma once

#include <opencv2/core.hpp>

#include "vision/locate.h"
#include "vision/photo.h"

namespace vision {

// A stamp laid straight: writing runs to the right, perspective and tilt taken out.
//
// Of a mirror image (ink that came off on the cloth it faced) the outline keeps its one meaning:
// corners clockwise in the photo, the first two on the side where the heads of the letters are. The
// stamp's top left is thus the left as the photo shows it with the heads up, where mirrored writing
// ends; the rectified picture begins at the other end.
struct RectifiedStamp {
    cv::Mat pixels;                    // CV_8UC3
    cv::Matx33d photo_from_rectified;  // homography: (x, y, 1) rectified -> photo, up to scale;
                                       //   holds the flip of a mirror image
    double up_deg = 0;  // how far the stamp's up is turned clockwise from the photo's, 0 <= x < 360
    std::vector<cv::Rect2d>
        lines;  // boxes of the outline's lines, rectified pixels, reading order;
                //   empty when the outline had none
    std::vector<LineCurve> curves;  // their courses in rectified pixels, as in StampOutline
    bool mirrored = false;          // the picture is flipped left to right against the photo
};

struct RectifyOptions {
    double margin = 0.15;      // of the stamp's height, added on every side of the outline
    int min_height_px = 0;     // smaller stamps are enlarged to it; 0 leaves the photo's resolution
    int max_width_px = 2400;   // larger ones are reduced
    bool correct_skew = true;  // take out what tilt of the lines is left, up to 10 degrees
    bool mirrored = false;     // the stamp is a mirror image: flip it so that it reads to the right
};

// Cuts a stamp out of the photo and straightens it. The photo is not changed.
// Throws std::invalid_argument if the photo is empty, the outline is not convex or lies outside the
// photo, it tells the courses of some lines only, or an option is out of range.
RectifiedStamp rectifyStamp(const Photo& photo, const StampOutline& outline,
                            const RectifyOptions& options = {});

// The same stamp turned by 180 degrees: pixels, homography, `up_deg` and lines.
RectifiedStamp turnedOver(const RectifiedStamp& stamp);

// Height of a line's letters in rectified pixels: across its course where it is bent, else its
// box's. Throws std::out_of_range if there is no such line.
double lineHeight(const RectifiedStamp& stamp, std::size_t line);

// A rectified point in photo pixels.
cv::Point2d photoFromRectified(const RectifiedStamp& stamp, const cv::Point2d& point);

}  // namespace vision
