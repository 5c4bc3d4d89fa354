#include "vision/ctc_alignments.h"

namespace vision {

namespace {

constexpr double hardly_there = 1e-5;  // chance that a place reaches beyond its stretch of steps

}  // namespace

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

}  // namespace vision
