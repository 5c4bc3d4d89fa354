#include "tests/bench/level_photos.h"

#include <algorithm>
#include <stdexcept>

#include "models/letters.h"
#include "tests/support/dice.h"
#include "tests/support/mark_texts.h"
#include "tests/support/sample_looks.h"

namespace bench {

namespace {

using namespace synthetic;

const cv::Size photo_px(1200, 900);

struct Wear {
    double rubbed, patchiness, speckle, smudge_letters, defocus_px, noise;
};

// The most of each, at a level; how much of it there is falls by chance.
Wear mostWear(SampleLevel level)
{
    switch (level) {
        case SampleLevel::Easy:
            return {0.05, 0.2, 0.2, 0, 0.8, 0.5};
        case SampleLevel::Medium:
            return {0.25, 0.4, 0.5, 0.15, 1.6, 0.6};
        case SampleLevel::Hard:
            return {0.4, 0.5, 0.7, 0.25, 2.0, 0.7};
        case SampleLevel::NotStamps:
            break;
    }
    throw std::invalid_argument("pictures without a stamp have no level");
}

double longestOf(const std::vector<std::string>& lines)
{
    std::size_t longest = 1;
    for (const std::string& line : lines)
        longest = std::max(longest, models::charactersOf(line).size());
    return static_cast<double>(longest);
}

std::vector<std::string> textFor(Dice& dice, const LevelNumbers& numbers, double letter_px)
{
    while (true) {
        std::vector<std::string> lines = markText(dice, true);
        const double room = 0.9 * std::min(photo_px.width, photo_px.height);
        if (numbers.lines.holds(static_cast<double>(lines.size())) &&
            0.85 * letter_px * longestOf(lines) < room)
            return lines;
    }
}

PieceOptions pieceFor(Dice& dice, double strap_px)
{
    PieceOptions piece;
    piece.material = dice.among<Material>({Material::Webbing, Material::Webbing, Material::Canvas,
                                           Material::Canvas, Material::Twill, Material::Leather});
    piece.colour_bgr = piece.material == Material::Leather
                           ? dice.among<cv::Vec3b>({looks::tan_leather, {88, 128, 164}})
                           : dice.among<cv::Vec3b>({looks::khaki, looks::drab, looks::olive,
                                                    looks::sand, looks::grey_blue, looks::undyed});
    piece.thread_px = dice.between(3.5, 6);
    piece.unevenness = dice.between(0.3, 0.9);
    piece.width_px = dice.once_in(2) ? 0 : strap_px;
    piece.turn_deg = dice.between(0, 360);
    piece.table = dice.among<Table>({Table::Wood, Table::Cloth, Table::Board});
    return piece;
}

DetailOptions detailsFor(Dice& dice)
{
    DetailOptions details;
    details.waviness = dice.between(0.2, 0.9);
    details.fuzz = dice.between(0.2, 0.7);
    details.edge_stitching = dice.once_in(3);
    if (dice.once_in(4))
        details.eyelets_px = {{dice.between(380, 480), 0}};
    if (dice.once_in(3))
        details.creases = {{.along_px = dice.between(-450, 450),
                            .turn_deg = dice.between(60, 120),
                            .height_px = dice.between(2, 5)}};
    if (dice.once_in(3))
        details.stains = {{.along_px = dice.between(-450, 450),
                           .across_px = dice.between(-150, 150),
                           .radius_px = dice.between(50, 130),
                           .strength = dice.between(0.2, 0.4)}};
    return details;
}

SceneOptions bareSceneFor(Dice& dice, std::uint32_t seed, double strap_px)
{
    SceneOptions scene;
    scene.seed = seed;
    scene.size_px = photo_px;
    scene.piece = pieceFor(dice, strap_px);
    scene.details = detailsFor(dice);
    scene.light = {dice.between(0, 360),
                   dice.between(28, 65),
                   dice.between(0.35, 0.6),
                   dice.between(0, 0.45),
                   {}};
    if (dice.once_in(4))
        scene.light.shadows = {looks::bystander(dice.between(-500, 500), dice.between(0, 180))};
    scene.pitch_deg = dice.between(-14, 14);
    scene.yaw_deg = dice.between(-14, 14);
    scene.camera = {.exposure = dice.between(0.95, 1.35),
                    .blur_px = dice.between(0.5, 0.9),
                    .sharpening = dice.between(0.2, 0.8),
                    .vignetting = dice.between(0, 0.3),
                    .jpeg_quality = dice.whole(80, 95)};
    return scene;
}

void wear(Dice& dice, const Wear& most, SceneOptions& scene)
{
    StampOptions& stamp = scene.stamps.front();
    stamp.ink.patchiness = dice.between(0.05, most.patchiness);
    if (dice.once_in(3))
        stamp.ink.rubbed = dice.between(0, most.rubbed);
    if (dice.once_in(4))
        stamp.ink.speckle = dice.between(0, most.speckle);
    if (dice.once_in(5))
        stamp.ink.smudge_px = dice.between(0, most.smudge_letters) * stamp.text.letter_px;
    if (dice.once_in(8))
        stamp.ink.second_px = 0.6 * most.smudge_letters * stamp.text.letter_px;
    scene.camera.defocus_px = dice.between(0, most.defocus_px);
    scene.camera.noise = dice.between(0.2, most.noise);
}

SceneOptions sceneFor(SampleLevel level, std::uint32_t seed)
{
    const LevelNumbers numbers = numbersOf(level);
    Dice dice(seed);
    StampOptions stamp;
    stamp.text.letter_px = dice.between(numbers.letter_px.least, numbers.letter_px.most / 1.05);
    stamp.text.lines = textFor(dice, numbers, stamp.text.letter_px);
    stamp.text.face =
        dice.among<Face>({Face::Sans, Face::SansBold, Face::SansBold, Face::Condensed, Face::Narrow,
                          Face::Serif, Face::SerifBold, Face::Mono, Face::Stencil});
    stamp.text.letter_spacing = dice.between(0.06, 0.2);
    stamp.text.line_spacing = dice.between(1.5, 1.9);
    stamp.text.looseness = dice.between(0, 0.6);
    if (dice.once_in(8))
        stamp.text.frame = dice.among<Frame>({Frame::Box, Frame::Box, Frame::Oval});
    else if (dice.once_in(10) && longestOf(stamp.text.lines) > 6)
        stamp.text.arch_deg = dice.between(30, 110);
    stamp.ink.colour_bgr =
        dice.among<cv::Vec3b>({looks::black_ink, looks::black_ink, looks::blue_black_ink});
    stamp.ink.fading = 0.03;
    stamp.ink.soaking = dice.between(0.7, 0.95);
    stamp.turn_deg = dice.between(-5, 5) + (dice.once_in(2) ? 180 : 0);
    stamp.along_px = dice.between(-60, 60);
    stamp.across_px = dice.between(-10, 10);
    stamp.contrast = dice.between(numbers.contrast.least, numbers.contrast.most * 0.97);
    if (level == SampleLevel::Easy)
        stamp.contrast = dice.between(0.36, 0.42);  // what fresh ink reaches on any cloth
    const double lines = static_cast<double>(stamp.text.lines.size());
    SceneOptions scene =
        bareSceneFor(dice, seed, stamp.text.letter_px * (1.9 * lines + dice.between(2, 5)));
    if (scene.piece.material == Material::Leather) {  // its gloss outshines ink in a hard light
        scene.light.ambient += 0.25;
        stamp.ink.colour_bgr = {26, 22, 22};
    }
    scene.stamps = {stamp};
    wear(dice, mostWear(level), scene);
    return scene;
}

bool liesWithin(const Quad& outline)
{
    constexpr float rim = 8;
    return std::all_of(outline.begin(), outline.end(), [&](const cv::Point2f& corner) {
        return corner.x > rim && corner.y > rim &&
               corner.x < static_cast<float>(photo_px.width) - rim &&
               corner.y < static_cast<float>(photo_px.height) - rim;
    });
}

bool holds(const LevelNumbers& numbers, const StampTruth& stamp)
{
    return numbers.letter_px.holds(stamp.letter_px) && numbers.contrast.holds(stamp.contrast) &&
           numbers.lost.holds(stamp.lost) && liesWithin(stamp.outline);
}

}  // namespace

DrawnPhoto levelPhoto(SampleLevel level, std::uint32_t seed)
{
    constexpr std::uint32_t tries = 40, stride = 1000003;
    for (std::uint32_t i = 0; i < tries; ++i) {
        DrawnPhoto photo = drawPhoto(sceneFor(level, seed + i * stride));
        if (holds(numbersOf(level), photo.stamps.front()))
            return photo;
    }
    throw std::runtime_error("no photograph of the level came about");
}

DrawnPhoto barePhoto(std::uint32_t seed)
{
    Dice dice(seed);
    SceneOptions scene = bareSceneFor(dice, seed, dice.between(150, 400));
    scene.details.edge_stitching = dice.once_in(2);
    if (dice.once_in(3))
        scene.details.ruler = RulerOptions{.x_px = dice.between(-200, 200),
                                           .y_px = dice.between(-300, 300),
                                           .turn_deg = dice.between(0, 360),
                                           .width_px = dice.between(50, 110),
                                           .tick_px = dice.between(6, 16)};
    if (dice.once_in(4)) {
        scene.piece.pattern =
            dice.among<Pattern>({Pattern::Stripes, Pattern::Checks, Pattern::Dots});
        scene.piece.pattern_px = dice.between(20, 90);
    }
    return drawPhoto(scene);
}

}  // namespace bench
