#include "app/flow/read_stamp.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "app/flow/told_letters.h"
#include "vision/rectify.h"
#include "vision/single_line.h"
#include "vision/stacked_letters.h"
#include "vision/upright.h"

namespace flow {

namespace {

double surelyRead(const models::Reading& reading)
{
    double sum = 0;
    for (const models::Line& line : reading.lines)
        for (const models::Cell& cell : line.cells)
            if (!cell.alternatives.empty())
                sum += cell.alternatives.front().certainty;
    return sum;
}

bool isSure(const models::Reading& reading, double sure_from)
{
    return !reading.lines.empty() &&
           std::all_of(reading.lines.begin(), reading.lines.end(), [&](const models::Line& line) {
               return models::lineCertainty(line) >= sure_from;
           });
}

bool isTurnedOver(double up_deg, double other_up_deg)
{
    return std::cos((up_deg - other_up_deg) * CV_PI / 180) < 0;
}

// The outline as the stamp's own up has it, once reading has told which way that is.
vision::StampOutline uprightOutline(vision::StampOutline outline, double up_deg)
{
    if (isTurnedOver(vision::upOf(outline.corners), up_deg))
        outline = vision::turnedOver(std::move(outline));
    outline.up_deg = up_deg;
    return outline;
}

// The stamp as the first reader has it, and where. A short line that it can hardly tell may be two
// lines across, which then must both be likely.
struct FirstLook {
    vision::StampOutline outline;
    vision::UprightStamp stamp;
};

FirstLook firstLook(const vision::Photo& photo, const vision::StampOutline& outline,
                    Engines& engines, bool mirrored)
{
    constexpr double likely = 0.5;
    const auto read = [&](const vision::StampOutline& at) {
        return FirstLook{
            at, vision::readRightWayUp(vision::rectifyStamp(photo, at, {.mirrored = mirrored}),
                                       *engines.readers.front(), vision::TextLayout::Lines,
                                       engines.upright.get())};
    };
    FirstLook first = read(outline);
    if (isSure(first.stamp.reading, likely))
        return first;
    if (const auto across = vision::asLinesAcross(outline)) {
        FirstLook stacked = read(*across);
        if (stacked.stamp.reading.lines.size() == across->lines.size() &&
            isSure(stacked.stamp.reading, likely))
            return stacked;
    }
    return first;
}

// Asks the readers after the first, which has read already, as far as they are wanted.
ReadStamp readOn(FirstLook first, Engines& engines, vision::TextLayout layout,
                 const std::stop_token& stop)
{
    std::vector<vision::UprightStamp> ways;
    ways.push_back(std::move(first.stamp));
    while (ways.size() < engines.readers.size() &&
           !isSure(ways.back().reading, engines.sure_from)) {
        stopIfAsked(stop);
        ways.push_back(vision::readRightWayUp(ways.front().enhanced.rectified,
                                              *engines.readers[ways.size()], layout));
    }
    const auto surest =
        std::max_element(ways.begin(), ways.end(),
                         [](const vision::UprightStamp& one, const vision::UprightStamp& other) {
                             return surelyRead(one.reading) < surelyRead(other.reading);
                         });
    const double up_deg = surest->enhanced.rectified.up_deg;
    ReadStamp result{uprightOutline(std::move(first.outline), up_deg), surest->enhanced, {}};
    for (std::size_t i = 0; i < ways.size(); ++i) {
        models::Reading reading = std::move(ways[i].reading);
        if (isTurnedOver(ways[i].enhanced.rectified.up_deg, up_deg)) {
            stopIfAsked(stop);
            vision::TextReader& reader = *engines.readers[i];
            reading = layout == vision::TextLayout::SingleLine ? reader.readLine(result.enhanced)
                                                               : reader.read(result.enhanced);
        }
        result.readings.push_back(withoutEmptyLines(std::move(reading)));
    }
    return result;
}

}  // namespace

void stopIfAsked(const std::stop_token& stop)
{
    if (stop.stop_requested())
        throw Cancelled{};
}

ReadStamp readStamp(const vision::Photo& photo, const vision::StampOutline& outline,
                    Engines& engines, const ExamineOptions& options, const std::stop_token& stop)
{
    if (!options.keep_up)
        return readOn(firstLook(photo, outline, engines, options.mirrored), engines,
                      vision::TextLayout::Lines, stop);
    vision::EnhancedStamp enhanced =
        vision::enhanceStamp(vision::rectifyStamp(photo, outline, {.mirrored = options.mirrored}));
    models::Reading reading = withoutEmptyLines(engines.readers.front()->read(enhanced));
    const double up_deg = enhanced.rectified.up_deg;
    return {uprightOutline(outline, up_deg), std::move(enhanced), {std::move(reading)}};
}

ReadStamp readCrop(const vision::Photo& photo, Engines& engines, const ExamineOptions& options,
                   const std::stop_token& stop)
{
    vision::SingleLine line = vision::readSingleLine(photo, *engines.readers.front(),
                                                     options.mirrored, engines.upright.get());
    return readOn({line.outline, {std::move(line.enhanced), std::move(line.reading)}}, engines,
                  vision::TextLayout::SingleLine, stop);
}

}  // namespace flow
