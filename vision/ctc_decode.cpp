#include "vision/ctc_decode.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "vision/ctc_alignments.h"
#include "vision/ctc_search.h"

namespace vision {

namespace {

constexpr float worth_asking =
    -7;  // log share that a class reaches somewhere, to be an alternative
constexpr double least_share =
    0.001;                            // of a place; less is not worth a name among its alternatives
constexpr double stands_from = 0.05;  // of a place's mass at a step, for the step to belong to it

void check(const cv::Mat& log_shares, const LineClasses& classes, const DecodeOptions& options)
{
    if (log_shares.type() != CV_32FC1 || log_shares.cols != classes.count())
        throw std::invalid_argument("decodeLine: the table must be CV_32F, a column a class");
    if (options.beam < 1)
        throw std::invalid_argument("DecodeOptions.beam must be at least 1");
    if (!(options.writing_weight >= 0 && options.writing_weight <= 10))
        throw std::invalid_argument("DecodeOptions.writing_weight must be from 0 to 10");
}

std::vector<int> classesWorthAsking(const cv::Mat& log_shares)
{
    cv::Mat most;
    cv::reduce(log_shares, most, 0, cv::REDUCE_MAX);
    std::vector<int> classes;
    for (int c = 1; c < most.cols; ++c)
        if (most.at<float>(0, c) > worth_asking)
            classes.push_back(c);
    return classes;
}

std::vector<ClassShare> sharesOf(const AlignmentTables& tables, const cv::Mat& log_shares,
                                 const std::vector<int>& line, std::size_t place,
                                 const WritingWeight& writing, const WritingSums& whole_line)
{
    const cv::Range stretch = tables.stretchOf(place);
    const std::vector<int> asked = classesWorthAsking(log_shares.rowRange(stretch));
    std::vector<ClassShare> shares;
    std::vector<int> shorter = line;
    shorter.erase(shorter.begin() + static_cast<std::ptrdiff_t>(place));
    double sum = tables.without(place) + writing.log(writing.ofLine(shorter));
    const std::vector<WritingSums> written = writing.withClasses(line, whole_line, place, asked);
    for (std::size_t i = 0; i < asked.size(); ++i) {
        const double mass = tables.withClass(place, asked[i], stretch) + writing.log(written[i]);
        shares.push_back({asked[i], mass});
        sum = logSum(sum, mass);
    }
    for (ClassShare& share : shares)
        share.share = std::exp(share.share - sum);
    std::erase_if(shares, [](const ClassShare& share) { return share.share < least_share; });
    std::stable_sort(shares.begin(), shares.end(),
                     [](const ClassShare& a, const ClassShare& b) { return a.share > b.share; });
    return shares;
}

void setExtent(const AlignmentTables& tables, std::size_t index, int steps, DecodedPlace& place)
{
    double most = 0, sum = 0, middle = 0;
    for (int t = 0; t < steps; ++t) {
        const double here = tables.at(index, t);
        most = std::max(most, here);
        sum += here;
        middle += here * (t + 0.5);
    }
    middle = sum > 0 ? middle / sum : 0;
    place.first_step = place.end_step = middle;
    for (int t = 0; t < steps; ++t)
        if (tables.at(index, t) > stands_from * most) {
            place.first_step = std::min(place.first_step, static_cast<double>(t));
            place.end_step = std::max(place.end_step, t + 1.0);
        }
}

// The share of a text, however its letters' case is taken: in many faces it cannot be told.
double shareOf(const std::vector<int>& best, const std::vector<SearchedLine>& lines,
               const LineClasses& classes)
{
    double sum = never, same = never;
    for (const SearchedLine& line : lines) {
        sum = logSum(sum, line.log_score);
        const bool is_same = std::equal(
            best.begin(), best.end(), line.classes.begin(), line.classes.end(),
            [&](int a, int b) { return a == b || classes.capitalOf(a) == classes.capitalOf(b); });
        same = is_same ? logSum(same, line.log_score) : same;
    }
    return std::exp(same - sum);
}

}  // namespace

int LineClasses::classOf(const std::string& character) const
{
    const auto found = std::find(characters.begin(), characters.end(), character);
    return found == characters.end() ? 0 : static_cast<int>(found - characters.begin()) + 1;
}

int LineClasses::capitalOf(int of_class) const
{
    if (!isCharacter(of_class))
        return of_class;
    const std::string& small = characters[static_cast<std::size_t>(of_class) - 1];
    if (small.size() != 1 || small[0] < 'a' || small[0] > 'z')
        return of_class;
    const int capital = classOf(std::string(1, static_cast<char>(small[0] - 'a' + 'A')));
    return capital > 0 ? capital : of_class;
}

DecodedLine decodeLine(const cv::Mat& log_shares, const LineClasses& classes,
                       const WritingModel* writing, const DecodeOptions& options)
{
    check(log_shares, classes, options);
    DecodedLine decoded;
    if (log_shares.empty())
        return decoded;
    const WritingWeight weight(classes, writing, options.writing_weight);
    const std::vector<SearchedLine> lines = likeliestLines(log_shares, weight, options.beam);
    const std::vector<int>& best = lines.front().classes;
    decoded.share = shareOf(best, lines, classes);
    if (best.empty())
        return decoded;
    const AlignmentTables tables(log_shares, best);
    decoded.seen = std::exp(tables.whole());
    const WritingSums whole_line = weight.ofLine(best);
    for (std::size_t i = 0; i < best.size(); ++i) {
        DecodedPlace place;
        place.shares = sharesOf(tables, log_shares, best, i, weight, whole_line);
        setExtent(tables, i, log_shares.rows, place);
        decoded.places.push_back(std::move(place));
    }
    return decoded;
}

}  // namespace vision
