#include "models/exchange/reading_json.h"

#include <cmath>

#include <nlohmann/json.hpp>

#include "models/archive/record_names.h"

namespace models {

namespace {

using Json = nlohmann::ordered_json;

double finite(double number)
{
    if (!std::isfinite(number))
        throw std::invalid_argument("a reading holds a number that is not finite");
    return number;
}

Json lineJson(const Line& line)
{
    Json json;
    json["left_end"] = nameOf(line.left_end);
    json["right_end"] = nameOf(line.right_end);
    json["box"] = boxJson(line.box_px);
    json["certainty"] = line.certainty ? Json(finite(*line.certainty)) : Json(nullptr);
    json["cells"] = Json::array();
    for (const Cell& cell : line.cells)
        json["cells"].push_back(cellJson(cell));
    json["spans"] = rolesJson(line.spans);
    return json;
}

Json linesJson(const std::vector<Line>& lines)
{
    Json json = Json::array();
    for (const Line& line : lines)
        json.push_back(lineJson(line));
    return json;
}

std::string wordOf(const Json& json, const char* key)
{
    return json.at(key).get<std::string>();
}

[[noreturn]] void refuseWord(const char* key, const std::string& word)
{
    throw ExchangeError(std::string("'") + word + "' is not a known value of '" + key + "'");
}

LineEnd lineEnd(const Json& json, const char* key)
{
    const std::string word = wordOf(json, key);
    const std::optional<LineEnd> end = lineEndNamed(word);
    if (!end)
        refuseWord(key, word);
    return *end;
}

Cell cellFromJson(const Json& json)
{
    Cell cell;
    const std::string word = wordOf(json, "state");
    const std::optional<CellState> state = cellStateNamed(word);
    if (!state)
        refuseWord("state", word);
    cell.state = *state;
    for (const Json& alternative : json.at("alternatives"))
        cell.alternatives.push_back(
            {alternative.at(0).get<std::string>(), alternative.at(1).get<double>()});
    cell.least = json.at("least").get<int>();
    cell.most =
        json.at("most").is_null() ? std::nullopt : std::optional(json.at("most").get<int>());
    cell.left_px = json.at("left_px").get<double>();
    cell.right_px = json.at("right_px").get<double>();
    cell.by = wordOf(json, "by");
    cell.erased = json.value("erased", false);
    cell.struck_over = json.value("struck_over", false);
    cell.seen_earlier = json.value("seen_earlier", false);
    cell.doubted = json.value("doubted", false);
    cell.about = json.value("about", false);
    return cell;
}

RoleSpan spanFromJson(const Json& json)
{
    const std::string word = wordOf(json, "role");
    const std::optional<LineRole> role = lineRoleNamed(word);
    if (!role)
        refuseWord("role", word);
    return {.first_cell = json.at("first_cell").get<std::size_t>(),
            .end_cell = json.at("end_cell").get<std::size_t>(),
            .role = *role,
            .probability = json.at("probability").get<double>()};
}

Line lineFromJson(const Json& json)
{
    Line line;
    line.left_end = lineEnd(json, "left_end");
    line.right_end = lineEnd(json, "right_end");
    const Json& box = json.at("box");
    line.box_px = {.x = box.at(0).get<double>(),
                   .y = box.at(1).get<double>(),
                   .width = box.at(2).get<double>(),
                   .height = box.at(3).get<double>()};
    if (!json.at("certainty").is_null())
        line.certainty = json.at("certainty").get<double>();
    for (const Json& cell : json.at("cells"))
        line.cells.push_back(cellFromJson(cell));
    for (const Json& span : json.at("spans"))
        line.spans.push_back(spanFromJson(span));
    return line;
}

std::vector<Line> linesFromJson(const Json& json)
{
    std::vector<Line> lines;
    for (const Json& line : json)
        lines.push_back(lineFromJson(line));
    return lines;
}

Reading fieldsFromJson(const Json& json)
{
    Reading reading;
    reading.reader = wordOf(json, "reader");
    const std::string word = wordOf(json, "basis");
    const std::optional<Basis> basis = basisNamed(word);
    if (!basis)
        refuseWord("basis", word);
    reading.basis = *basis;
    reading.read_at = wordOf(json, "read_at");
    if (!json.at("candidates_were_shown").is_null())
        reading.candidates_were_shown = json.at("candidates_were_shown").get<bool>();
    reading.layer = wordOf(json, "layer");
    reading.options = wordOf(json, "options");
    reading.weights_sha256 = wordOf(json, "weights_sha256");
    reading.lines = linesFromJson(json.at("lines"));
    return reading;
}

}  // namespace

Json cellJson(const Cell& cell)
{
    Json json;
    json["state"] = nameOf(cell.state);
    json["alternatives"] = Json::array();
    for (const Alternative& alternative : cell.alternatives)
        json["alternatives"].push_back(
            Json::array({alternative.text, finite(alternative.certainty)}));
    json["least"] = cell.least;
    json["most"] = cell.most ? Json(*cell.most) : Json(nullptr);
    json["left_px"] = finite(cell.left_px);
    json["right_px"] = finite(cell.right_px);
    json["by"] = cell.by;
    if (cell.erased)
        json["erased"] = true;
    if (cell.struck_over)
        json["struck_over"] = true;
    if (cell.seen_earlier)
        json["seen_earlier"] = true;
    if (cell.doubted)
        json["doubted"] = true;
    if (cell.about)
        json["about"] = true;
    return json;
}

Json rolesJson(const std::vector<RoleSpan>& spans)
{
    Json json = Json::array();
    for (const RoleSpan& span : spans)
        json.push_back({{"first_cell", span.first_cell},
                        {"end_cell", span.end_cell},
                        {"role", nameOf(span.role)},
                        {"probability", finite(span.probability)}});
    return json;
}

Json boxJson(const Box& box)
{
    return Json::array({finite(box.x), finite(box.y), finite(box.width), finite(box.height)});
}

Json readingJson(const Reading& reading)
{
    Json json;
    json["reader"] = reading.reader;
    json["basis"] = nameOf(reading.basis);
    json["read_at"] = reading.read_at;
    json["candidates_were_shown"] =
        reading.candidates_were_shown ? Json(*reading.candidates_were_shown) : Json(nullptr);
    json["layer"] = reading.layer;
    json["options"] = reading.options;
    json["weights_sha256"] = reading.weights_sha256;
    json["lines"] = linesJson(reading.lines);
    return json;
}

Reading readingFromJson(const Json& json)
{
    try {
        return fieldsFromJson(json);
    } catch (const Json::exception& error) {
        throw ExchangeError(std::string("this is not a reading: ") + error.what());
    }
}

std::string linesToJsonText(const std::vector<Line>& lines)
{
    return linesJson(lines).dump(-1, ' ', false, Json::error_handler_t::replace);
}

std::vector<Line> linesFromJsonText(const std::string& text)
{
    try {
        return linesFromJson(Json::parse(text));
    } catch (const Json::exception& error) {
        throw ExchangeError(std::string("these are not the lines of a reading: ") + error.what());
    }
}

}  // namespace models
