#include "app/cli/truth.h"

#include <fstream>
#include <system_error>

#include <nlohmann/json.hpp>

namespace cli {

namespace {

Truth truthFrom(const nlohmann::json& json)
{
    Truth truth;
    truth.item_type = json.value("item_type", "");
    truth.maker_id = json.value("maker_id", "");
    truth.edtf = json.value("edtf", "");
    if (json.contains("stamps"))
        for (const nlohmann::json& stamp : json.at("stamps"))
            truth.stamps.push_back(stamp.at("lines").get<std::vector<std::string>>());
    truth.no_stamp = json.contains("stamps") && truth.stamps.empty();
    return truth;
}

}  // namespace

std::optional<Truth> truthBeside(const std::filesystem::path& photo)
{
    std::filesystem::path file = photo;
    file.replace_extension(".truth.json");
    std::error_code ignored;
    if (!std::filesystem::is_regular_file(file, ignored))
        return std::nullopt;
    try {
        std::ifstream stream(file);
        return truthFrom(nlohmann::json::parse(stream));
    } catch (const nlohmann::json::exception& error) {
        throw TruthError(file.string() + " is not a truth file and is left aside (" + error.what() +
                         "); mend or remove it");
    }
}

void TruthTally::count(const Truth& truth, const models::CandidateList& candidates,
                       double surest_line)
{
    if (truth.no_stamp) {
        ++no_stamp_of_;
        misled_ += surest_line >= 0.5 ? 1 : 0;
    }
    if (truth.maker_id.empty())
        return;
    ++of_;
    for (std::size_t i = 0; i < candidates.candidates.size() && i < 3; ++i)
        if (candidates.candidates[i].maker_id == truth.maker_id) {
            first_ += i == 0 ? 1 : 0;
            ++among_three_;
            return;
        }
}

std::string TruthTally::sentence() const
{
    std::string text;
    if (of_ > 0) {
        const std::string of = " of " + std::to_string(of_);
        text = "true maker first: " + std::to_string(first_) + of +
               ", among three: " + std::to_string(among_three_) + of;
    }
    if (no_stamp_of_ > 0)
        text += std::string(text.empty() ? "" : "; ") + "of " + std::to_string(no_stamp_of_) +
                " without a stamp, " + std::to_string(misled_) +
                " gave a line with certainty 0.5 or more";
    return text;
}

}  // namespace cli
