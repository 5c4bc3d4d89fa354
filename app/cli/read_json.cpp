#include "app/cli/read_json.h"

#include <nlohmann/json.hpp>

#include "models/archive/record_names.h"
#include "models/exchange/reading_json.h"
#include "models/leiden.h"
#include "models/typed_notation.h"

namespace cli {

namespace {

using Json = nlohmann::ordered_json;

Json quadJson(const vision::Quad& quad)
{
    Json json = Json::array();
    for (const cv::Point2f& corner : quad)
        json.push_back(Json::array({corner.x, corner.y}));
    return json;
}

Json rectifiedJson(const vision::RectifiedStamp& stamp)
{
    Json homography = Json::array();
    for (const double number : stamp.photo_from_rectified.val)
        homography.push_back(number);
    return {{"width_px", stamp.pixels.cols},
            {"height_px", stamp.pixels.rows},
            {"photo_from_rectified", homography}};
}

// Likeliest first.
Json datesJson(const std::vector<models::DateMeaning>& dates)
{
    Json json = Json::array();
    for (const models::DateMeaning& date : dates)
        json.push_back({{"first_cell", date.first_cell},
                        {"end_cell", date.end_cell},
                        {"edtf", date.edtf},
                        {"probability", date.probability}});
    return json;
}

Json lineJson(const models::Line& line, const std::vector<models::RoleSpan>& roles,
              const std::vector<models::DateMeaning>& dates)
{
    Json cells = Json::array();
    for (const models::Cell& cell : line.cells)
        cells.push_back(models::cellJson(cell));
    return {
        {"text", models::plainText(line)},           {"leiden", models::toLeiden(line)},
        {"typed", models::writeTyped(line)},         {"certainty", models::lineCertainty(line)},
        {"left_end", models::nameOf(line.left_end)}, {"right_end", models::nameOf(line.right_end)},
        {"box", models::boxJson(line.box_px)},       {"cells", cells},
        {"roles", models::rolesJson(roles)},         {"dates", datesJson(dates)}};
}

Json candidateJson(const models::Candidate& candidate)
{
    Json years = Json::array();
    for (const models::YearShare& share : candidate.years)
        years.push_back(Json::array({std::to_string(share.year), share.probability}));
    return {{"maker", candidate.maker},
            {"maker_id", candidate.maker_id},
            {"mark", candidate.mark},
            {"probability", candidate.probability},
            {"years", years},
            {"edtf", candidate.edtf ? Json(*candidate.edtf) : Json(nullptr)},
            {"reasons", candidate.reasons}};
}

Json stampJson(const flow::StampExamination& stamp)
{
    Json lines = Json::array();
    for (std::size_t i = 0; i < stamp.proposal.lines.size(); ++i)
        lines.push_back(lineJson(stamp.proposal.lines[i], stamp.roles.at(i), stamp.dates.at(i)));
    Json json = {{"outline", quadJson(stamp.outline.corners)},
                 {"score", stamp.outline.score},
                 {"up_deg", stamp.enhanced.rectified.up_deg},
                 {"rectified", rectifiedJson(stamp.enhanced.rectified)},
                 {"lines", lines}};
    if (stamp.enhanced.rectified.mirrored)
        json["mirrored"] = true;
    json.update(candidatesJson(stamp.candidates));
    return json;
}

}  // namespace

Json examinationJson(const std::string& photo, const flow::Examination& examination)
{
    Json stamps = Json::array();
    for (const flow::StampExamination& stamp : examination.stamps)
        stamps.push_back(stampJson(stamp));
    Json json = {{"photo", photo},
                 {"width_px", examination.photo.pixels.cols},
                 {"height_px", examination.photo.pixels.rows},
                 {"error", nullptr},
                 {"warnings", examination.photo.warnings},
                 {"stamps", stamps}};
    json.update(candidatesJson(examination.candidates));
    return json;
}

// null where no unread cell would tell anything.
Json settlingJson(const std::optional<models::SettlingCell>& settling)
{
    if (!settling)
        return nullptr;
    Json letters = Json::array();
    for (const models::LetterMeaning& letter : settling->letters)
        letters.push_back(
            {{"letter", letter.letter},
             {"probability", letter.probability},
             {"maker", letter.maker_id.empty() ? Json(nullptr) : Json(letter.maker)},
             {"maker_id", letter.maker_id.empty() ? Json(nullptr) : Json(letter.maker_id)},
             {"maker_probability", letter.maker_probability}});
    return {{"stamp", settling->stamp},
            {"line", settling->line},
            {"cell", settling->cell},
            {"bits", settling->bits},
            {"letters", letters}};
}

Json failureJson(const std::string& photo, const std::string& error)
{
    Json json = {{"photo", photo},
                 {"width_px", 0},
                 {"height_px", 0},
                 {"error", error},
                 {"warnings", Json::array()},
                 {"stamps", Json::array()}};
    json.update(candidatesJson({}));
    return json;
}

Json candidatesJson(const models::CandidateList& candidates)
{
    Json list = Json::array();
    for (const models::Candidate& candidate : candidates.candidates)
        list.push_back(candidateJson(candidate));
    return {{"candidates", list},
            {"other_makers", candidates.other_makers},
            {"unknown_maker", candidates.unknown_maker},
            {"settling", settlingJson(candidates.settling)}};
}

Json datedLinesJson(const std::vector<models::Line>& lines,
                    const std::vector<std::vector<models::DateMeaning>>& dates)
{
    Json json = Json::array();
    for (std::size_t i = 0; i < lines.size(); ++i)
        json.push_back(
            {{"typed", models::writeTyped(lines[i])}, {"dates", datesJson(dates.at(i))}});
    return json;
}

std::string inOneLine(const Json& json)
{
    return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

}  // namespace cli
