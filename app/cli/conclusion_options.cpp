#include "app/cli/conclusion_options.h"

#include <CLI/CLI.hpp>

#include "app/cli/command_line.h"
#include "app/flow/filing.h"
#include "app/flow/register_hash.h"
#include "models/archive/record_names.h"
#include "models/edtf.h"

namespace cli {

namespace {

models::Certainty certaintyWordFrom(const std::string& typed)
{
    if (typed.empty())
        return models::Certainty::Possible;
    if (const auto certainty = models::certaintyNamed(typed))
        return *certainty;
    throw UsageError("'" + typed +
                     "' is no word of certainty; write certain, probable or possible");
}

}  // namespace

void tellConclusionOptions(CLI::App& command, ConclusionOptions& options)
{
    command.add_option("--maker", options.maker_id, "The maker that you conclude, by its id");
    command.add_option("--date", options.date, "The date that you conclude, in EDTF");
    command.add_option("--certainty", options.certainty,
                       "How sure you are: certain, probable or possible (the default)");
    command.add_option("--reasons", options.reasons, "Why you conclude it");
}

void checkConclusion(const ConclusionOptions& options, const models::MakerRegister& known)
{
    if (!options.maker_id.empty() && !known.maker(options.maker_id))
        throw UsageError("the register has no maker '" + options.maker_id +
                         "'; look its id up with register list makers");
    const std::string no_date = options.date.empty() ? "" : models::whyNoYearBounds(options.date);
    if (!no_date.empty())
        throw UsageError("'" + options.date + "' is not a date in EDTF: " + no_date +
                         "; write 1940, 1940?, 194X or 1938/1941");
    certaintyWordFrom(options.certainty);
    if (!options.concludes() && !(options.certainty.empty() && options.reasons.empty()))
        throw UsageError(
            "--certainty and --reasons belong to a conclusion; give --maker or --date");
}

models::AttributionRecord conclusionFrom(const ConclusionOptions& options,
                                         const models::MakerRegister& known,
                                         const std::filesystem::path& register_folder,
                                         const models::CandidateList& candidates)
{
    models::AttributionRecord attribution =
        flow::attributionRecord(options.maker_id, known, candidates);
    attribution.register_sha256 = flow::registerSha256(register_folder);
    attribution.date_edtf = options.date;
    attribution.certainty = certaintyWordFrom(options.certainty);
    attribution.reasons = options.reasons;
    return attribution;
}

}  // namespace cli
