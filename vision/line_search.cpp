#include "vision/line_search.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include <opencv2/imgproc.hpp>

#include "vision/letter_pieces.h"

namespace vision {

namespace {

// Longest side searched: larger photos are reduced first, since a mark that matters fills more
// than a fiftieth of the picture and time grows with the area.
constexpr int longest_side_px = 2000;

cv::Mat greyOf(const cv::Mat& pixels)
{
    cv::Mat grey;
    if (pixels.channels() == 1)
        grey = pixels;
    else
        cv::cvtColor(pixels, grey, cv::COLOR_BGR2GRAY);
    return grey;
}

}  // namespace

SearchedPhoto reducedForSearch(const Photo& photo, double most_pixels)
{
    if (photo.pixels.empty())
        throw std::invalid_argument("reducedForSearch: the photo has no pixels");
    SearchedPhoto searched{greyOf(photo.pixels)};
    const double longest = std::max(searched.grey.cols, searched.grey.rows);
    const double scale =
        std::max(longest / longest_side_px,
                 std::sqrt(static_cast<double>(searched.grey.total()) / most_pixels));
    if (scale <= 1)
        return searched;
    searched.scale = static_cast<float>(scale);
    cv::Mat smaller;
    cv::resize(searched.grey, smaller, {}, 1 / scale, 1 / scale, cv::INTER_AREA);
    searched.grey = smaller;
    return searched;
}

std::vector<LetterChain> findLines(const SearchedPhoto& searched, int min_letter_px)
{
    PieceOptions options;
    const float reduced_px = static_cast<float>(min_letter_px) / searched.scale;
    options.min_letter_px = std::max(1, static_cast<int>(std::lround(reduced_px)));
    return chainLetters(findLetterPieces(searched.grey, options));
}

void scaleToPhoto(Quad& quad, float scale)
{
    const float shift = (scale - 1) / 2;
    for (cv::Point2f& corner : quad)
        corner = scale * corner + cv::Point2f(shift, shift);
}

}  // namespace vision
