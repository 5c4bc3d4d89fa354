#include <algorithm>
#include <string>

#include "models/typed_notation.h"
#include "tests/bench/made_world.h"

namespace bench {

namespace {

constexpr int first_year = 1915, last_year = 1960;

std::string limit(int year, Dice& dice)
{
    return std::to_string(year) + (dice.between(0, 1) < 0.15 ? "~" : "");
}

void addMakers(models::MakerRegister& known, Dice& dice)
{
    const std::string letters = "BCDFGHKLMNPRSTVW";
    for (int m = 0; m < 14; ++m) {
        models::Maker maker;
        maker.maker_id = "maker-" + std::to_string(m);
        maker.name = "Made-up maker " + std::to_string(m);
        const int from = dice.whole(first_year, last_year - 20);
        maker.from = limit(from, dice);
        maker.to = limit(std::min(last_year, from + dice.whole(10, 28)), dice);
        models::Mark mark;
        mark.maker_id = maker.maker_id;
        mark.text = std::string(1, letters[static_cast<std::size_t>(m)]) + "." +
                    std::string(1, letters[static_cast<std::size_t>(dice.whole(0, 15))]) + ". & CO";
        mark.line = models::parseTyped(mark.text).lines.at(0);
        known.makers.push_back(maker);
        known.marks.push_back(mark);
    }
}

// Ways of making that follow each other, with up to two years in which both were made.
void addChain(models::MakerRegister& known, const std::string& type_id, int chain, int from, int to,
              Dice& dice)
{
    int begin = from;
    for (int way = 0; begin < to; ++way) {
        int end = std::min(to, begin + dice.whole(4, 12));
        if (to - end < 3)
            end = to;
        models::Feature feature;
        feature.feature_id = type_id + "-" + std::to_string(chain) + "-" + std::to_string(way);
        feature.type_id = type_id;
        feature.name = "Detail " + feature.feature_id;
        feature.from = limit(begin, dice);
        feature.to = limit(end, dice);
        known.features.push_back(feature);
        begin = end + 1 - dice.whole(0, 2);
        if (end == to)
            break;
    }
}

}  // namespace

models::MakerRegister madeRegister(Dice& dice)
{
    models::MakerRegister known;
    addMakers(known, dice);
    for (int t = 0; t < 6; ++t) {
        models::ItemType type;
        type.type_id = "type" + std::string(1, static_cast<char>('a' + t));
        type.name = "Made-up type " + std::string(1, static_cast<char>('a' + t));
        const int from = dice.whole(first_year, last_year - 30), to = from + dice.whole(20, 30);
        type.introduced = limit(from, dice);
        type.withdrawn = limit(to, dice);
        known.item_types.push_back(type);
        for (int chain = 0; chain < 4; ++chain)
            addChain(known, type.type_id, chain, from, to, dice);
    }
    return known;
}

}  // namespace bench
