#include "tests/bench/bench_sets.h"

#include <algorithm>
#include <cmath>
#include <fstream>
#include <map>
#include <sstream>
#include <stdexcept>

#include <nlohmann/json.hpp>

#include "models/typed_notation.h"

namespace bench {

namespace {

namespace fs = std::filesystem;

vision::Quad cornersOf(const cv::Rect& box)
{
    const auto left = static_cast<float>(box.x), top = static_cast<float>(box.y);
    const auto right = left + static_cast<float>(box.width);
    const auto bottom = top + static_cast<float>(box.height);
    return {{{left, top}, {right, top}, {right, bottom}, {left, bottom}}};
}

fs::path truthBeside(const fs::path& picture)
{
    return picture.parent_path() / (picture.stem().string() + ".truth.json");
}

std::vector<fs::path> picturesBelow(const fs::path& folder)
{
    std::vector<fs::path> files;
    for (const auto& entry : fs::recursive_directory_iterator(folder)) {
        const std::string ending = entry.path().extension().string();
        if (ending == ".jpg" || ending == ".jpeg" || ending == ".png")
            files.push_back(entry.path());
    }
    std::sort(files.begin(), files.end());
    return files;
}

vision::Quad quadOf(const nlohmann::json& corners)
{
    vision::Quad quad;
    for (std::size_t i = 0; i < 4; ++i)
        quad[i] = {corners.at(i).at(0).get<float>(), corners.at(i).at(1).get<float>()};
    return quad;
}

// What can be read of a line written in the typed notation.
std::string legibleText(const std::string& typed)
{
    const models::ParsedNotation parsed = models::parseTyped(typed);
    if (parsed.fault)
        throw std::runtime_error("'" + typed + "': " + parsed.fault->message());
    std::string text;
    for (const models::Line& line : parsed.lines)
        for (const models::Cell& cell : line.cells)
            if (cell.state == models::CellState::Clear || cell.state == models::CellState::Doubtful)
                text += cell.alternatives.front().text;
    return text;
}

// What is told of a picture's stamps: an empty list where nothing is.
nlohmann::json truthOf(const fs::path& picture)
{
    const fs::path file = truthBeside(picture);
    std::ifstream in(file);
    if (!in)
        return {{"stamps", nlohmann::json::array()}};
    try {
        nlohmann::json truth = nlohmann::json::parse(in);
        if (!truth.contains("stamps"))
            truth["stamps"] = nlohmann::json::array();
        return truth;
    } catch (const nlohmann::json::exception& error) {
        throw std::runtime_error(file.string() + ": " + error.what());
    }
}

Picture sampleFrom(const fs::path& file, const nlohmann::json& truth,
                   const models::MakerRegister& known)
{
    Picture picture;
    picture.file = file;
    const std::string maker = truth.value("maker_id", "");
    if (known.maker(maker) != nullptr)
        picture.maker = maker;
    for (const auto& stamp : truth.at("stamps"))
        for (const auto& line : stamp.at("lines"))
            picture.lines.push_back(
                {legibleText(line.get<std::string>()), quadOf(stamp.at("outline"))});
    std::erase_if(picture.lines, [](const LabelledLine& line) { return line.text.empty(); });
    return picture;
}

struct DateLabel {
    fs::path file;
    std::string text;
    cv::Rect box;
};

std::vector<DateLabel> dateLabels(const fs::path& folder)
{
    std::ifstream in(folder / "labels.tsv");
    std::vector<DateLabel> labels;
    std::string row;
    std::getline(in, row);
    while (std::getline(in, row)) {
        std::istringstream fields(row);
        DateLabel label;
        std::string file;
        std::getline(fields, file, '\t');
        std::getline(fields, label.text, '\t');
        fields >> label.box.x >> label.box.y >> label.box.width >> label.box.height;
        label.file = folder / file;
        labels.push_back(label);
    }
    return labels;
}

}  // namespace

vision::Photo photoOf(const Picture& picture)
{
    vision::Photo photo = vision::loadPhoto(picture.file);
    if (picture.crop) {
        const cv::Rect whole(0, 0, photo.pixels.cols, photo.pixels.rows);
        photo.pixels = photo.pixels(*picture.crop & whole).clone();
    }
    return photo;
}

std::vector<BenchSet> sampleSets(const fs::path& folder, const models::MakerRegister& known)
{
    std::map<fs::path, BenchSet> by_folder;
    for (const fs::path& file : picturesBelow(folder)) {
        const nlohmann::json truth = truthOf(file);
        if (truth["stamps"].empty())
            continue;
        BenchSet& set = by_folder[file.parent_path()];
        const fs::path below = fs::relative(file.parent_path(), folder);
        set.name = below == "." ? "samples" : "samples-" + below.generic_string();
        set.title = below == "." ? "Samples" : "Samples, " + below.generic_string();
        try {
            set.pictures.push_back(sampleFrom(file, truth, known));
        } catch (const std::exception& error) {
            throw std::runtime_error(truthBeside(file).string() + ": " + error.what());
        }
    }
    std::vector<BenchSet> sets;
    for (auto& [path, set] : by_folder)
        sets.push_back(std::move(set));
    return sets;
}

BenchSet bareSet(const std::vector<fs::path>& folders)
{
    BenchSet set{"bare", "Pictures without a mark", {}, false};
    for (const fs::path& folder : folders)
        for (const fs::path& file : picturesBelow(folder))
            if (truthOf(file)["stamps"].empty())
                set.pictures.push_back({file, {}, {}, true, {}});
    return set;
}

BenchSet datePhotos(const fs::path& folder)
{
    BenchSet set{"dates", "Photographed dates, whole photos", {}, false};
    for (const DateLabel& label : dateLabels(folder))
        set.pictures.push_back({label.file, {}, {{label.text, cornersOf(label.box)}}, false, {}});
    return set;
}

BenchSet dateCrops(const fs::path& folder)
{
    BenchSet set{"date-crops", "Photographed dates, cropped to the line", {}, true};
    for (const DateLabel& label : dateLabels(folder)) {
        const int margin = cvRound(0.1 * label.box.height);
        const cv::Rect crop(std::max(0, label.box.x - margin), std::max(0, label.box.y - margin),
                            label.box.width + 2 * margin, label.box.height + 2 * margin);
        set.pictures.push_back(
            {label.file, crop, {{label.text, cornersOf({{0, 0}, crop.size()})}}, true, {}});
    }
    return set;
}

}  // namespace bench
