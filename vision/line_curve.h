#pragma once

#include <vector>

#include <opencv2/core.hpp>

namespace vision {

// The course of a bent line of text: an arched stamp, a strap that runs over a fold.
struct LineCurve {
    // From the first letter to the last, half-way between the feet and the heads of capitals; so
    // dense that the straight pieces between leave the curve by less than a twentieth of
    // `height_px`. Empty: the line is straight, and its box tells all.
    std::vector<cv::Point2f> middle;
    double height_px = 0;  // of the line across its course, as a straight line's box is high

    bool isStraight() const { return middle.size() < 2; }
};

// The same course in another picture. Its height follows the scale across the course, on the mean.
//   to_from  homography: (x, y, 1) here -> there, up to scale
LineCurve mappedCurve(const LineCurve& curve, const cv::Matx33d& to_from);

// The same course run the other way, as the line is read with the picture turned over.
LineCurve reversedCurve(LineCurve curve);

// Around the letters: along the heads and back along the feet. Empty for a straight line.
std::vector<cv::Point2f> bandOf(const LineCurve& curve);

// Walks along a curve by the way covered. Before its first and behind its last point the course
// runs straight on.
class CurvePath {
public:
    // Throws std::invalid_argument for a straight line, or points that all coincide.
    explicit CurvePath(const LineCurve& curve);

    double length() const { return along_.back(); }  // pixels
    // The point of the picture so far along the course from its first point and so far across it,
    // towards the letters' feet.
    cv::Point2d at(double along, double across = 0) const;

private:
    std::size_t pieceAt(double along) const;
    cv::Point2d directionAt(std::size_t piece, double share) const;

    std::vector<cv::Point2d> points_, directions_;  // directions of length 1, at the points
    std::vector<double> along_;                     // the way from the first point to each
};

}  // namespace vision
