#pragma once

#include <filesystem>
#include <string>

#include "models/archive/records.h"
#include "models/candidates.h"
#include "models/maker_register.h"

namespace CLI {
class App;
}

namespace cli {

// What a person concludes of an item at the command line; all as typed, empty where nothing is.
struct ConclusionOptions {
    std::string maker_id, date, certainty, reasons;

    bool concludes() const { return !maker_id.empty() || !date.empty(); }
};

// Adds --maker, --date, --certainty and --reasons to a command.
void tellConclusionOptions(CLI::App& command, ConclusionOptions& options);

// Throws UsageError for a maker that the register does not have, a date that is not EDTF, no word
// of certainty, and for certainty or reasons without a conclusion.
void checkConclusion(const ConclusionOptions& options, const models::MakerRegister& known);

// The conclusion as it is recorded, with the candidates' reasons for its maker.
models::AttributionRecord conclusionFrom(const ConclusionOptions& options,
                                         const models::MakerRegister& known,
                                         const std::filesystem::path& register_folder,
                                         const models::CandidateList& candidates);

}  // namespace cli
