// What is invented on pictures that carry no mark: every line found on them is listed.
//   bare_cloth [FOLDER ...] [--save FOLDER]
// All pictures below the folders are read; ../shared/textures by default.

#include <algorithm>
#include <filesystem>
#include <iostream>
#include <string>
#include <vector>

#include <opencv2/imgcodecs.hpp>
#include <opencv2/imgproc.hpp>

#include "tests/bench/read_marks.h"
#include "vision/image_error.h"
#include "vision/photo.h"
#include "vision/tesseract_reader.h"

namespace {

namespace fs = std::filesystem;

std::vector<fs::path> picturesBelow(const std::vector<fs::path>& folders)
{
    std::vector<fs::path> files;
    for (const fs::path& folder : folders)
        for (const auto& entry : fs::recursive_directory_iterator(folder)) {
            const std::string ending = entry.path().extension().string();
            if (ending == ".jpg" || ending == ".jpeg" || ending == ".png")
                files.push_back(entry.path());
        }
    std::sort(files.begin(), files.end());
    return files;
}

}  // namespace

int main(int argc, char** argv)
{
    std::vector<fs::path> folders;
    for (int i = 1; i < argc; ++i)
        folders.emplace_back(argv[i]);
    if (folders.empty())
        folders.emplace_back("../shared/textures");
    vision::TesseractReader reader;
    int pictures = 0, with_stamps = 0, lines_found = 0, sure = 0;
    double highest = 0;
    for (const fs::path& file : picturesBelow(folders)) {
        vision::Photo photo;
        try {
            photo = vision::loadPhoto(file);
        } catch (const vision::ImageError& error) {
            std::cerr << error.what() << '\n';
            continue;
        }
        ++pictures;
        const auto lines = bench::readMarks(photo, reader);
        with_stamps += lines.empty() ? 0 : 1;
        for (const bench::ReadLine& line : lines) {
            ++lines_found;
            highest = std::max(highest, line.certainty);
            sure += line.certainty >= 0.5 ? 1 : 0;
            std::cout << file.filename().string() << '\t' << line.stamp_score << '\t'
                      << line.certainty << '\t' << line.text << '\n';
        }
    }
    std::cout << "pictures " << pictures << ", with a line " << with_stamps << ", lines "
              << lines_found << ", of certainty 0.5 or more " << sure << ", highest certainty "
              << highest << '\n';
    return sure == 0 ? 0 : 1;
}
