#include "tests/bench/read_marks.h"

#include "vision/rectify.h"

namespace bench {

namespace {

ReadLine inPhoto(const models::Line& line, const vision::RectifiedStamp& rectified)
{
    const models::Box& box = line.box_px;
    const double right = box.x + box.width, bottom = box.y + box.height;
    const cv::Point2d corners[] = {
        {box.x, box.y}, {right, box.y}, {right, bottom}, {box.x, bottom}};
    ReadLine read{line, {}};
    for (std::size_t i = 0; i < 4; ++i)
        read.corners[i] = vision::photoFromRectified(rectified, corners[i]);
    return read;
}

}  // namespace

void addLines(const flow::StampExamination& stamp, ReadPicture& read)
{
    for (const models::Line& line : stamp.proposal.lines)
        read.lines.push_back(inPhoto(line, stamp.enhanced.rectified));
}

ReadPicture readMarks(const vision::Photo& photo, flow::Engines& engines, bool single_line)
{
    const flow::Examination examination =
        flow::examinePhoto(photo, engines, {.single_line = single_line});
    ReadPicture read;
    for (const flow::StampExamination& stamp : examination.stamps)
        addLines(stamp, read);
    read.candidates = examination.candidates;
    return read;
}

std::string folded(const std::string& text)
{
    std::string result;
    bool space = false;
    for (const char c : text) {
        if (c == ' ' || c == '\t' || c == '\n' || c == '\r') {
            space = !result.empty();
            continue;
        }
        if (space)
            result += ' ';
        space = false;
        result += c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
    }
    return result;
}

}  // namespace bench
