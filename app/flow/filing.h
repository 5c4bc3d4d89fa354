#pragma once

#include <string>

#include "app/flow/examine.h"
#include "models/archive/records.h"

// From what was examined to what is filed; the command line and the window both file so.
namespace flow {

// The photo as a record: its file is the original to be copied.
models::PhotoRecord photoRecord(const vision::Photo& photo);

// One examined stamp as a stamp with one view that holds each engine's reading; readings without
// lines are left out.
//   read_at  UTC, when the engines read
models::StampRecord stampRecord(const vision::Photo& photo, const StampExamination& examination,
                                const std::string& read_at);

// What a person concludes of a maker of the register, with the mark and the reasons that the engine
// found for it, if it did. An unknown maker_id gives its id as its name.
//   candidates  of the item; maker_id may be empty
models::AttributionRecord attributionRecord(const std::string& maker_id,
                                            const models::MakerRegister& known,
                                            const models::CandidateList& candidates);

}  // namespace flow
