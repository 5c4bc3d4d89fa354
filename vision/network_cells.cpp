#include "vision/network_cells.h"

#include <algorithm>
#include <cmath>

#include "vision/cell_states.h"
#include "vision/line_network.h"
#include "vision/network_crop.h"

namespace vision {

namespace {

// Lost letters leave no more room than this each, in pitches, and for the spaces beside them.
constexpr double room_of_lost = 2, room_of_spaces = 0.6;
constexpr double surely_a_space = 0.8;
constexpr double widest_cell = 0.75;  // of the pitch, to either side of a letter's middle

double logOdds(double share)
{
    const double p = std::clamp(share, 1e-4, 1 - 1e-4);
    return std::log(p / (1 - p));
}

double stepsOf(const LineCrop& crop)
{
    return static_cast<double>(crop.grey.cols) / LineNetwork::step_px;
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

bool isGap(const DecodedPlace& place, const LineClasses& classes)
{
    return !place.shares.empty() && (place.shares.front().of_class == classes.lost() ||
                                     place.shares.front().of_class == classes.space());
}

// What the places first <= i < end, gaps all of them, are told to be: a space, where the letters
// lost there cannot fill them.
DecodedPlace wideSpace(const DecodedLine& line, std::size_t first, std::size_t end,
                       const LineClasses& classes)
{
    return {{{classes.space(), surely_a_space}, {classes.lost(), 1 - surely_a_space}},
            line.places[first].first_step,
            line.places[end - 1].end_step};
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
        return crop.rectifiedX(step * LineNetwork::step_px);
    };
    cell.left_px = rectified(left);
    cell.right_px = rectified(right);
}

// The letters among the shares; these are as certain as the shares say.
void addAlternatives(const DecodedPlace& place, const LineClasses& classes, models::Cell& cell)
{
    for (const ClassShare& share : place.shares)
        if (classes.isCharacter(share.of_class) && cell.alternatives.size() < most_alternatives)
            cell.alternatives.push_back(
                {classes.characters[static_cast<std::size_t>(share.of_class) - 1], share.share});
}

models::Cell cellFrom(const DecodedPlace& place, const LineClasses& classes)
{
    models::Cell cell;
    const int best = place.shares.empty() ? classes.traces() : place.shares.front().of_class;
    if (best == classes.lost()) {
        cell.state = models::CellState::Lost;
        return cell;
    }
    addAlternatives(place, classes, cell);
    if (best == classes.traces() || cell.alternatives.empty())
        cell.state = models::CellState::Traces;
    else
        cell.state = stateAt(cell.alternatives.front().certainty);
    return cell;
}

// A letter, a digit or traces of one; signs and spaces alone are specks.
bool holdsInk(const models::Line& line)
{
    return std::any_of(line.cells.begin(), line.cells.end(), [](const models::Cell& cell) {
        return cell.state == models::CellState::Traces ||
               (!cell.alternatives.empty() && isLetterOrDigit(cell.alternatives.front().text));
    });
}

}  // namespace

DecodedLine withinRow(DecodedLine line, const LineCrop& crop)
{
    constexpr double plainly = 0.9;  // share of a letter that the row is taken to have missed
    const double rim = networkRim() / LineNetwork::step_px, steps = stepsOf(crop);
    const auto isBeyond = [&](const DecodedPlace& place) {
        const double middle = middleOf(place);
        return (middle < rim || middle > steps - rim) &&
               (place.shares.empty() || place.shares.front().share < plainly);
    };
    std::erase_if(line.places, isBeyond);
    return line;
}

DecodedLine withWideSpaces(DecodedLine line, const LineClasses& classes)
{
    const double pitch = pitchOf(line);
    for (std::size_t first = 1; first < line.places.size(); ++first) {
        std::size_t end = first, lost = 0;
        for (; end < line.places.size() && isGap(line.places[end], classes); ++end)
            lost += line.places[end].shares.front().of_class == classes.lost();
        if (lost == 0 || end == line.places.size())
            continue;
        const double room = (middleOf(line.places[end]) - middleOf(line.places[first - 1])) / pitch;
        if (room - 1 < room_of_lost * static_cast<double>(lost) + room_of_spaces)
            continue;
        line.places[first] = wideSpace(line, first, end, classes);
        line.places.erase(line.places.begin() + static_cast<std::ptrdiff_t>(first) + 1,
                          line.places.begin() + static_cast<std::ptrdiff_t>(end));
    }
    return line;
}

DecodedLineTraits traitsOf(const DecodedLine& line, const LineClasses& classes,
                           const LineCrop& crop)
{
    DecodedLineTraits traits;
    if (line.places.empty())
        return traits;
    traits.share = logOdds(line.share);
    traits.seen = logOdds(line.seen);
    const double covered = line.places.back().end_step - line.places.front().first_step;
    traits.bare = std::clamp(1 - covered / std::max(1.0, stepsOf(crop)), 0.0, 1.0);
    double widest = 1;
    for (std::size_t i = 1; i < line.places.size(); ++i)
        widest = std::max(widest, middleOf(line.places[i]) - middleOf(line.places[i - 1]));
    traits.gap = std::max(0.0, std::log(widest / pitchOf(line)));
    for (const DecodedPlace& place : line.places)
        if (place.shares.empty() || !classes.isCharacter(place.shares.front().of_class))
            traits.unread = 1;
    return traits;
}

std::vector<double> termsOf(const DecodedLineTraits& traits)
{
    return {traits.share, traits.seen, traits.bare, traits.gap, traits.unread};
}

// Fitted by `calibration network`.
const LogisticModel& decodedLineModel()
{
    static const LogisticModel model{
        1.44,
        {{"share", 0.37}, {"seen", 0.64}, {"bare", -1.98}, {"gap", -0.23}, {"unread", -2.44}}};
    return model;
}

models::Line lineFrom(const DecodedLine& decoded, const LineClasses& classes, const LineCrop& crop,
                      const cv::Rect2d& box, const std::string& by)
{
    models::Line line;
    line.box_px = {box.x, box.y, box.width, box.height};
    const DecodedLineTraits traits = traitsOf(decoded, classes, crop);
    for (std::size_t i = 0; i < decoded.places.size(); ++i) {
        models::Cell cell = cellFrom(decoded.places[i], classes);
        cell.by = by;
        setExtent(decoded, i, crop, cell);
        line.cells.push_back(std::move(cell));
    }
    if (!holdsInk(line))
        line.cells.clear();
    line.certainty = line.cells.empty() ? 0 : decodedLineModel().probability(termsOf(traits));
    return line;
}

}  // namespace vision
