#include "tests/bench/read_marks.h"

#include "vision/rectify.h"
#include "vision/upright.h"

namespace bench {

std::vector<ReadLine> readMarks(const vision::Photo& photo, vision::TextReader& reader)
{
    std::vector<ReadLine> lines;
    for (const vision::StampOutline& outline : vision::locateStamps(photo)) {
        const vision::UprightStamp stamp =
            vision::readRightWayUp(vision::rectifyStamp(photo, outline), reader);
        const vision::RectifiedStamp& rectified = stamp.enhanced.rectified;
        for (const models::Line& line : stamp.reading.lines) {
            ReadLine read;
            read.text = models::plainText(line);
            read.certainty = models::lineCertainty(line);
            read.stamp_score = outline.score;
            read.line = line;
            const models::Box& box = line.box_px;
            const double right = box.x + box.width, bottom = box.y + box.height;
            const cv::Point2d corners[] = {
                {box.x, box.y}, {right, box.y}, {right, bottom}, {box.x, bottom}};
            for (std::size_t i = 0; i < 4; ++i)
                read.corners[i] = vision::photoFromRectified(rectified, corners[i]);
            lines.push_back(std::move(read));
        }
    }
    return lines;
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
