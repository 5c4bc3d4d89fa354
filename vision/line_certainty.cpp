#include "vision/line_certainty.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <string>

#include "vision/symbol_alignment.h"

namespace vision {

namespace {

constexpr double nearest_to_sure = 0.9995;

double surpriseOf(double score)
{
    return -std::log(1 - std::clamp(score, 0.0, nearest_to_sure));
}

double meanScore(const std::vector<RawSymbol>& symbols)
{
    double sum = 0;
    for (const RawSymbol& symbol : symbols)
        sum += symbol.score;
    return symbols.empty() ? 0 : sum / static_cast<double>(symbols.size());
}

bool isOfKind(int (*kind)(int), char c)
{
    return kind(static_cast<unsigned char>(c)) != 0;
}

// Counts what marks hardly carry: a small letter before a capital, a letter before a digit, a digit
// before a small letter, a sign that is none of the usual.
double oddnessOf(const std::vector<RawSymbol>& symbols)
{
    const auto letter = [&](std::size_t i) {
        return symbols[i].text.size() == 1 ? symbols[i].text[0] : '\x01';
    };
    double odd = 0;
    for (std::size_t i = 0; i < symbols.size(); ++i) {
        const char at = letter(i);
        if (!isOfKind(std::isalnum, at) && std::string("&./,-'").find(at) == std::string::npos)
            ++odd;
        if (i == 0 || symbols[i].starts_word)
            continue;
        const char before = letter(i - 1);
        odd += isOfKind(std::islower, before) && isOfKind(std::isupper, at) ? 1 : 0;
        odd += isOfKind(std::isalpha, before) && isOfKind(std::isdigit, at) ? 1 : 0;
        odd += isOfKind(std::isdigit, before) && isOfKind(std::islower, at) ? 1 : 0;
    }
    return std::min(odd / std::sqrt(static_cast<double>(symbols.size())), 2.0);
}

}  // namespace

bool inkStands(const InkEvidence& ink)
{
    return ink.step > 0.03 && ink.ratio > 0.8;
}

LineReadings lineReadings(std::vector<RawSymbol> first, std::vector<RawSymbol> second,
                          const cv::Rect2d& box, const InkEvidence& ink)
{
    if (meanScore(second) > meanScore(first))
        std::swap(first, second);
    return {std::move(first), std::move(second), box, ink};
}

LineTraits lineTraits(const LineReadings& readings)
{
    const std::vector<RawSymbol>& symbols = readings.chosen;
    double least = 1;
    for (const RawSymbol& symbol : symbols)
        least = std::min(least, symbol.score);
    const auto count = static_cast<double>(symbols.size());
    LineTraits traits;
    traits.mean_surprise = surpriseOf(meanScore(symbols));
    traits.least_surprise = surpriseOf(least);
    traits.log_letters = std::log(count);
    traits.agreement = agreementOf(symbols, readings.other);
    traits.same = traits.agreement == 1 ? 1 : 0;
    traits.oddness = oddnessOf(symbols);
    traits.log_step = std::log(std::max(readings.ink.step, 0.02));
    const double pitch = readings.box.width / std::max(1.0, readings.box.height) / count;
    traits.pitch_misfit = std::abs(std::log(std::max(pitch / 0.75, 0.2)));
    return traits;
}

std::vector<CellTraits> cellTraits(const LineReadings& readings)
{
    const LineTraits line = lineTraits(readings);
    const std::vector<int> partner = alignSymbols(readings.chosen, readings.other);
    std::vector<CellTraits> cells;
    for (std::size_t i = 0; i < readings.chosen.size(); ++i) {
        const RawSymbol& symbol = readings.chosen[i];
        CellTraits cell;
        cell.surprise = surpriseOf(symbol.score);
        if (partner[i] >= 0)
            cell.agreed =
                readings.other[static_cast<std::size_t>(partner[i])].text == symbol.text ? 1 : 0;
        cell.line_surprise = line.mean_surprise;
        cell.oddness = line.oddness;
        cell.log_step = line.log_step;
        cells.push_back(cell);
    }
    return cells;
}

// Fitted by `calibration lines`; how, is told in DEVELOPERS.md.
const LogisticModel& lineModel()
{
    static const LogisticModel model{-17.9,
                                     {{"mean surprise", 2.85},
                                      {"least surprise", 0.37},
                                      {"log letters", 1.78},
                                      {"same", 1.30},
                                      {"agreement", 1.21},
                                      {"oddness", -4.90},
                                      {"log step", 0.56},
                                      {"pitch misfit", -1.80}}};
    return model;
}

const LogisticModel& cellModel()
{
    static const LogisticModel model{-5.0,
                                     {{"surprise", 1.0},
                                      {"agreed", 1.5},
                                      {"line surprise", 0.8},
                                      {"oddness", -1.0},
                                      {"log step", 0.3}}};
    return model;
}

std::vector<double> termsOf(const LineTraits& t)
{
    return {t.mean_surprise, t.least_surprise, t.log_letters, t.same,
            t.agreement,     t.oddness,        t.log_step,    t.pitch_misfit};
}

std::vector<double> termsOf(const CellTraits& t)
{
    return {t.surprise, t.agreed, t.line_surprise, t.oddness, t.log_step};
}

}  // namespace vision
