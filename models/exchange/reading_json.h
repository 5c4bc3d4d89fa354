#pragma once

#include <stdexcept>
#include <string>
#include <vector>

#include <nlohmann/json_fwd.hpp>

#include "models/reading.h"

namespace models {

// What was given is not of the format. what() names the place and what should stand there.
class ExchangeError : public std::runtime_error {
public:
    using std::runtime_error::runtime_error;
};

// A cell as every JSON of Weftmark writes it; flags (erased, struck_over, seen_earlier, doubted,
// about) stand only where they are set, `most` is null for an unknown number.
nlohmann::ordered_json cellJson(const Cell& cell);

// What stretches of a line are for, an object each: first_cell, end_cell, role, probability.
nlohmann::ordered_json rolesJson(const std::vector<RoleSpan>& spans);

// A box as [x, y, width, height].
nlohmann::ordered_json boxJson(const Box& box);

// The whole reading; nothing of it is lost. Throws std::invalid_argument if a number is not finite.
nlohmann::ordered_json readingJson(const Reading& reading);

// The reading that readingJson wrote. Throws ExchangeError for anything else.
Reading readingFromJson(const nlohmann::ordered_json& json);

// The lines alone, as text in one line: what an archive keeps of a reading's cells.
std::string linesToJsonText(const std::vector<Line>& lines);
std::vector<Line> linesFromJsonText(const std::string& text);

}  // namespace models
