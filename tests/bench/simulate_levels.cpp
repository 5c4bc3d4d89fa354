// The levels of wear, and what a matcher knows of them: the part of simulate_wear.h that is given.
#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include "models/letters.h"
#include "tests/bench/simulate_wear.h"

const std::array<WearLevel, 5>& wearLevels()
{
    static const std::array<WearLevel, 5> levels = {{
        {"1 nearly whole", {.lost = 0.02, .traces = 0.02, .doubtful = 0.08}},
        {"2 rubbed", {.lost = 0.06, .traces = 0.05, .doubtful = 0.15}},
        {"3 worn", {.lost = 0.12, .traces = 0.10, .doubtful = 0.22, .gone = 0.015}},
        {"4 faint", {.lost = 0.20, .traces = 0.15, .doubtful = 0.25, .gone = 0.02}},
        {"5 hardly there", {.lost = 0.30, .traces = 0.20, .doubtful = 0.25, .gone = 0.03}},
    }};
    return levels;
}

Wear mismatched(Wear wear)
{
    wear.lost *= 2;
    wear.gone *= 2;
    wear.any_letter = 0.05;
    return wear;
}

std::vector<LookAlikePair> startingPairs()
{
    return {{"0", "O"}, {"1", "I"}, {"B", "P"}, {"C", "G"}, {"E", "F"}, {"O", "Q"}, {"P", "R"},
            {"V", "W"}, {"0", "8"}, {"2", "Z"}, {"3", "5"}, {"3", "8"}, {"3", "9"}, {"4", "9"},
            {"4", "A"}, {"5", "8"}, {"5", "S"}, {"6", "8"}, {"8", "B"}, {"D", "O"}, {"K", "X"},
            {"U", "V"}, {"X", "Y"}, {"0", "6"}, {"0", "9"}, {"0", "D"}, {"1", "7"}, {"6", "G"},
            {"7", "T"}, {"8", "S"}, {"B", "R"}, {"C", "O"}, {"E", "L"}, {"H", "N"}, {"I", "J"},
            {"I", "L"}, {"I", "T"}, {"M", "N"}, {"V", "Y"}, {"&", "8"}, {"/", "1"}};
}

std::vector<LookAlikePair> otherPairs()
{
    Dice dice(77);
    std::set<std::pair<std::string, std::string>> chosen;
    for (const std::string& letter : models::charactersOf("ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789"))
        for (int i = 0; i < 2; ++i) {
            const std::string other = anyLetterSeen(dice);
            if (other != letter)
                chosen.insert(std::minmax(letter, other));
        }
    std::vector<LookAlikePair> pairs;
    for (const auto& [a, b] : chosen)
        pairs.push_back({a, b});
    return pairs;
}

models::ReadingErrors errorsOf(const Wear& wear, const std::vector<LookAlikePair>& look_alikes)
{
    std::map<std::string, std::set<std::string>> of_letter;
    for (const LookAlikePair& pair : look_alikes) {
        of_letter[pair.a].insert(pair.b);
        of_letter[pair.b].insert(pair.a);
    }
    models::ReadingErrors errors;
    errors.confusions = models::ConfusionTable({});
    for (const auto& [truth, taken] : of_letter)
        for (const std::string& seen : taken)
            errors.confusions.set(
                truth, seen,
                (1 - slip_is_any_letter) * wear.slip / static_cast<double>(taken.size()));
    errors.engine.clear_slip = 1;
    errors.engine.any_letter = wear.any_letter + slip_is_any_letter * wear.slip;
    errors.engine.look_alike_share = 1 - slip_is_any_letter;
    errors.person = errors.engine;
    errors.insert_rate = wear.stray;
    errors.skip_rate = wear.gone;
    return errors;
}

models::ReadingErrors errorsWithoutTable(const Wear& wear)
{
    models::ReadingErrors errors = errorsOf(wear, {});
    errors.engine.look_alike_share = 0;
    errors.engine.any_letter = wear.any_letter + wear.slip;
    errors.person = errors.engine;
    return errors;
}
