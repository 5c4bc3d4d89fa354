#include "tests/gui/fake_examiner.h"

#include <algorithm>
#include <fstream>
#include <numeric>
#include <opencv2/imgcodecs.hpp>
#include <opencv2/imgproc.hpp>
#include <thread>

#include "app/flow/date_item.h"
#include "app/flow/ranking.h"
#include "models/typed_notation.h"

namespace gui_tests {

namespace {

constexpr int letter_width = 40, line_height = 60, left = 60, top = 40, stamp_height = 200;
constexpr int margin = 10;  // around the letters, in the rectified stamp

vision::StampOutline outlineOf(const std::vector<std::string>& lines, int index)
{
    std::size_t longest = 1;
    for (const std::string& line : lines)
        longest = std::max(longest, line.size());
    const float x = left, y = static_cast<float>(top + index * stamp_height);
    const float right = x + static_cast<float>(letter_width * static_cast<int>(longest));
    const float bottom = y + static_cast<float>(line_height * static_cast<int>(lines.size()));
    vision::StampOutline outline;
    outline.corners = {cv::Point2f(x, y), {right, y}, {right, bottom}, {x, bottom}};
    outline.score = 0.9;
    return outline;
}

models::Reading readingOf(const std::vector<std::string>& lines, double certainty)
{
    models::Reading reading;
    reading.reader = "fake-reader 1";
    reading.basis = models::Basis::Photo;
    for (std::size_t row = 0; row < lines.size(); ++row) {
        models::Line line;
        const double y = margin + line_height * static_cast<double>(row);
        for (std::size_t i = 0; i < lines[row].size(); ++i) {
            models::Cell cell = models::clearCell(std::string(1, lines[row][i]));
            const double sure = lines[row][i] == '?' ? 0.5 : certainty;
            cell.alternatives = {{std::string(1, lines[row][i]), sure}, {"X", (1 - sure) / 2}};
            cell.left_px = margin + letter_width * static_cast<double>(i);
            cell.right_px = cell.left_px + letter_width;
            cell.by = "fake-reader";
            line.cells.push_back(cell);
        }
        line.box_px = {margin, y, letter_width * static_cast<double>(lines[row].size()),
                       line_height};
        reading.lines.push_back(line);
    }
    return reading;
}

flow::StampExamination examined(const vision::Photo& photo, const vision::StampOutline& outline,
                                const std::vector<std::string>& lines, double certainty = 0.8)
{
    flow::StampExamination stamp;
    stamp.outline = outline;
    const std::vector<cv::Point2f> points(outline.corners.begin(), outline.corners.end());
    cv::Rect box = cv::boundingRect(points);
    box =
        cv::Rect(box.x - margin, box.y - margin, box.width + 2 * margin, box.height + 2 * margin) &
        cv::Rect(0, 0, photo.pixels.cols, photo.pixels.rows);
    vision::RectifiedStamp& rectified = stamp.enhanced.rectified;
    rectified.pixels = photo.pixels(box).clone();
    rectified.photo_from_rectified = cv::Matx33d(1, 0, box.x, 0, 1, box.y, 0, 0, 1);
    cv::Mat grey, even;
    cv::cvtColor(rectified.pixels, grey, cv::COLOR_BGR2GRAY);
    cv::equalizeHist(grey, even);
    stamp.enhanced.layers = {{"grey", grey}, {"flat", even}};
    stamp.readings = {readingOf(lines, certainty)};
    stamp.proposal = stamp.readings.front();
    return stamp;
}

// A mirror image turned: what stood on the right stands on the left.
flow::StampExamination mirrored(const vision::Photo& photo, const vision::StampOutline& outline,
                                std::vector<std::string> lines)
{
    for (std::string& line : lines)
        std::reverse(line.begin(), line.end());
    flow::StampExamination stamp = examined(photo, outline, lines);
    stamp.enhanced.rectified.mirrored = true;
    stamp.readings.front().options = flow::mirrored_option;
    stamp.proposal = stamp.readings.front();
    return stamp;
}

void waitWhileHeld(FakeScript& script, const std::stop_token& stop)
{
    while (script.hold && !stop.stop_requested())
        std::this_thread::sleep_for(std::chrono::milliseconds(2));
    if (!stop.stop_requested())
        return;
    ++script.stopped;
    throw flow::Cancelled{};
}

models::CandidateList ranked(const std::string& text)
{
    const bool hart = text.find("HART") != std::string::npos;
    const bool dated = text.find("1938") != std::string::npos;
    models::Candidate first, second;
    first.maker_id = "hart";
    first.maker = "Hart Ltd";
    first.mark = "HART LTD";
    first.probability = hart ? 0.8 : 0.3;
    first.years = {{dated ? 1938 : 1939, 1.0}};
    first.edtf = dated ? "1938" : "1939";
    first.reasons = {"the letters fit the mark HART LTD"};
    second.maker_id = "marrow";
    second.maker = "Marrow & Sons";
    second.mark = "MARROW & SONS";
    second.probability = hart ? 0.1 : 0.4;
    second.reasons = {"the first letters are alike"};
    models::CandidateList list;
    list.candidates = hart ? std::vector{first, second} : std::vector{second, first};
    list.other_makers = 0.05;
    list.unknown_maker = 1 - list.other_makers - first.probability - second.probability;
    return list;
}

std::string textRead(const std::vector<models::Reading>& readings)
{
    std::string text;
    for (const models::Reading& reading : readings)
        for (const models::Line& line : reading.lines)
            text += (text.empty() ? "" : " / ") + models::plainText(line);
    return text;
}

std::shared_ptr<models::MakerRegister> knownMakers()
{
    auto known = std::make_shared<models::MakerRegister>();
    known->makers = {{"hart", "Hart Ltd", "Saltmere", "1930", "1940", {}, {}, {}},
                     {"marrow", "Marrow & Sons", "Saltmere", "1921", "1950", {}, {}, {}}};
    known->item_types = {
        {"belt-1937", "Body belt", "Pattern 1937", "1937", "1958", {}, {}, {}, {}}};
    known->features = {{"end-tab", "belt-1937", "Metal end tab", "1937", "1942", {}, {}, {}},
                       {"late-eyelet", "belt-1937", "Plated eyelet", "1950", "1958", {}, {}, {}}};
    for (const char* text : {"HART LTD", "MARROW & SONS"}) {
        models::Mark mark;
        mark.maker_id = text[0] == 'H' ? "hart" : "marrow";
        mark.text = text;
        mark.line = models::parseTyped(text).lines.at(0);
        known->marks.push_back(mark);
    }
    return known;
}

}  // namespace

gui::MakeExaminer fakeExaminer(std::shared_ptr<FakeScript> script)
{
    return [script] {
        gui::Examiner examiner;
        examiner.loadPhoto = [](const auto& file) { return vision::loadPhoto(file); };
        examiner.examinePhoto = [script](const auto& file, const auto&, std::stop_token stop,
                                         const flow::Progress& progress) {
            ++script->photos_examined;
            progress("looking for stamps", 0.3);
            waitWhileHeld(*script, stop);
            flow::Examination examination;
            examination.photo = vision::loadPhoto(file);
            for (std::size_t i = 0; i < script->stamps.size(); ++i)
                examination.stamps.push_back(
                    examined(examination.photo, outlineOf(script->stamps[i], static_cast<int>(i)),
                             script->stamps[i], script->certainty));
            ++script->photos_done;
            return examination;
        };
        examiner.enhanceStamp = [](const auto& photo, const auto& outline, bool) {
            return examined(photo, outline, {}).enhanced;
        };
        examiner.examineStamp = [script](const auto& photo, const auto& outline,
                                         const flow::ExamineOptions& options,
                                         std::stop_token stop) {
            ++script->stamps_begun;
            waitWhileHeld(*script, stop);
            {
                const std::lock_guard lock(script->guard);
                script->outlines_seen.push_back(outline);
            }
            ++script->stamps_examined;
            const bool none = script->stamps.empty();
            std::vector<std::string> lines =
                none ? std::vector<std::string>{"NEW"} : script->stamps.front();
            const auto up =
                script->turns_over && !options.keep_up ? vision::turnedOver(outline) : outline;
            return options.mirrored ? mirrored(photo, up, lines) : examined(photo, up, lines);
        };
        examiner.rankReadings = [script](const auto& readings, const std::string& type_id) {
            {
                const std::lock_guard lock(script->guard);
                script->texts_ranked.push_back(textRead(readings));
                script->types_ranked.push_back(type_id);
            }
            ++script->rankings;
            return ranked(textRead(readings));
        };
        examiner.known = knownMakers();
        const auto ranking = std::make_shared<const flow::Ranking>(*examiner.known);
        examiner.dateRecord = [known = examiner.known, ranking](const auto& record) {
            return flow::dateRecord(record, *known, *ranking);
        };
        return examiner;
    };
}

std::filesystem::path drawPhoto(const std::filesystem::path& folder, const std::string& name,
                                const std::vector<std::vector<std::string>>& stamps)
{
    cv::Mat pixels(480, 640, CV_8UC3, cv::Scalar(150, 170, 180));
    cv::RNG random(std::accumulate(name.begin(), name.end(), 7ULL));  // each name its own cloth
    cv::Mat weave(pixels.size(), CV_8UC3);
    random.fill(weave, cv::RNG::NORMAL, 0, 6);
    pixels += weave;
    for (std::size_t stamp = 0; stamp < stamps.size(); ++stamp)
        for (std::size_t row = 0; row < stamps[stamp].size(); ++row)
            for (std::size_t i = 0; i < stamps[stamp][row].size(); ++i)
                cv::putText(pixels, std::string(1, stamps[stamp][row][i]),
                            {left + letter_width * static_cast<int>(i) + 6,
                             top + stamp_height * static_cast<int>(stamp) +
                                 line_height * static_cast<int>(row + 1) - 12},
                            cv::FONT_HERSHEY_SIMPLEX, 1.4, cv::Scalar(60, 40, 40), 3, cv::LINE_AA);
    const std::filesystem::path file = folder / name;
    cv::imwrite(file.string(), pixels);
    return file;
}

std::filesystem::path drawFolder(const std::filesystem::path& in, int count)
{
    const auto folder = in / "lot";
    std::filesystem::create_directories(folder);
    for (int i = 0; i < count; ++i)
        drawPhoto(folder, "photo" + std::to_string(i) + ".png");
    std::ofstream(folder / "list.txt") << "not a picture";
    return folder;
}

std::filesystem::path writeLetter(const std::filesystem::path& folder)
{
    const auto file = folder / "letter.jpg";
    std::ofstream(file) << "this is a letter, not a photo";
    return file;
}

}  // namespace gui_tests
