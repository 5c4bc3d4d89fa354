#pragma once

#include <stop_token>
#include <vector>

#include "app/flow/examine.h"

namespace flow {

// A stamp with one reading for each reader, all of them of the same way up: readers may differ on
// it, then the surest settles it.
struct ReadStamp {
    vision::StampOutline outline;  // as the stamp's own up has it
    vision::EnhancedStamp enhanced;
    std::vector<models::Reading> readings;
};

// Throws Cancelled if it is asked to stop.
void stopIfAsked(const std::stop_token& stop);

// Reads what stands in the outline, either way up unless options.keep_up. A short line that can
// hardly be told is read as two lines across it too; then the outline is theirs.
// Throws Cancelled.
ReadStamp readStamp(const vision::Photo& photo, const vision::StampOutline& outline,
                    Engines& engines, const ExamineOptions& options, const std::stop_token& stop);

// Reads a photo that is a crop of one line. Throws Cancelled.
ReadStamp readCrop(const vision::Photo& photo, Engines& engines, const ExamineOptions& options,
                   const std::stop_token& stop);

}  // namespace flow
