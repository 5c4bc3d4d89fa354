#include "tests/app/fake_reader.h"

#include <opencv2/imgproc.hpp>

#include "tests/support/picture_files.h"
#include "tests/support/synthetic_stamp.h"

namespace support {

namespace {

constexpr int photo_width = 900, photo_height = 600, canvas_width = 600, canvas_height = 400;

picture_files::Bytes drawnPhoto()
{
    synthetic::StampOptions stamp;
    stamp.text.lines = {"W. POLGLASE", "1941"};
    stamp.text.letter_px = 44;
    stamp.ink.fading = 0;
    synthetic::SceneOptions scene;
    scene.size_px = {photo_width, photo_height};
    scene.piece.material = synthetic::Material::Canvas;
    scene.piece.width_px = 0;
    scene.stamps = {stamp};
    scene.seed = 7;
    return picture_files::jpeg(synthetic::drawPhoto(scene).pixels);
}

bool isNear(const cv::Point2d& point, int width, int height)
{
    return cv::norm(point - cv::Point2d(width / 2.0, height / 2.0)) < 150;
}

}  // namespace

models::Reading FakeReader::read(const vision::EnhancedStamp& stamp)
{
    models::Reading reading;
    reading.reader = version();
    reading.lines = sight_(stamp);
    for (models::Line& line : reading.lines)
        for (models::Cell& cell : line.cells)
            cell.by = name_;
    return reading;
}

models::Reading FakeReader::readLine(const vision::EnhancedStamp& stamp)
{
    return read(stamp);
}

models::Line seenLine(const std::string& letters, double certainty)
{
    models::Line line;
    for (const char letter : letters) {
        models::Cell cell = models::clearCell(std::string(1, letter));
        cell.alternatives.front().certainty = certainty;
        line.cells.push_back(cell);
    }
    return line;
}

std::vector<models::Line> seePolglase(const vision::EnhancedStamp& stamp)
{
    const cv::Mat& pixels = stamp.rectified.pixels;
    const cv::Point2d centre =
        vision::photoFromRectified(stamp.rectified, {pixels.cols / 2.0, pixels.rows / 2.0});
    if (!isNear(centre, photo_width, photo_height) && !isNear(centre, canvas_width, canvas_height))
        return {};
    return {seenLine("W. POLGLASE", 0.95), seenLine("1941", 0.95)};
}

std::filesystem::path writeRegister(const TemporaryFolder& folder)
{
    const std::filesystem::path path = folder.path() / "register";
    std::filesystem::create_directories(path);
    folder.write("register/makers.csv",
                 "maker_id,name,place,from,to,successor_of,notes,source_id\n"
                 "polglase,Wenna Polglase,Ormscarth,1930,1945,,,\n"
                 "tarrow,Rufus Tarrow,Veldrow,1946,1958,,,\n");
    folder.write("register/marks.csv",
                 "maker_id,text,kind,frame,from,to,notes,source_id\n"
                 "polglase,W. POLGLASE,text,none,1930,1945,,\n"
                 "tarrow,R. TARROW,text,none,1946,1958,,\n");
    folder.write("register/item_types.csv",
                 "type_id,name,pattern,introduced,withdrawn,parts,sizes,notes,source_id\n"
                 "belt,Body belt,Pattern 1930,1930,1958,body,,,\n");
    return path;
}

flow::Engines enginesWith(std::vector<std::unique_ptr<vision::TextReader>> readers)
{
    const TemporaryFolder folder;
    flow::Engines engines;
    engines.readers = std::move(readers);
    engines.known = models::loadRegister(writeRegister(folder));
    return engines;
}

std::filesystem::path writeStampedPhoto(const TemporaryFolder& folder, const std::string& name)
{
    static const picture_files::Bytes photo = drawnPhoto();  // drawing it takes half a second
    std::filesystem::path file = folder.path() / name;
    picture_files::write(file, photo);
    return file;
}

MarkedCanvas writeMarkedCanvas(const TemporaryFolder& folder)
{
    cv::Mat canvas(canvas_height, canvas_width, CV_8UC3, cv::Scalar(150, 170, 180));
    cv::rectangle(canvas, cv::Rect(200, 160, 200, 20), cv::Scalar(20, 20, 220), cv::FILLED);
    MarkedCanvas marked;
    marked.file = folder.path() / "canvas.png";
    picture_files::write(marked.file, picture_files::png(canvas));
    // Clockwise from the lower right: as if the stamp's own top left were there.
    marked.upside_down = {cv::Point2f(450, 250), {150, 250}, {150, 150}, {450, 150}};
    return marked;
}

bool redIsAbove(const vision::EnhancedStamp& stamp)
{
    const cv::Mat& pixels = stamp.rectified.pixels;
    const auto redness = [&](const cv::Rect& half) {
        const cv::Scalar mean = cv::mean(pixels(half));
        return mean[2] - mean[1];
    };
    const int middle = pixels.rows / 2;
    return redness({0, 0, pixels.cols, middle}) >
           redness({0, middle, pixels.cols, pixels.rows - middle});
}

}  // namespace support
