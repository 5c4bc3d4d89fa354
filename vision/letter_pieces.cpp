#include "vision/letter_pieces.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include <opencv2/imgproc.hpp>

namespace vision {

namespace {

// Letter heights one level looks for, in that level's own pixels. The range is wider than an octave
// so that the lines of a stamp with letters near a bound are whole at one level at least.
constexpr float smallest_px = 9, largest_px = 46, longest_px = 1.6F * largest_px;
constexpr int least_side_px = 24;  // a smaller picture holds no line
constexpr int window_px = 35;      // ground is judged over about this far, level pixels

struct Level {
    cv::Mat log_grey;  // CV_32FC1
    cv::Mat step;      // log grey minus local mean: negative where darker than around
    cv::Mat spread;    // local standard deviation
    float scale = 1;   // pixels of the picture a level pixel
    int number = 0;
};

Level makeLevel(const cv::Mat& grey, int number)
{
    Level level;
    level.number = number;
    cv::Mat reduced = grey, smooth;
    if (number > 0) {
        const double wanted = std::pow(2.0, number / 2.0);
        const cv::Size size(cvRound(grey.cols / wanted), cvRound(grey.rows / wanted));
        cv::resize(grey, reduced, size, 0, 0, cv::INTER_AREA);
        level.scale = static_cast<float>(wanted);
    }
    cv::GaussianBlur(reduced, smooth, {}, 0.8);
    smooth.convertTo(level.log_grey, CV_32F);
    // Log levels make a shadow a sum, not a factor; the offset keeps sensor noise in the dark
    // small.
    level.log_grey += 12.0;
    cv::log(level.log_grey, level.log_grey);
    cv::Mat mean, mean_square;
    const cv::Size window(window_px, window_px);
    cv::blur(level.log_grey, mean, window);
    cv::sqrBoxFilter(level.log_grey, mean_square, CV_32F, window);
    level.step = level.log_grey - mean;
    cv::Mat variance = mean_square - mean.mul(mean);
    cv::max(variance, 0, variance);
    cv::sqrt(variance, level.spread);
    return level;
}

cv::Mat inkMask(const Level& level, bool light, double min_contrast)
{
    cv::Mat threshold = 0.35 * level.spread;
    cv::max(threshold, min_contrast / 2, threshold);
    cv::Mat mask;
    if (light)
        mask = level.step > threshold;
    else
        mask = level.step < -threshold;
    return mask;
}

struct Moments {
    double sum = 0, squares = 0;
    int count = 0;

