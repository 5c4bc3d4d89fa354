#include "tests/vision/drawn_table.h"

#include <algorithm>
#include <cmath>

#include <opencv2/imgproc.hpp>

namespace {

constexpr double core_height = 0.5;  // of a capital
constexpr float plain_odds = 4;      // log odds where there is no doubt

double turnAt(const TrueLine& line, double along_px)
{
    return line.turn_deg * CV_PI / 180 +
           line.arch_deg * CV_PI / 180 * along_px / std::max(1.0, line.length_px);
}

// Around a band of the line.
std::vector<cv::Point2f> bandAlong(const TrueLine& line, double length_px, double height_px)
{
    std::vector<cv::Point2f> heads, feet;
    const int steps = std::max(2, static_cast<int>(length_px / 2));
    for (int i = 0; i <= steps; ++i) {
        const double along = length_px * i / steps - length_px / 2;
        heads.emplace_back(pointOf(line, along, -height_px / 2));
        feet.emplace_back(pointOf(line, along, height_px / 2));
    }
    heads.insert(heads.end(), feet.rbegin(), feet.rend());
    return heads;
}

// The nearest place of the line's course to a point, by looking along it.
double nearestAlong(const TrueLine& line, const cv::Point2d& point)
{
    double best = 0, least = 1e18;
    for (double along = -line.length_px / 2; along <= line.length_px / 2; along += 1)
        if (const double away = cv::norm(pointOf(line, along, 0) - point); away < least) {
            least = away;
            best = along;
        }
    return best;
}

void addLine(const TrueLine& line, vision::FinderTable& table)
{
    constexpr int fine = 4;  // parts of a pixel
    const double drawn_in = 2 * vision::FinderTable::drawn_in * line.capital_px;
    const double height = std::max(5.0, core_height * line.capital_px);
    std::vector<cv::Point> outline;
    for (const cv::Point2f& p : bandAlong(line, line.length_px - drawn_in, height))
        outline.emplace_back(cvRound((p.x + 0.5) * fine), cvRound((p.y + 0.5) * fine));
    const int step = fine * vision::FinderTable::step_px;
    cv::Mat inside = cv::Mat::zeros(table.core.size() * step, CV_8UC1), share;
    cv::fillPoly(inside, std::vector<std::vector<cv::Point>>{outline}, 255);
    cv::resize(inside, share, table.core.size(), 0, 0, cv::INTER_AREA);
    for (int y = 0; y < share.rows; ++y)
        for (int x = 0; x < share.cols; ++x) {
            const float part = static_cast<float>(share.at<uchar>(y, x)) / 255;
            if (part <= 0)
                continue;
            const double along = nearestAlong(line, vision::FinderTable::pixelOf(x, y));
            float& core = table.core.at<float>(y, x);
            core = std::max(core, plain_odds * (2 * part - 1));
            table.log_height.at<float>(y, x) =
                static_cast<float>(std::log2(line.capital_px / vision::FinderTable::unit_px));
            const cv::Point2d reading = readingOf(line, along);
            const cv::Point2d doubled(reading.x * reading.x - reading.y * reading.y,
                                      2 * reading.x * reading.y);
            table.cosine.at<float>(y, x) = static_cast<float>(doubled.x);
            table.sine.at<float>(y, x) = static_cast<float>(doubled.y);
        }
}

}  // namespace

cv::Point2d readingOf(const TrueLine& line, double along_px)
{
    const double a = turnAt(line, along_px);
    return {std::cos(a), std::sin(a)};
}

cv::Point2d pointOf(const TrueLine& line, double along_px, double across_px)
{
    const cv::Point2d here = readingOf(line, along_px), at_middle = readingOf(line, 0);
    const cv::Point2d down(-here.y, here.x), down_middle(-at_middle.y, at_middle.x);
    if (line.arch_deg == 0)
        return line.middle + along_px * here + across_px * down;
    const double radius = line.length_px / (line.arch_deg * CV_PI / 180);
    return line.middle + radius * down_middle - (radius - across_px) * down;
}

std::vector<cv::Point2f> lettersOf(const TrueLine& line)
{
    return bandAlong(line, line.length_px, line.capital_px);
}

vision::FinderTable drawnTable(cv::Size picture, const std::vector<TrueLine>& lines,
                               double wavering)
{
    constexpr int step = vision::FinderTable::step_px;
    const cv::Size size((picture.width + step - 1) / step, (picture.height + step - 1) / step);
    vision::FinderTable table{cv::Mat(size, CV_32FC1, cv::Scalar(-plain_odds)),
                              cv::Mat::zeros(size, CV_32FC1), cv::Mat::zeros(size, CV_32FC1),
                              cv::Mat::zeros(size, CV_32FC1)};
    for (const TrueLine& line : lines)
        addLine(line, table);
    cv::RNG dice(7);
    for (cv::Mat* part : {&table.core, &table.log_height, &table.cosine, &table.sine}) {
        cv::Mat noise(size, CV_32FC1);
        dice.fill(noise, cv::RNG::NORMAL, 0, wavering);
        *part += noise;
    }
    return table;
}
