#include "tests/bench/drawn_set.h"

#include "tests/support/dice.h"

namespace bench {

namespace {

std::string letters(Dice& dice, int count, const std::string& between)
{
    static const std::string all = "ABCDEFGHIJKLMNOPRSTUVW";
    std::string text;
    for (int i = 0; i < count; ++i) {
        text += all[static_cast<std::size_t>(dice.whole(0, static_cast<int>(all.size()) - 1))];
        text += between;
    }
    return text;
}

// Invented names, as elsewhere in the project's made data.
std::string makerText(Dice& dice)
{
    static const std::vector<std::string> names{"HARROWBY", "MERTLE", "PELLOW", "DRAYSEN",
                                                "SELWEK",   "BOSTRY", "TARROW", "QUILLEY",
                                                "WENLOE",   "FARNEX"};
    static const std::vector<std::string> ends{"",        " & CO", " LTD",
                                               " & SONS", " BROS", " & CO. LTD"};
    const std::string dot = dice.whole(0, 2) > 0 ? "." : "";
    std::string text = letters(dice, dice.whole(2, 3), dot);
    if (dice.whole(0, 1) == 0)
        text.append(" ").append(dice.among(names));
    return text + dice.among(ends);
}

std::string dateText(Dice& dice)
{
    static const std::vector<std::string> months{"JAN", "FEB", "MAR", "APR", "MAY", "JUN",
                                                 "JUL", "AUG", "SEP", "OCT", "NOV", "DEC"};
    const std::string year = std::to_string(dice.whole(21, 58));
    switch (dice.whole(0, 3)) {
        case 0:
            return std::to_string(dice.whole(1, 12)) + "/" + year;
        case 1:
            return std::to_string(dice.whole(10, 28)) + " " + dice.among(months) + " 19" + year;
        default:
            return "19" + year;
    }
}

std::string numbered(std::string word, int number)
{
    return word.append(std::to_string(number));
}

std::string otherText(Dice& dice)
{
    switch (dice.whole(0, 3)) {
        case 0:
            return numbered("SIZE ", dice.whole(1, 9));
        case 1:
            return numbered("CONTRACT ", dice.whole(1000, 99999));
        case 2:
            return numbered("Pattern ", dice.whole(1, 40));
        default:
            return letters(dice, 1, " ") + std::to_string(dice.whole(10, 9999));
    }
}

std::vector<std::string> stampText(Dice& dice)
{
    switch (dice.whole(1, 3)) {
        case 1:
            return {dice.whole(0, 1) == 0 ? dateText(dice) : makerText(dice)};
        case 2:
            return {makerText(dice), dateText(dice)};
        default:
            return {makerText(dice), otherText(dice), dateText(dice)};
    }
}

synthetic::SceneOptions scene(Dice& dice, std::uint32_t seed)
{
    using synthetic::Material;
    using synthetic::Table;
    synthetic::SceneOptions options;
    options.seed = seed;
    options.piece.material = dice.among<Material>(
        {Material::Webbing, Material::Canvas, Material::Twill, Material::Leather});
    options.piece.thread_px = dice.between(3.5, 8);
    options.piece.width_px = dice.whole(0, 2) == 0 ? 0 : dice.between(300, 600);
    options.piece.turn_deg = dice.between(0, 360);
    options.piece.unevenness = dice.between(0.2, 0.9);
    const double tone = dice.between(0.5, 1.3);
    options.piece.colour_bgr = {cv::saturate_cast<uchar>(tone * dice.between(70, 130)),
                                cv::saturate_cast<uchar>(tone * dice.between(110, 150)),
                                cv::saturate_cast<uchar>(tone * dice.between(125, 165))};
    options.piece.table = dice.among<Table>({Table::Wood, Table::Cloth, Table::Board});
    options.light = {dice.between(0, 360), dice.between(15, 70), dice.between(0.2, 0.6),
                     dice.between(0, 0.6)};
    options.pitch_deg = dice.between(-15, 15);
    options.yaw_deg = dice.between(-15, 15);
    options.camera.exposure = dice.between(0.6, 1.2);
    options.camera.blur_px = dice.between(0.5, 1.2);
    options.camera.noise = dice.between(0.1, 0.8);
    options.camera.sharpening = dice.between(0, 1);
    return options;
}

synthetic::StampOptions stamp(Dice& dice, const synthetic::SceneOptions& scene, Wear wear)
{
    using synthetic::Face;
    synthetic::StampOptions stamp;
    stamp.text.lines = stampText(dice);
    stamp.text.face =
        dice.among<Face>({Face::Sans, Face::SansBold, Face::SansBold, Face::Condensed, Face::Narrow,
                          Face::Serif, Face::SerifBold, Face::Mono, Face::Stencil});
    if (dice.whole(0, 5) == 0)
        stamp.text.frame = dice.among<synthetic::Frame>(
            {synthetic::Frame::Box, synthetic::Frame::Oval, synthetic::Frame::Diamond});
    std::size_t longest = 1;
    for (const std::string& line : stamp.text.lines)
        longest = std::max(longest, line.size());
    const double room = (scene.piece.width_px > 0 ? 900.0 : 950.0) / static_cast<double>(longest);
    stamp.text.letter_px = std::min(dice.between(20, 70), room);
    stamp.text.looseness = dice.between(0, 0.6);
    stamp.turn_deg = dice.whole(0, 1) * 180 + dice.between(-8, 8);
    stamp.across_px = scene.piece.width_px * dice.between(-0.08, 0.08);
    stamp.along_px = dice.between(-80, 80);
    const double place = dice.between(0, 1);  // within the wear's range
    const double fading[] = {0.15 + 0.2 * place, 0.4 + 0.2 * place, 0.62 + 0.18 * place};
    const double patchiness[] = {0.15, 0.35, 0.55};
    const auto step = static_cast<std::size_t>(wear);
    stamp.ink.fading = fading[step];
    stamp.ink.patchiness = patchiness[step];
    stamp.ink.soaking = dice.between(0.2, 0.9);
    stamp.ink.smudge_px = dice.whole(0, 3) == 0 ? dice.between(0, 3) : 0;
    if (dice.whole(0, 3) == 0)
        stamp.ink.colour_bgr = {60, 40, 120};
    return stamp;
}

}  // namespace

const char* nameOf(Wear wear)
{
    switch (wear) {
        case Wear::Easy:
            return "easy";
        case Wear::Medium:
            return "medium";
        case Wear::Hard:
            break;
    }
    return "hard";
}

synthetic::SceneOptions stampedScene(std::uint32_t seed, Wear wear)
{
    Dice dice(seed);
    synthetic::SceneOptions options = scene(dice, seed);
    options.stamps.push_back(stamp(dice, options, wear));
    return options;
}

synthetic::SceneOptions bareScene(std::uint32_t seed)
{
    Dice dice(seed);
    return scene(dice, seed);
}

}  // namespace bench