    void add(double value)
    {
        sum += value;
        squares += value * value;
        ++count;
    }
    double mean() const { return sum / count; }
    double variance() const { return std::max(0.0, squares / count - mean() * mean()); }
};

// Compares the ink of one component with the ground around it.
void measureContrast(const Level& level, const cv::Mat& labels, int label, cv::Rect box,
                     LetterPiece& piece)
{
    const cv::Rect around = cv::Rect(box.x - 2, box.y - 2, box.width + 4, box.height + 4) &
                            cv::Rect(0, 0, labels.cols, labels.rows);
    Moments ink, ground;
    for (int y = around.y; y < around.y + around.height; ++y) {
        const int* row = labels.ptr<int>(y);
        const float* value = level.log_grey.ptr<float>(y);
        for (int x = around.x; x < around.x + around.width; ++x) {
            if (row[x] == label)
                ink.add(value[x]);
            else if (row[x] == 0)
                ground.add(value[x]);
        }
    }
    if (ink.count == 0 || ground.count == 0)
        return;
    const double step = std::abs(ground.mean() - ink.mean());
    piece.contrast = static_cast<float>(step);
    piece.separation =
        static_cast<float>(step / std::sqrt(ink.variance() + ground.variance() + 1e-6));
}

// Fills in shape and place; false when it is no letter by its shape.
bool describeShape(const cv::Mat& labels, int label, cv::Rect box, int area, float scale,
                   LetterPiece& piece)
{
    std::vector<cv::Point> edge;  // ends of each row's run are enough for the hull
    int perimeter = 0;
    for (int y = box.y; y < box.y + box.height; ++y) {
        const int* row = labels.ptr<int>(y);
        int first = -1, last = -1;
        for (int x = box.x; x < box.x + box.width; ++x) {
            if (row[x] != label)
                continue;
            if (first < 0)
                first = x;
            last = x;
            const bool inner = x > 0 && x + 1 < labels.cols && y > 0 && y + 1 < labels.rows &&
                               row[x - 1] == label && row[x + 1] == label &&
                               labels.at<int>(y - 1, x) == label &&
                               labels.at<int>(y + 1, x) == label;
            perimeter += inner ? 0 : 1;
        }
        if (first >= 0) {
            edge.emplace_back(first, y);
            edge.emplace_back(last, y);
        }
    }
    std::vector<cv::Point> hull;
    cv::convexHull(edge, hull);
    const cv::RotatedRect around = cv::minAreaRect(hull);
    const float longest = std::max(around.size.width, around.size.height) + 1;
    const float shortest = std::min(around.size.width, around.size.height) + 1;
    if (longest < smallest_px || longest > longest_px || longest > 14 * shortest)
        return false;
    const auto hull_area = static_cast<float>(cv::contourArea(hull) + 0.5 * perimeter);
    piece.fill = std::min(1.0F, static_cast<float>(area) / std::max(1.0F, hull_area));
    // A stroke of width w and length l has area wl and an inner border of about 2l pixels.
    piece.stroke_px = scale * 2 * static_cast<float>(area) / static_cast<float>(perimeter);
    piece.size_px = scale * longest;
    piece.thin_px = scale * shortest;
    const float shift = (scale - 1) / 2;  // centre of a halved pixel in the picture's own pixels
    piece.centre = scale * around.center + cv::Point2f(shift, shift);
    for (const cv::Point& p : hull)
        piece.hull.emplace_back(scale * static_cast<float>(p.x) + shift,
                                scale * static_cast<float>(p.y) + shift);
    return true;
}

void addPieces(const Level& level, bool light, const PieceOptions& options,
               std::vector<LetterPiece>& pieces)
{
    const cv::Mat mask = inkMask(level, light, options.min_contrast);
    cv::Mat labels, stats, centroids;
    const int count = cv::connectedComponentsWithStats(mask, labels, stats, centroids, 8, CV_32S);
    const float scale = level.scale;
    std::vector<LetterPiece> found;
    for (int label = 1; label < count; ++label) {
        const int* row = stats.ptr<int>(label);
        const cv::Rect box(row[cv::CC_STAT_LEFT], row[cv::CC_STAT_TOP], row[cv::CC_STAT_WIDTH],
                           row[cv::CC_STAT_HEIGHT]);
        const int area = row[cv::CC_STAT_AREA];
        const auto longer = static_cast<float>(std::max(box.width, box.height));
        if (area < 12 || longer < smallest_px * 0.7F || longer > longest_px)
            continue;
        LetterPiece piece;
        piece.light = light;
        piece.level = level.number;
        if (!describeShape(labels, label, box, area, scale, piece))
            continue;
        if (piece.size_px < static_cast<float>(options.min_letter_px) * 0.9F)
            continue;
        measureContrast(level, labels, label, box, piece);
        if (piece.contrast >= options.min_contrast)
            found.push_back(std::move(piece));
    }
    const auto most = static_cast<std::size_t>(options.max_pieces);
    if (found.size() > most) {
        std::nth_element(found.begin(), found.begin() + static_cast<std::ptrdiff_t>(most),
                         found.end(), [](const LetterPiece& a, const LetterPiece& b) {
                             return a.contrast * a.separation > b.contrast * b.separation;
                         });
        found.resize(most);
    }
    std::move(found.begin(), found.end(), std::back_inserter(pieces));
}

}  // namespace

std::vector<LetterPiece> findLetterPieces(const cv::Mat& grey, const PieceOptions& options)
{
    if (grey.empty() || grey.type() != CV_8UC1)
        throw std::invalid_argument("findLetterPieces: the picture must be CV_8UC1 and not empty");
    if (options.min_letter_px < 1)
        throw std::invalid_argument("PieceOptions.min_letter_px must be at least 1");
    if (options.max_pieces < 1)
        throw std::invalid_argument("PieceOptions.max_pieces must be at least 1");
    if (!(options.min_contrast > 0))
        throw std::invalid_argument("PieceOptions.min_contrast must be positive");
    std::vector<LetterPiece> pieces;
    const int longest = std::max(grey.cols, grey.rows);
    for (int number = 0; longest / std::pow(2.0, number / 2.0) >= least_side_px; ++number) {
        if (std::min(grey.cols, grey.rows) / std::pow(2.0, number / 2.0) < 1)
            break;
        const Level level = makeLevel(grey, number);
        addPieces(level, false, options, pieces);
        addPieces(level, true, options, pieces);
    }
    return pieces;
}

}  // namespace vision
