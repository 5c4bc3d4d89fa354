#include "app/flow/examine.h"

#include <algorithm>
#include <sstream>
#include <stdexcept>
#include <utility>

#include "app/flow/read_stamp.h"
#include "app/flow/told_letters.h"
#include "models/merge_readings.h"
#include "models/roles.h"
#include "vision/advice.h"
#include "vision/image_error.h"

namespace flow {

namespace {

void check(const Engines& engines, const ExamineOptions& options)
{
    if (engines.readers.empty())
        throw std::invalid_argument("an examination needs at least one reader");
    if (options.outline && options.single_line)
        throw std::invalid_argument(
            "ExamineOptions: outline and single_line contradict each other, give one");
    if (!options.type_id.empty() && !engines.known.itemType(options.type_id))
        throw std::invalid_argument("ExamineOptions.type_id: the register has no item type '" +
                                    options.type_id + "'");
}

std::vector<vision::StampOutline> outlinesOf(const vision::Photo& photo, Engines& engines,
                                             const ExamineOptions& options)
{
    if (options.outline)
        return {vision::outlineFromCorners(*options.outline)};
    return engines.finder.find(photo, options.locate);
}

// A crop that is smaller holds no letter; a photograph may.
void checkCrop(const vision::Photo& photo, const std::filesystem::path& file)
{
    constexpr int least_px = 6;
    const cv::Size size = photo.pixels.size();
    if (std::min(size.width, size.height) < least_px)
        throw vision::ImageError(file.string() + " is " + std::to_string(size.width) + " x " +
                                 std::to_string(size.height) +
                                 " pixels, too small for a line of letters; cut out the line from "
                                 "the photograph again, with a little of the ground around it");
}

void noteMirrored(models::Reading& reading)
{
    if (!isMirrored(reading))
        reading.options += (reading.options.empty() ? "" : " ") + std::string(mirrored_option);
}

//   photo_px  of the photo that the mark may run out of; empty of a crop, cut by a person
StampExamination finished(ReadStamp read, const cv::Size& photo_px, Engines& engines,
                          const ExamineOptions& options)
{
    StampExamination examination;
    examination.outline = std::move(read.outline);
    examination.enhanced = std::move(read.enhanced);
    examination.readings = std::move(read.readings);
    for (models::Reading& reading : examination.readings) {
        weighShortLines(reading, examination.outline.score);
        if (!photo_px.empty())
            tellCutEnds(reading, examination.enhanced.rectified, photo_px);
    }
    // The merge trusts the last most.
    examination.proposal =
        models::mergeReadings({examination.readings.rbegin(), examination.readings.rend()});
    if (options.mirrored) {
        std::for_each(examination.readings.begin(), examination.readings.end(), noteMirrored);
        noteMirrored(examination.proposal);
    }
    models::RoleContext context = models::roleContextOf(engines.known, options.type_id);
    context.dates.day_order = options.day_order;
    examination.roles = models::guessRoles(examination.proposal.lines, context);
    examination.dates =
        datesOf(examination.proposal.lines, engines.known, options.type_id, options.day_order);
    examination.candidates = rankReadings({examination.proposal}, engines, options.type_id);
    return examination;
}

}  // namespace

bool isMirrored(const models::Reading& reading)
{
    std::istringstream words(reading.options);
    for (std::string word; words >> word;)
        if (word == mirrored_option)
            return true;
    return false;
}

Examination examinePhoto(const std::filesystem::path& file, Engines& engines,
                         const ExamineOptions& options, std::stop_token stop,
                         const Progress& progress)
{
    check(engines, options);
    stopIfAsked(stop);
    if (progress)
        progress("loading", 0);
    vision::Photo photo = vision::loadPhoto(file, options.load);
    if (options.single_line)
        checkCrop(photo, file);
    return examinePhoto(std::move(photo), engines, options, std::move(stop), progress);
}

Examination examinePhoto(vision::Photo photo, Engines& engines, const ExamineOptions& options,
                         std::stop_token stop, const Progress& progress)
{
    check(engines, options);
    const auto begin = [&](const std::string& stage, double done) {
        stopIfAsked(stop);
        if (progress)
            progress(stage, done);
    };
    Examination examination;
    examination.photo = std::move(photo);
    std::vector<StampExamination>& stamps = examination.stamps;
    if (options.single_line) {
        begin("reading the line", 0.3);
        stamps.push_back(examineSingleLine(examination.photo, engines, options, stop));
    } else {
        begin("looking for stamps", 0.1);
        std::vector<vision::StampOutline> outlines =
            outlinesOf(examination.photo, engines, options);
        for (std::size_t i = 0; i < outlines.size(); ++i) {
            const std::string of = " of " + std::to_string(outlines.size());
            begin("reading stamp " + std::to_string(i + 1) + of,
                  0.3 + 0.6 * static_cast<double>(i) / static_cast<double>(outlines.size()));
            stamps.push_back(examineStamp(examination.photo, outlines[i], engines, options, stop));
        }
        dropUntold(stamps);
        outlines.clear();
        for (const StampExamination& stamp : stamps)
            outlines.push_back(stamp.outline);
        for (std::string& advice : vision::adviceOn(examination.photo, outlines))
            examination.photo.warnings.push_back(std::move(advice));
    }
    begin("weighing what it can mean", 0.9);
    std::vector<models::Reading> proposals;
    for (const StampExamination& stamp : stamps)
        proposals.push_back(stamp.proposal);
    examination.candidates = rankReadings(proposals, engines, options.type_id);
    return examination;
}

StampExamination examineStamp(const vision::Photo& photo, const vision::StampOutline& outline,
                              Engines& engines, const ExamineOptions& options, std::stop_token stop)
{
    check(engines, options);
    stopIfAsked(stop);
    ReadStamp read = readStamp(photo, outline, engines, options, stop);
    stopIfAsked(stop);
    return finished(std::move(read), photo.pixels.size(), engines, options);
}

StampExamination examineSingleLine(const vision::Photo& photo, Engines& engines,
                                   const ExamineOptions& options, std::stop_token stop)
{
    check(engines, options);
    stopIfAsked(stop);
    ReadStamp read = readCrop(photo, engines, options, stop);
    stopIfAsked(stop);
    return finished(std::move(read), {}, engines, options);
}

std::vector<std::vector<models::DateMeaning>> datesOf(const std::vector<models::Line>& lines,
                                                      const models::MakerRegister& known,
                                                      const std::string& type_id,
                                                      models::DayOrder day_order)
{
    models::DateContext context = models::roleContextOf(known, type_id).dates;
    context.day_order = day_order;
    std::vector<std::vector<models::DateMeaning>> dates;
    for (const models::Line& line : lines)
        dates.push_back(models::readDates(line, context));
    return dates;
}

models::CandidateList rankReadings(const std::vector<models::Reading>& readings,
                                   const models::MakerRegister& known, const std::string& type_id,
                                   const models::Experience& experience)
{
    return Ranking(known, experience).rank(readings, type_id);
}

models::CandidateList rankReadings(const std::vector<models::Reading>& readings, Engines& engines,
                                   const std::string& type_id)
{
    if (!engines.ranking)
        engines.ranking = std::make_shared<const Ranking>(engines.known, engines.experience);
    return engines.ranking->rank(readings, type_id);
}

}  // namespace flow
