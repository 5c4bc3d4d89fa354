#include "app/gui/examiner.h"

namespace gui {

MakeExaminer examinerOfFlow(const std::filesystem::path& register_folder)
{
    return [register_folder] {
        auto engines = std::make_shared<flow::Engines>(flow::makeEngines(register_folder));
        Examiner examiner;
        examiner.examinePhoto = [engines](const auto& file, const auto& options,
                                          std::stop_token stop, const auto& progress) {
            return flow::examinePhoto(file, *engines, options, stop, progress);
        };
        examiner.loadPhoto = [](const std::filesystem::path& file) {
            return vision::loadPhoto(file);
        };
        examiner.examineStamp = [engines](const auto& photo, const auto& outline,
                                          const auto& options, std::stop_token stop) {
            return flow::examineStamp(photo, outline, *engines, options, stop);
        };
        examiner.enhanceStamp = [](const auto& photo, const auto& outline, bool is_mirrored) {
            return vision::enhanceStamp(
                vision::rectifyStamp(photo, outline, {.mirrored = is_mirrored}));
        };
        examiner.rankReadings = [engines](const auto& readings, const std::string& type_id) {
            return flow::rankReadings(readings, engines->known, type_id);
        };
        examiner.troubles = engines->troubles;
        examiner.known = std::make_shared<const models::MakerRegister>(engines->known);
        return examiner;
    };
}

}  // namespace gui
