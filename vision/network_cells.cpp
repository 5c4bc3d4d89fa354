#include "vision/network_cells.h"

#include <algorithm>
#include <cmath>

#include "vision/cell_states.h"
#include "vision/line_network.h"

namespace vision {

namespace {

constexpr double widest_cell = 0.75;  // of the pitch, to either side of a letter's middle

double logOdds(double share)
{
    const double p = std::clamp(share, 1e-4, 1 - 1e-4);
    return std::log(p / (1 - p));
}

double bestShare(const DecodedPlace& place)
{
    return place.shares.empty() ? 0 : place.shares.front().share;
}

double middleOf(const DecodedPlace& place)
{
    return (place.first_step + place.end_step) / 2;
}

// The usual distance between neighbours; a letter's height where there are none.
double pitchOf(const DecodedLine& line)
{
    std::vector<double> steps;
    for (std::size_t i = 1; i < line.places.size(); ++i)
        steps.push_back(middleOf(line.places[i]) - middleOf(line.places[i - 1]));
    if (steps.empty())
        return 0.6 * LineNetwork::height_px / LineNetwork::step_px;
    std::nth_element(steps.begin(), steps.begin() + static_cast<std::ptrdiff_t>(steps.size() / 2),
                     steps.end());
    return std::max(1.0, steps[steps.size() / 2]);
}

// A cell reaches half-way to its neighbours, but not beyond a letter's room.
void setExtent(const DecodedLine& line, std::size_t i, const LineCrop& crop, models::Cell& cell)
{
    const double middle = middleOf(line.places[i]), room = widest_cell * pitchOf(line);
    double left = middle - room, right = middle + room;
    if (i > 0)
        left = std::max(left, (middle + middleOf(line.places[i - 1])) / 2);
    if (i + 1 < line.places.size())
        right = std::min(right, (middle + middleOf(line.places[i + 1])) / 2);
    const auto rectified = [&](double step) {
        return crop.origin.x + step * LineNetwork::step_px / crop.scale;
    };
    cell.left_px = rectified(left);
    cell.right_px = rectified(right);
}

// The letters among the shares, brought to a certainty that holds.
void addAlternatives(const DecodedPlace& place, const LineClasses& classes, double certainty,
                     models::Cell& cell)
{
    double rest = 0;
    for (std::size_t i = 1; i < place.shares.size(); ++i)
        rest += place.shares[i].share;
    const double gone = std::max(0.0, 1 - bestShare(place) - rest);  // nothing may stand here
    const double spread = rest > 0 ? (1 - certainty) / (rest + gone) : 0;
    for (std::size_t i = 0; i < place.shares.size(); ++i) {
        const ClassShare& share = place.shares[i];
        if (!classes.isCharacter(share.of_class) || cell.alternatives.size() >= most_alternatives)
            continue;
        const double its = i == 0 ? certainty : std::min(certainty, share.share * spread);
        cell.alternatives.push_back(
            {classes.characters[static_cast<std::size_t>(share.of_class) - 1], its});
    }
}

models::Cell cellFrom(const DecodedPlace& place, const LineClasses& classes, double certainty)
{
    models::Cell cell;
    const int best = place.shares.empty() ? classes.traces() : place.shares.front().of_class;
    if (best == classes.lost()) {
        cell.state = models::CellState::Lost;
        return cell;
    }
    addAlternatives(place, classes, certainty, cell);
    if (best == classes.traces() || cell.alternatives.empty())
        cell.state = models::CellState::Traces;
    else
        cell.state = stateAt(certainty);
    return cell;
}

bool holdsLetterOrDigit(const models::Line& line)
{
    return std::any_of(line.cells.begin(), line.cells.end(), [](const models::Cell& cell) {
        return cell.state == models::CellState::Traces ||
               (!cell.alternatives.empty() && isLetterOrDigit(cell.alternatives.front().text));
    });
}

}  // namespace

DecodedLineTraits traitsOf(const DecodedLine& line, double steps)
{
    DecodedLineTraits traits;
    if (line.places.empty())
        return traits;
    traits.surest = -std::log(std::clamp(1 - line.share, 1e-4, 1.0));
    traits.least = logOdds(1);
    for (const DecodedPlace& place : line.places) {
        traits.least = std::min(traits.least, logOdds(bestShare(place)));
        traits.mean += logOdds(bestShare(place)) / static_cast<double>(line.places.size());
    }
    traits.letters = std::log(static_cast<double>(line.places.size()));
    const double covered = line.places.back().end_step - line.places.front().first_step;
    traits.bare = std::clamp(1 - covered / std::max(1.0, steps), 0.0, 1.0);
    double widest = 1;
    for (std::size_t i = 1; i < line.places.size(); ++i)
        widest = std::max(widest, middleOf(line.places[i]) - middleOf(line.places[i - 1]));
    traits.gap = std::max(0.0, std::log(widest / pitchOf(line)));
    return traits;
}

std::vector<double> termsOf(const DecodedLineTraits& traits)
{
    return {traits.surest, traits.least, traits.mean, traits.letters, traits.bare, traits.gap};
}

std::vector<double> termsOf(const DecodedPlace& place, const DecodedLineTraits& line)
{
    return {logOdds(bestShare(place)), line.mean, line.least};
}

// Fitted by `calibration network`. A place's share was fitted too and came out as it is.
const LogisticModel& decodedLineModel()
{
    static const LogisticModel model{-3.58,
                                     {{"surest", 1.24},
                                      {"least", -0.09},
                                      {"mean", 0.37},
                                      {"letters", 0.21},
                                      {"bare", -0.47},
                                      {"gap", -2.18}}};
    return model;
}

const LogisticModel& decodedPlaceModel()
{
    static const LogisticModel model{0, {{"own", 1.0}, {"mean", 0.0}, {"least", 0.0}}};
    return model;
}

models::Line lineFrom(const DecodedLine& decoded, const LineClasses& classes, const LineCrop& crop,
                      const cv::Rect2d& box, const std::string& by)
{
    models::Line line;
    line.box_px = {box.x, box.y, box.width, box.height};
    const DecodedLineTraits traits =
        traitsOf(decoded, static_cast<double>(crop.grey.cols) / LineNetwork::step_px);
    for (std::size_t i = 0; i < decoded.places.size(); ++i) {
        const DecodedPlace& place = decoded.places[i];
        models::Cell cell =
            cellFrom(place, classes, decodedPlaceModel().probability(termsOf(place, traits)));
        cell.by = by;
        setExtent(decoded, i, crop, cell);
        line.cells.push_back(std::move(cell));
    }
    if (!holdsLetterOrDigit(line))
        line.cells.clear();
    line.certainty = line.cells.empty() ? 0 : decodedLineModel().probability(termsOf(traits));
    return line;
}

}  // namespace vision
