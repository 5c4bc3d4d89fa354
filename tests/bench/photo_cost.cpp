// What loading costs: seconds and peak memory for each file, each in a process of its own; the
// first line is the program before it loads anything.
//   photo_cost [FILE...]     without files: a made PNG of 400 megapixels, which is refused, and a
//                            made JPEG of 48, which is read
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <cstdio>
#include <functional>
#include <vector>

#include <opencv2/imgproc.hpp>

#include "tests/support/picture_files.h"
#include "tests/support/temporary_folder.h"
#include "vision/image_error.h"
#include "vision/photo.h"

namespace {

// A child starts with the parent's peak, so the parent must not have been large: what is large is
// made in a child, too.
void inChild(const char* label, const std::function<std::string()>& work)
{
    std::fflush(stdout);
    const pid_t child = fork();
    if (child == 0) {
        const auto begin = std::chrono::steady_clock::now();
        const std::string outcome = work();
        const std::chrono::duration<double> taken = std::chrono::steady_clock::now() - begin;
        rusage used{};
        getrusage(RUSAGE_SELF, &used);
        if (label != nullptr)
            std::printf("%8.1f ms %8.1f MB  %s: %s\n", 1000 * taken.count(),
                        static_cast<double>(used.ru_maxrss) / 1024, label, outcome.c_str());
        std::fflush(stdout);
        _exit(0);
    }
    waitpid(child, nullptr, 0);
}

std::string load(const std::string& file)
{
    try {
        const vision::Photo photo = vision::loadPhoto(file);
        return photo.format + " of " + std::to_string(photo.pixels.cols) + " x " +
               std::to_string(photo.pixels.rows);
    } catch (const vision::ImageError& error) {
        return error.what();
    }
}

// Cloth-like enough that the file is as large as a camera's.
cv::Mat madePhotograph(cv::Size size)
{
    cv::Mat small(size / 4, CV_8UC3), picture;
    cv::RNG random(48);
    random.fill(small, cv::RNG::NORMAL, cv::Scalar(90, 130, 150), cv::Scalar(25, 25, 25));
    cv::resize(small, picture, size, 0, 0, cv::INTER_LINEAR);
    return picture;
}

}  // namespace

int main(int count, char** arguments)
{
    const support::TemporaryFolder folder;
    std::vector<std::string> files(arguments + 1, arguments + count);
    if (files.empty()) {
        files = {(folder.path() / "400_megapixels.png").string(),
                 (folder.path() / "48_megapixels.jpg").string()};
        inChild(nullptr, [&] {
            picture_files::write(files[0], picture_files::blackPng(20000, 20000));
            picture_files::write(files[1], picture_files::jpeg(madePhotograph({8000, 6000}), 90));
            return std::string();
        });
    }
    inChild("nothing", [] { return std::string("loaded nothing"); });
    for (const std::string& file : files)
        inChild((std::to_string(std::filesystem::file_size(file)) + " bytes").c_str(),
                [&] { return load(file); });
    return 0;
}
