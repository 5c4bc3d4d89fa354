#include "app/flow/filing.h"

#include <algorithm>

namespace flow {

models::PhotoRecord photoRecord(const vision::Photo& photo)
{
    models::PhotoRecord record;
    record.file = photo.file;
    record.sha256 = photo.sha256;
    record.original_name = photo.file.filename().string();
    record.width_px = photo.pixels.cols;
    record.height_px = photo.pixels.rows;
    record.taken_at = photo.capture.taken_at;
    record.camera = photo.capture.camera;
    record.lens = photo.capture.lens;
    return record;
}

models::StampRecord stampRecord(const vision::Photo& photo, const StampExamination& examination,
                                const std::string& read_at)
{
    models::ViewRecord view;
    view.photo_sha256 = photo.sha256;
    for (std::size_t corner = 0; corner < 4; ++corner) {
        const cv::Point2f& point = examination.outline.corners[corner];
        view.outline_px[2 * corner] = static_cast<double>(point.x);
        view.outline_px[2 * corner + 1] = static_cast<double>(point.y);
    }
    view.up_deg = examination.outline.up_deg;
    for (const models::Reading& reading : examination.readings) {
        if (reading.lines.empty())
            continue;
        models::ReadingRecord record;
        record.reading = reading;
        if (record.reading.read_at.empty())
            record.reading.read_at = read_at;
        view.readings.push_back(record);
    }
    models::StampRecord stamp;
    stamp.views = {view};
    return stamp;
}

models::AttributionRecord attributionRecord(const std::string& maker_id,
                                            const models::MakerRegister& known,
                                            const models::CandidateList& candidates)
{
    models::AttributionRecord record;
    record.maker_id = maker_id;
    const models::Maker* maker = known.maker(maker_id);
    record.maker_name = maker ? maker->name : maker_id;
    const auto candidate =
        std::find_if(candidates.candidates.begin(), candidates.candidates.end(),
                     [&](const models::Candidate& one) { return one.maker_id == maker_id; });
    if (candidate == candidates.candidates.end())
        return record;
    record.mark = candidate->mark;
    for (const std::string& reason : candidate->reasons)
        record.engine_reasons += (record.engine_reasons.empty() ? "" : "\n") + reason;
    return record;
}

}  // namespace flow
