#include "tests/support/drawn_marks.h"

#include <algorithm>
#include <array>
#include <sstream>
#include <stdexcept>

#include "tests/support/dice.h"
#include "tests/support/mark_texts.h"

namespace {

using namespace synthetic;

// Chosen once, by a run of numbers that says nothing of what they draw; never to be changed.
constexpr std::array<std::uint32_t, 100> seeds = {
    23176, 40059, 89119, 86836, 59076, 76699, 16033, 92261, 96046, 27827, 71279, 60883, 18723,
    85647, 86150, 22395, 78335, 32202, 40818, 80329, 19502, 41361, 26302, 94393, 81003, 59312,
    19080, 71686, 35235, 57491, 43626, 91917, 88674, 45174, 21473, 19994, 78068, 74772, 92840,
    18841, 70756, 55162, 57772, 61749, 94976, 77732, 26505, 49531, 88290, 27693, 78411, 66215,
    86342, 48130, 51262, 54485, 92346, 14895, 22061, 48672, 34184, 98688, 43973, 79029, 75117,
    63569, 20338, 84576, 24708, 45453, 14992, 24845, 18123, 68705, 92410, 81223, 25212, 66905,
    45757, 48731, 93620, 77296, 40021, 43365, 50879, 90819, 60733, 15329, 79832, 43310, 11906,
    53546, 26172, 47613, 60641, 33165, 90775, 29915, 45843, 23350,
};

PieceOptions pieceFor(Dice& dice)
{
    PieceOptions piece;
    piece.material = dice.among<Material>({Material::Webbing, Material::Webbing, Material::Canvas,
                                           Material::Canvas, Material::Twill, Material::Leather});
    piece.thread_px = dice.between(3, 5.5);
    piece.width_px = dice.once_in(3) ? 0 : dice.between(210, 380);
    piece.unevenness = dice.between(0.3, 0.9);
    // Khaki, drab, olive, sand, grey blue, undyed; leather from tan to chestnut.
    const cv::Vec3b colour =
        piece.material == Material::Leather
            ? dice.among<cv::Vec3b>({{74, 112, 158}, {70, 106, 154}, {88, 128, 164}})
            : dice.among<cv::Vec3b>({{100, 142, 160},
                                     {96, 124, 134},
                                     {92, 122, 120},
                                     {124, 158, 176},
                                     {140, 138, 126},
                                     {150, 172, 180}});
    const double tone = dice.between(0.92, 1.12);
    for (int c = 0; c < 3; ++c)
        piece.colour_bgr[c] = cv::saturate_cast<uchar>(colour[c] * tone * dice.between(0.96, 1.04));
    piece.table = dice.among<Table>({Table::Wood, Table::Cloth, Table::Board});
    return piece;
}

// Most stamps run nearly level, some at any slant, some upside down.
double tiltFor(Dice& dice)
{
    const double tilt = dice.once_in(4) ? dice.between(-45, 45) : dice.between(-12, 12);
    return dice.once_in(8) ? tilt + 180 : tilt;
}

StampOptions stampFor(Dice& dice)
{
    StampOptions stamp;
    const Face face =
        dice.among<Face>({Face::Sans, Face::SansBold, Face::SansBold, Face::Condensed, Face::Narrow,
                          Face::Serif, Face::SerifBold, Face::Mono, Face::Stencil});
    stamp.text = {.lines = markText(dice, true),
                  .face = face,
                  .letter_px = 20,
                  .letter_spacing = dice.between(0.06, 0.2),
                  .line_spacing = dice.between(1.5, 1.9),
                  .looseness = dice.between(0, 0.6)};
    if (dice.once_in(10))
        stamp.text.frame = Frame::Box;
    stamp.ink = {.colour_bgr = dice.among<cv::Vec3b>(
                     {{34, 30, 30}, {34, 30, 30}, {56, 34, 32}, {74, 32, 50}}),
                 .fading = dice.between(0, 0.03),
                 .soaking = dice.between(0.7, 0.95),
                 .patchiness = dice.between(0.05, 0.16)};
    if (dice.once_in(6))
        stamp.ink.speckle = dice.between(0.1, 0.4);
    if (dice.once_in(8))
        stamp.ink.smudge_px = dice.between(1, 2.5);
    stamp.along_px = dice.between(-60, 60);
    stamp.across_px = dice.between(-12, 12);
    return stamp;
}

SceneOptions sceneFor(std::uint32_t seed)
{
    Dice dice(seed);
    SceneOptions scene;
    scene.seed = seed;
    scene.size_px = {640, 480};
    scene.piece = pieceFor(dice);
    scene.details.waviness = dice.between(0.1, 0.7);
    scene.details.fuzz = dice.between(0.1, 0.6);
    scene.piece.turn_deg = dice.once_in(2) ? dice.between(-8, 8) : 0;
    scene.stamps = {stampFor(dice)};
    const double tilt = tiltFor(dice);
    if (scene.piece.width_px > 0)  // a strap's stamp runs along it; the strap is what lies askew
        scene.piece.turn_deg = tilt;
    else
        scene.stamps[0].turn_deg = tilt;
    scene.stamps[0].turn_deg += dice.between(-3, 3);
    scene.light = {dice.between(0, 360),
                   dice.between(25, 65),
                   dice.between(0.3, 0.6),
                   dice.between(0, 0.45),
                   {}};
    if (scene.piece.material == Material::Leather) {  // its gloss outshines ink in a hard light
        scene.light.ambient += 0.25;
        scene.stamps[0].ink.colour_bgr = {26, 22, 22};
    }
    scene.pitch_deg = dice.between(-10, 10);
    scene.yaw_deg = dice.between(-10, 10);
    scene.camera = {.exposure = dice.between(0.9, 1.25),
                    .blur_px = dice.between(0.4, 0.7),
                    .noise = dice.between(0.15, 0.6),
                    .sharpening = dice.between(0.2, 0.8),
                    .vignetting = dice.between(0, 0.3),
                    .jpeg_quality = dice.whole(82, 95)};
    return scene;
}

DrawnMark markFor(double contrast, std::uint32_t seed)
{
    if (!(contrast >= 0.02 && contrast <= 0.9))
        throw std::invalid_argument("the contrast of drawn marks must be 0.02 to 0.9");
    std::ostringstream id;
    id << "drawn-" << contrast << "-" << seed;
    DrawnMark mark{id.str(), contrast, sceneFor(seed)};
    mark.scene.stamps[0].contrast = contrast;
    return mark;
}

}  // namespace

std::vector<double> drawnMarkContrasts()
{
    return {0.15, 0.25, 0.40};
}

std::vector<DrawnMark> drawnMarks(double contrast)
{
    std::vector<DrawnMark> marks;
    for (const std::uint32_t seed : seeds)
        marks.push_back(markFor(contrast, seed));
    return marks;
}

std::vector<DrawnMark> otherMarks(double contrast, std::uint32_t first_seed, std::size_t count)
{
    std::vector<DrawnMark> marks;
    for (std::uint32_t seed = first_seed; marks.size() < count; ++seed)
        if (std::find(seeds.begin(), seeds.end(), seed) == seeds.end())
            marks.push_back(markFor(contrast, seed));
    return marks;
}
