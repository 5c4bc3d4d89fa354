#include "app/gui/examiner.h"

#include "app/flow/date_item.h"
#include "app/flow/ranking.h"
#include "models/archive/archive.h"

namespace gui {

namespace {

// Looking at stamps goes on without an archive that cannot be read.
void learn(flow::Engines& engines, const std::filesystem::path& archive_folder)
{
    if (archive_folder.empty() || !models::Archive::isIn(archive_folder))
        return;
    try {
        engines.experience = models::Archive::open(archive_folder, "weftmark").experience();
    } catch (const models::ArchiveError& error) {
        engines.troubles.push_back(error.what());
    }
}

}  // namespace

MakeExaminer examinerOfFlow(const std::filesystem::path& register_folder,
                            const std::filesystem::path& archive_folder)
{
    return [register_folder, archive_folder] {
        auto engines = std::make_shared<flow::Engines>(flow::makeEngines(register_folder));
        learn(*engines, archive_folder);
        // Made here: later two threads would ask for it.
        engines->ranking =
            std::make_shared<const flow::Ranking>(engines->known, engines->experience);
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
            return flow::rankReadings(readings, *engines, type_id);
        };
        examiner.dateRecord = [engines](const models::ItemRecord& record) {
            return flow::dateRecord(record, engines->known, *engines->ranking);
        };
        examiner.troubles = engines->troubles;
        examiner.known = std::make_shared<const models::MakerRegister>(engines->known);
        return examiner;
    };
}

}  // namespace gui
