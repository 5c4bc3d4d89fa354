#include "app/gui/read_ahead.h"

#include <algorithm>

#include "app/gui/photo_work.h"
#include "app/gui/picture.h"

namespace gui {

namespace {

constexpr int card_width_px = 320;

}  // namespace

ReadAhead withoutPixels(const flow::Examination& examination)
{
    ReadAhead ahead;
    ahead.photo_sha256 = examination.photo.sha256;
    ahead.warnings = examination.photo.warnings;
    for (flow::StampExamination stamp : examination.stamps) {
        stamp.enhanced.layers.clear();
        stamp.enhanced.rectified.pixels = cv::Mat();
        ahead.stamps.push_back(std::move(stamp));
    }
    return ahead;
}

std::shared_ptr<const flow::Examination> withPixels(const ReadAhead& ahead,
                                                    const std::filesystem::path& file,
                                                    const Examiner& examiner)
{
    auto examination = std::make_shared<flow::Examination>();
    examination->photo = examiner.loadPhoto(file);
    if (examination->photo.sha256 != ahead.photo_sha256)
        return nullptr;
    examination->photo.warnings = ahead.warnings;
    for (flow::StampExamination stamp : ahead.stamps) {
        const vision::RectifiedStamp& was = stamp.enhanced.rectified;
        const cv::Matx33d frame = was.photo_from_rectified;
        stamp.enhanced = examiner.enhanceStamp(examination->photo, stamp.outline, was.mirrored);
        const cv::Matx33d& now = stamp.enhanced.rectified.photo_from_rectified;
        for (models::Reading& reading : stamp.readings)
            reading = movedReading(reading, frame, now);
        stamp.proposal = movedReading(stamp.proposal, frame, now);
        examination->stamps.push_back(std::move(stamp));
    }
    return examination;
}

OpenedPhoto opened(std::shared_ptr<const flow::Examination> examination)
{
    const cv::Mat& pixels = examination->photo.pixels;
    const double scale = 1.0 * card_width_px / std::max(1, std::max(pixels.cols, pixels.rows));
    const cv::Size size(std::max(1, static_cast<int>(pixels.cols * scale)),
                        std::max(1, static_cast<int>(pixels.rows * scale)));
    return {std::move(examination), pictureOf(pixels, size)};
}

}  // namespace gui
