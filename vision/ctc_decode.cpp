#include "vision/ctc_decode.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "vision/ctc_search.h"

namespace vision {

namespace {

constexpr float worth_asking =
    -7;  // log share that a class reaches somewhere, to be an alternative
constexpr double least_share = 0.001;
constexpr double stands_from = 0.05;  // of a place's mass at a step, for the step to belong to it

constexpr double hardly_there = 1e-5;  // chance that a place reaches beyond its stretch of steps

// Forward and backward mass of one line of classes: blanks at even states, place i at 2 i + 1.
class AlignmentTables {
public:
    AlignmentTables(const cv::Mat& log_shares, const std::vector<int>& line)
        : seen_(log_shares), line_(line), states_(2 * line.size() + 1)
    {
        fillForward();
        fillBackward();
    }

    // Log mass of all alignments of the line with another class in one place, within its stretch.
    double withClass(std::size_t place, int of_class, const cv::Range& stretch) const;
    // The steps between the places beside it, where the place can stand.
    cv::Range stretchOf(std::size_t place) const;
    // And without that place.
    double without(std::size_t place) const;
    double whole() const { return total_; }
    // Share of the line's mass that is in this place at step t.
    double at(std::size_t place, int t) const
    {
        const std::size_t state = 2 * place + 1;
        return std::exp(forward(t, state) + backward(t, state) - total_);
    }

private:
    int classOf(std::size_t state) const { return state % 2 == 0 ? 0 : line_[state / 2]; }
    double seen(int t, int of_class) const { return seen_.at<float>(t, of_class); }
    double& forward(int t, std::size_t s)
    {
        return forward_[static_cast<std::size_t>(t) * states_ + s];
    }
    double forward(int t, std::size_t s) const
    {
        return forward_[static_cast<std::size_t>(t) * states_ + s];
    }
    double backward(int t, std::size_t s) const
    {
        return backward_[static_cast<std::size_t>(t) * states_ + s];
    }
    // A place may follow the one before it without a blank, unless it holds the same.
    bool follows(std::size_t place, int of_class) const
    {
        return place > 0 && line_[place - 1] != of_class;
    }
    double entering(int t, std::size_t place, int of_class) const;
    double leaving(int t, std::size_t place, int of_class) const;
    void fillForward();
    void fillBackward();

