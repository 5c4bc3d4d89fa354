#include "vision/text_rows.h"

#include <algorithm>
#include <stdexcept>

#include "vision/letter_chains.h"
#include "vision/letter_pieces.h"

namespace vision {

namespace {

constexpr double rim_of_whole = 0.1875;  // of a picture that is one line, above and below it

cv::Rect2d uprightBox(const Quad& corners)
{
    cv::Point2f low = corners[0], high = corners[0];
    for (const cv::Point2f& corner : corners) {
        low = {std::min(low.x, corner.x), std::min(low.y, corner.y)};
        high = {std::max(high.x, corner.x), std::max(high.y, corner.y)};
    }
    return {cv::Point2d(low), cv::Point2d(high)};
}

// Pieces of one line, parted by a wide gap, stand side by side at one height.
bool onOneRow(const cv::Rect2d& a, const cv::Rect2d& b)
{
    const double common = std::min(a.y + a.height, b.y + b.height) - std::max(a.y, b.y);
    return common > 0.5 * std::min(a.height, b.height);
}

}  // namespace

std::vector<LineRow> findTextRows(const cv::Mat& grey)
{
    if (grey.empty() || grey.type() != CV_8UC1)
        throw std::invalid_argument("findTextRows: the picture must be CV_8UC1 and not empty");
    std::vector<LetterPiece> pieces = findLetterPieces(grey);
    std::erase_if(pieces, [](const LetterPiece& piece) { return piece.light; });
    ChainOptions options;
    options.widest_gap = 2.5;  // the stamp is known: what stands on one row is one line
    options.max_tilt_deg = 15;
    std::vector<LineRow> rows;
    for (const LetterChain& chain : chainLetters(pieces, options)) {
        if (chain.score < 0.3)
            continue;
        const cv::Rect2d box = uprightBox(chain.corners);
        const auto same = std::find_if(rows.begin(), rows.end(),
                                       [&](const LineRow& row) { return onOneRow(row.box, box); });
        if (same == rows.end())
            rows.push_back({box});
        else
            same->box |= box;
    }
    std::sort(rows.begin(), rows.end(),
              [](const LineRow& a, const LineRow& b) { return a.box.y < b.box.y; });
    return rows;
}

LineRow rowOfWhole(const cv::Mat& picture)
{
    const double rim = rim_of_whole * picture.rows;
    return {
        {rim, rim, std::max(1.0, picture.cols - 2 * rim), std::max(1.0, picture.rows - 2 * rim)}};
}

}  // namespace vision
