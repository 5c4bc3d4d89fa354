// Memory with many large photos to read: window_memory [PHOTOS] (else 200), 12 megapixels each,
// made up, read by the program's engines one after the other while the first are gone through.
// Tells on standard error how it grows.
#include <QApplication>
#include <QTemporaryDir>
#include <fstream>
#include <iostream>

#include <opencv2/imgcodecs.hpp>
#include <opencv2/imgproc.hpp>

#include "tests/bench/gui_watch.h"
#include "tests/gui/window_harness.h"

namespace {

namespace fs = std::filesystem;

// A line of the process's own account, in GB: VmHWM is the most so far, VmRSS what is held now.
double gigabytes(const std::string& name)
{
    std::ifstream in("/proc/self/status");
    for (std::string line; std::getline(in, line);)
        if (line.starts_with(name + ":"))
            return std::stod(line.substr(name.size() + 1)) / 1024 / 1024;
    return 0;
}

// A few pictures of the samples at 4000 x 3000, and the rest as further names of them.
void writePhotos(const fs::path& folder, int count)
{
    std::vector<fs::path> drawn;
    for (const auto& entry :
         fs::directory_iterator(fs::path(WEFTMARK_SOURCE_DIR) / "sample_images" / "medium"))
        if (entry.path().extension() == ".jpg")
            drawn.push_back(entry.path());
    std::sort(drawn.begin(), drawn.end());
    for (int i = 0; i < count; ++i) {
        const fs::path file = folder / ("photo" + std::to_string(1000 + i) + ".jpg");
        const int same = i % static_cast<int>(drawn.size());
        if (same != i) {
            fs::create_symlink(folder / ("photo" + std::to_string(1000 + same) + ".jpg"), file);
            continue;
        }
        cv::Mat pixels = cv::imread(drawn[static_cast<std::size_t>(i)].string());
        cv::resize(pixels, pixels, {4000, 3000}, 0, 0, cv::INTER_CUBIC);
        cv::imwrite(file.string(), pixels);
    }
}

}  // namespace

int main(int argc, char** argv)
{
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM"))
        qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication application(argc, argv);
    const int count = argc > 1 ? std::atoi(argv[1]) : 200;
    QTemporaryDir folder;
    const fs::path photos = folder.path().toStdString();
    writePhotos(photos, count);
    const fs::path known = fs::path(WEFTMARK_SOURCE_DIR) / "models" / "register";
    gui_tests::WindowHarness window(gui::examinerOfFlow(known), known, gui_tests::readAhead);
    window.window().openPhotos({photos});
    int gone_to = 0, told = 0;
    const auto read = [&] {
        int done = 0;
        for (int place = 0; place < count; ++place) {
            const gui::PhotoState state = window.sitting().queue()->state(place);
            done += state != gui::PhotoState::ToRead && state != gui::PhotoState::Reading ? 1 : 0;
        }
        return done;
    };
    // Every tenth photo is begun and left, as one does.
    while (read() < count) {
        QTest::qWait(200);
        if (const int done = read(); done >= told + 10) {  // how it grows, however long it takes
            told = done;
            std::cerr << done << " read: " << gigabytes("VmRSS") << " GB, at most "
                      << gigabytes("VmHWM") << "\n";
        }
        if (window.sitting().session() && read() > gone_to * 10 && gone_to < count / 10) {
            ++gone_to;
            window.type("A");
            window.key(Qt::Key_N, Qt::ControlModifier);
        }
    }
    std::cout << count << " photos of 12 megapixels read, " << gone_to << " begun: at most "
              << gigabytes("VmHWM") << " GB (bar 1.2)\n";
}
