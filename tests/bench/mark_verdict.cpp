#include "tests/bench/mark_verdict.h"

#include <algorithm>

#include <opencv2/imgproc.hpp>

namespace bench {

namespace {

constexpr double counts_in_sight = 0.5, counts_inked = 0.25;
constexpr double covered_from = 0.9, most_area = 2.5, lies_on_mark = 0.2;

cv::Mat areaOf(const vision::Quad& corners, cv::Size photo)
{
    cv::Mat area = cv::Mat::zeros(photo, CV_8UC1);
    std::vector<cv::Point> polygon;
    for (const cv::Point2f& corner : corners)
        polygon.emplace_back(cvRound(corner.x), cvRound(corner.y));
    cv::fillConvexPoly(area, polygon, 255);
    return area;
}

double shareOf(const cv::Mat& part, const cv::Mat& whole)
{
    return cv::countNonZero(part & whole) / std::max(1.0, 1.0 * cv::countNonZero(whole));
}

}  // namespace

MarkVerdict judgeOutlines(const synthetic::StampTruth& truth, cv::Size photo,
                          const std::vector<vision::StampOutline>& outlines)
{
    MarkVerdict verdict;
    verdict.best = outlines.size();
    const cv::Mat mark = areaOf(truth.outline, photo);
    cv::Mat all = cv::Mat::zeros(photo, CV_8UC1);
    double most = 0;
    for (std::size_t i = 0; i < outlines.size(); ++i) {
        const cv::Mat area = areaOf(outlines[i].corners, photo);
        if (shareOf(mark, area) < lies_on_mark) {
            ++verdict.false_marks;
            continue;
        }
        all |= area;
        if (const double share = shareOf(area, mark); share > most) {
            most = share;
            verdict.best = i;
        }
    }
    double letters = 0, covered = 0;
    verdict.every_letter = true;
    for (const synthetic::LineTruth& line : truth.lines)
        for (const synthetic::LetterTruth& letter : line.letters) {
            if (letter.text == " " || letter.in_sight < counts_in_sight ||
                letter.inked < counts_inked)
                continue;
            const cv::Mat area = areaOf(letter.corners, photo);
            const double pixels = cv::countNonZero(area), share = shareOf(all, area);
            letters += pixels;
            covered += share * pixels;
            verdict.every_letter = verdict.every_letter && share >= covered_from;
        }
    verdict.covered = covered >= covered_from * letters;
    verdict.tight = cv::countNonZero(all) <= most_area * cv::countNonZero(mark);
    return verdict;
}

bool readsBothWays(const std::vector<std::string>& lines)
{
    static const std::string either_way = "HINOSXZ018 .,-/";
    return std::all_of(lines.begin(), lines.end(), [](const std::string& line) {
        return line.find_first_not_of(either_way) == std::string::npos;
    });
}

}  // namespace bench
