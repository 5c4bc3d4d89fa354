#pragma once

#include <filesystem>
#include <functional>
#include <memory>
#include <stop_token>
#include <string>
#include <vector>

#include "app/flow/examine.h"
#include "models/archive/records.h"
#include "models/item_dating.h"

namespace gui {

// What the worker calls to look at pictures: app/flow in the program, something quick in a test.
// Made and called in the worker's thread alone; each may throw, and flow::Cancelled after a stop.
struct Examiner {
    std::function<flow::Examination(const std::filesystem::path& file,
                                    const flow::ExamineOptions& options, std::stop_token stop,
                                    const flow::Progress& progress)>
        examinePhoto;
    std::function<vision::Photo(const std::filesystem::path& file)> loadPhoto;
    std::function<flow::StampExamination(const vision::Photo& photo,
                                         const vision::StampOutline& outline,
                                         const flow::ExamineOptions& options, std::stop_token stop)>
        examineStamp;
    // The layers of a stamp that was read before, without reading it.
    std::function<vision::EnhancedStamp(const vision::Photo& photo,
                                        const vision::StampOutline& outline, bool mirrored)>
        enhanceStamp;
    // Called in a thread of its own, while pictures are looked at in the other.
    std::function<models::CandidateList(const std::vector<models::Reading>& readings,
                                        const std::string& type_id)>
        rankReadings;
    // Called in the same thread as rankReadings.
    std::function<std::vector<models::PartDating>(const models::ItemRecord& record)> dateRecord;
    std::shared_ptr<const models::MakerRegister> known;  // shared with the window, which only reads
    std::vector<std::string> troubles;  // readers that cannot be used, a sentence each
};

// Loading engines takes a second or more, so it is left to the worker's thread.
using MakeExaminer = std::function<Examiner()>;

// The engines of app/flow with the register of this folder, and what the archive teaches when they
// are made; an archive that is not there teaches nothing.
MakeExaminer examinerOfFlow(const std::filesystem::path& register_folder,
                            const std::filesystem::path& archive_folder = {});

}  // namespace gui
