// The engines that a program starts with.
#include <cstdlib>
#include <functional>
#include <system_error>

#include "app/flow/examine.h"
#include "vision/line_reader.h"
#include "vision/tesseract_reader.h"
#include "vision/weights_error.h"

namespace flow {

std::filesystem::path weightsFolder()
{
    if (const char* named = std::getenv("WEFTMARK_WEIGHTS"); named && *named)
        return named;
    std::error_code trouble;
    if (std::filesystem::is_directory(WEFTMARK_WEIGHTS_FOLDER, trouble))
        return WEFTMARK_WEIGHTS_FOLDER;
    return std::filesystem::read_symlink("/proc/self/exe", trouble).parent_path() / "weights";
}

Engines makeEngines(const std::filesystem::path& register_folder)
{
    Engines engines;
    engines.known = models::loadRegister(register_folder);
    const std::filesystem::path weights = weightsFolder();
    const auto add = [&](const std::function<void()>& load) {
        try {
            load();
        } catch (const vision::WeightsError& error) {
            engines.troubles.emplace_back(error.what());
        }
    };
    std::error_code trouble;
    if (std::filesystem::is_directory(weights, trouble)) {
        add([&] { engines.finder = vision::StampFinder(weights); });
        add([&] { engines.upright = std::make_unique<vision::UprightNetwork>(weights); });
        add([&] { engines.readers.push_back(std::make_unique<vision::LineReader>(weights)); });
    } else {
        engines.troubles.push_back(
            weights.string() +
            ", where the networks should be, is no folder; without them marks are found by the "
            "shapes of letters and lines are read by Tesseract alone; take the folder anew from "
            "the project");
    }
    if (engines.readers.empty())
        engines.readers.push_back(std::make_unique<vision::TesseractReader>());
    return engines;
}

}  // namespace flow
