#pragma once

#include <string>
#include <vector>

#include <nlohmann/json_fwd.hpp>

#include "app/flow/examine.h"

// What other programs read: the objects of `weftmark read --json` and `weftmark match --json`.
namespace cli {

// One photo's object. `photo` is the path as the caller gave it.
nlohmann::ordered_json examinationJson(const std::string& photo,
                                       const flow::Examination& examination);

// The object of a photo that could not be read; `error` is a sentence.
nlohmann::ordered_json failureJson(const std::string& photo, const std::string& error);

// [{"typed": ..., "dates": [...]}], the dates of each line as in examinationJson.
nlohmann::ordered_json datedLinesJson(const std::vector<models::Line>& lines,
                                      const std::vector<std::vector<models::DateMeaning>>& dates);

// {"candidates": [...], "other_makers": ..., "unknown_maker": ...}
nlohmann::ordered_json candidatesJson(const models::CandidateList& candidates);

// One line of text; bytes that are not UTF-8 (in a file's name) become U+FFFD.
std::string inOneLine(const nlohmann::ordered_json& json);

}  // namespace cli