    const cv::Mat& seen_;
    const std::vector<int>& line_;
    std::size_t states_;
    std::vector<double> forward_, backward_;
    double total_ = never;
};

void AlignmentTables::fillForward()
{
    const int steps = seen_.rows;
    forward_.assign(static_cast<std::size_t>(steps) * states_, never);
    forward(0, 0) = seen(0, 0);
    if (states_ > 1)
        forward(0, 1) = seen(0, line_[0]);
    for (int t = 1; t < steps; ++t)
        for (std::size_t s = 0; s < states_; ++s) {
            double mass = forward(t - 1, s);
            if (s > 0)
                mass = logSum(mass, forward(t - 1, s - 1));
            if (s % 2 == 1 && follows(s / 2, line_[s / 2]))
                mass = logSum(mass, forward(t - 1, s - 2));
            forward(t, s) = mass + seen(t, classOf(s));
        }
    total_ = forward(steps - 1, states_ - 1);
    if (states_ > 1)
        total_ = logSum(total_, forward(steps - 1, states_ - 2));
}

void AlignmentTables::fillBackward()
{
    const int steps = seen_.rows;
    backward_.assign(static_cast<std::size_t>(steps) * states_, never);
    const auto put = [&](int t, std::size_t s, double mass) {
        backward_[static_cast<std::size_t>(t) * states_ + s] = mass;
    };
    put(steps - 1, states_ - 1, 0);
    if (states_ > 1)
        put(steps - 1, states_ - 2, 0);
    for (int t = steps - 2; t >= 0; --t)
        for (std::size_t s = 0; s < states_; ++s) {
            const auto next = [&](std::size_t to) {
                return seen(t + 1, classOf(to)) + backward(t + 1, to);
            };
            double mass = next(s);
            if (s + 1 < states_)
                mass = logSum(mass, next(s + 1));
            if (s % 2 == 1 && s + 2 < states_ && follows(s / 2 + 1, line_[s / 2 + 1]))
                mass = logSum(mass, next(s + 2));
            put(t, s, mass);
        }
}

// Log mass of having come to just before step t, ready to be in this place.
double AlignmentTables::entering(int t, std::size_t place, int of_class) const
{
    if (t == 0)
        return place == 0 ? 0 : never;
    const double blank = forward(t - 1, 2 * place);
    return follows(place, of_class) ? logSum(blank, forward(t - 1, 2 * place - 1)) : blank;
}

// Log mass of all that comes after step t, when the place is left with it.
double AlignmentTables::leaving(int t, std::size_t place, int of_class) const
{
    const bool last = place + 1 == line_.size();
    if (t + 1 == seen_.rows)
        return last ? 0 : never;
    const double blank = seen(t + 1, 0) + backward(t + 1, 2 * place + 2);
    if (last || line_[place + 1] == of_class)
        return blank;
    return logSum(blank, seen(t + 1, line_[place + 1]) + backward(t + 1, 2 * place + 3));
}

cv::Range AlignmentTables::stretchOf(std::size_t place) const
{
    const auto share = [&](int t, std::size_t from, std::size_t to) {
        double sum = 0;
        for (std::size_t s = from; s < to; ++s)
            sum += std::exp(forward(t, s) + backward(t, s) - total_);
        return sum;
    };
    cv::Range stretch(0, seen_.rows);
    while (stretch.start + 1 < stretch.end &&
           share(stretch.start, 2 * place, states_) < hardly_there)
        ++stretch.start;
    while (stretch.end - 1 > stretch.start &&
           share(stretch.end - 1, 0, 2 * place + 3) < hardly_there)
        --stretch.end;
    return stretch;
}

double AlignmentTables::withClass(std::size_t place, int of_class, const cv::Range& stretch) const
{
    double standing = never, mass = never;
    for (int t = stretch.start; t < stretch.end; ++t) {
        standing = logSum(standing, entering(t, place, of_class)) + seen(t, of_class);
        mass = logSum(mass, standing + leaving(t, place, of_class));
    }
    return mass;
}

double AlignmentTables::without(std::size_t place) const
{
    const int steps = seen_.rows;
    const int before = place > 0 ? line_[place - 1] : 0;
    const auto cameTo = [&](int t, int to) {  // before step t, from the blank or the place before
        if (t == 0)
            return place == 0 ? 0.0 : never;
        const double blank = forward(t - 1, 2 * place);
        return place > 0 && before != to ? logSum(blank, forward(t - 1, 2 * place - 1)) : blank;
    };
    if (place + 1 == line_.size()) {
        const double blank = forward(steps - 1, 2 * place);
        return place > 0 ? logSum(blank, forward(steps - 1, 2 * place - 1)) : blank;
    }
    double mass = never;
    const int next = line_[place + 1];
    for (int t = 0; t < steps; ++t)
        mass = logSum(mass, cameTo(t, next) + seen(t, next) + backward(t, 2 * place + 3));
    return mass;
}

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

int LineClasses::capitalOf(int of_class) const
{
    if (!isCharacter(of_class))
        return of_class;
    const std::string& small = characters[static_cast<std::size_t>(of_class) - 1];
    if (small.size() != 1 || small[0] < 'a' || small[0] > 'z')
        return of_class;
    const std::string capital(1, static_cast<char>(small[0] - 'a' + 'A'));
    const auto found = std::find(characters.begin(), characters.end(), capital);
    return found == characters.end() ? of_class : static_cast<int>(found - characters.begin()) + 1;
}

DecodedLine decodeLine(const cv::Mat& log_shares, const LineClasses& classes,
                       const WritingModel* writing, const DecodeOptions& options)
{
    check(log_shares, classes, options);
    DecodedLine decoded;
    if (log_shares.empty())
        return decoded;
    const WritingWeight weight(classes, writing, options.writing_weight);
    const std::vector<SearchedLine> lines = searchLines(log_shares, weight, options.beam);
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
