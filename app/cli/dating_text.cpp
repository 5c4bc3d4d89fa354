#include "app/cli/dating_text.h"

#include <algorithm>
#include <cmath>
#include <iomanip>
#include <sstream>

#include <nlohmann/json.hpp>

#include "models/dating_words.h"

namespace cli {

namespace {

using Json = nlohmann::ordered_json;

constexpr double least_shown = 0.01, least_in_json = 0.001;
constexpr std::size_t most_bars = 16;

// Years in order, each with a bar; where there are many the likeliest ones.
void printHistogram(std::ostream& out, const models::Dating& dating)
{
    std::vector<std::size_t> shown;
    for (std::size_t y = 0; y < dating.years.size(); ++y)
        if (dating.years[y] >= least_shown)
            shown.push_back(y);
    std::stable_sort(shown.begin(), shown.end(), [&](std::size_t a, std::size_t b) {
        return dating.years[a] > dating.years[b];
    });
    const std::size_t left_out = shown.size() - std::min(shown.size(), most_bars);
    const double most_left_out = left_out > 0 ? dating.years[shown[most_bars]] : 0;
    shown.resize(shown.size() - left_out);
    std::sort(shown.begin(), shown.end());
    for (const std::size_t y : shown)
        out << "    " << dating.range.first + static_cast<int>(y) << "  " << std::setw(9)
            << models::percentInWords(dating.years[y]) << "  "
            << std::string(static_cast<std::size_t>(std::lround(dating.years[y] * 40)), '#')
            << "\n";
    if (left_out > 0)
        out << "    and " << left_out << (left_out == 1 ? " other year" : " other years")
            << " with " << models::percentInWords(most_left_out) << " or less each\n";
}

void printEvidence(std::ostream& out, const models::PartDating& part)
{
    std::vector<std::size_t> order;
    for (std::size_t i = 0; i < part.evidence.size(); ++i)
        order.push_back(i);
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return part.dating.weights[a].bits > part.dating.weights[b].bits;
    });
    if (!order.empty())
        out << "  because\n";
    for (const std::size_t i : order) {
        const models::EvidenceWeight& weight = part.dating.weights[i];
        std::ostringstream bits;
        bits << std::fixed << std::setprecision(weight.bits < 0.1 ? 2 : 1) << weight.bits;
        out << "    " << part.evidence[i].source << ": " << part.evidence[i].meaning << "\n      "
            << bits.str() << " bits, moved " << models::percentInWords(weight.moved) << ": "
            << weight.words << "\n";
    }
}

Json partJson(const models::PartDating& part)
{
    const models::Dating& dating = part.dating;
    Json json = {{"name", part.name},
                 {"is_item", part.is_item},
                 {"edtf", dating.edtf.empty() ? Json() : Json(dating.edtf)},
                 {"in_words", models::datingInWords(dating)},
                 {"set", dating.set}};
    json["years"] = json["evidence"] = json["culprits"] = Json::array();
    for (std::size_t y = 0; y < dating.years.size(); ++y)
        if (dating.years[y] >= least_in_json)
            json["years"].push_back(
                Json::array({dating.range.first + static_cast<int>(y), dating.years[y]}));
    for (std::size_t i = 0; i < part.evidence.size(); ++i) {
        const models::EvidenceWeight& weight = dating.weights[i];
        json["evidence"].push_back({{"source", part.evidence[i].source},
                                    {"meaning", part.evidence[i].meaning},
                                    {"bits", weight.bits},
                                    {"moved", weight.moved},
                                    {"sound", weight.sound},
                                    {"in_words", weight.words}});
    }
    for (const models::Culprit& culprit : dating.culprits)
        json["culprits"].push_back({{"source", part.evidence[culprit.evidence].source},
                                    {"probability", culprit.probability},
                                    {"fault", models::nameOf(culprit.fault)},
                                    {"printed", culprit.printed ? Json(*culprit.printed) : Json()},
                                    {"in_words", culprit.words}});
    json["contradiction"] = dating.contradiction;
    json["is_contradiction"] = dating.is_contradiction;
    json["silent"] = part.silent;
    return json;
}

}  // namespace

void printDatings(std::ostream& out, const std::vector<models::PartDating>& parts)
{
    for (const models::PartDating& part : parts) {
        out << part.name << ": " << models::datingInWords(part.dating) << "\n";
        if (!part.dating.edtf.empty()) {
            out << "  EDTF " << part.dating.edtf << "\n";
            printHistogram(out, part.dating);
        }
        if (part.dating.is_contradiction) {
            out << "  the evidence contradicts itself ("
                << models::percentInWords(part.dating.contradiction) << ")\n";
            for (const models::Culprit& culprit : part.dating.culprits)
                out << "    " << culprit.words << "\n";
        }
        printEvidence(out, part);
        for (const std::string& silent : part.silent)
            out << "    says nothing: " << silent << "\n";
    }
}

nlohmann::ordered_json datingsJson(const std::vector<models::PartDating>& parts)
{
    Json json = {{"parts", Json::array()}};
    for (const models::PartDating& part : parts)
        json["parts"].push_back(partJson(part));
    return json;
}

}  // namespace cli
