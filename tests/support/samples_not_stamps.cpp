#include "tests/support/sample_looks.h"
#include "tests/support/sample_scenes.h"

namespace {

using namespace synthetic;

SampleScene stitching()
{
    SampleScene sample{SampleLevel::NotStamps, "stitching", "", "", "", {}, {}};
    SceneOptions& scene = sample.scene;
    scene.size_px = {1200, 900};
    scene.seed = 9001;
    scene.piece = {.material = Material::Canvas,
                   .colour_bgr = looks::khaki,
                   .thread_px = 4.4,
                   .unevenness = 0.75,
                   .width_px = 520,
                   .turn_deg = -6,
                   .table = Table::Wood};
    scene.details = {.waviness = 0.9, .fuzz = 0.6, .edge_stitching = true, .hem_px = 90.0};
    scene.light = {.from_deg = 215, .elevation_deg = 34, .ambient = 0.42, .unevenness = 0.4};
    scene.pitch_deg = 9;
    scene.camera = looks::nearCamera(1.1);
    return sample;
}

SampleScene eyelets()
{
    SampleScene sample{SampleLevel::NotStamps, "eyelets", "", "", "", {}, {}};
    SceneOptions& scene = sample.scene;
    scene.size_px = {1200, 900};
    scene.seed = 9002;
    scene.piece = {.material = Material::Webbing,
                   .colour_bgr = looks::drab,
                   .thread_px = 5,
                   .unevenness = 0.7,
                   .width_px = 330,
                   .turn_deg = 4,
                   .table = Table::Cloth};
    scene.details = {.waviness = 0.7,
                     .fuzz = 0.5,
                     .eyelets_px = {{-360, 0}, {-200, 0}, {-40, 0}, {120, 0}, {280, 0}}};
    scene.light = {.from_deg = 240, .elevation_deg = 42, .ambient = 0.45, .unevenness = 0.35};
    scene.camera = looks::nearCamera(1.15);
    return sample;
}

SampleScene ruler()
{
    SampleScene sample{SampleLevel::NotStamps, "ruler", "", "", "", {}, {}};
    SceneOptions& scene = sample.scene;
    scene.size_px = {1200, 900};
    scene.seed = 9003;
    scene.piece = {.material = Material::Canvas,
                   .colour_bgr = looks::olive,
                   .thread_px = 4.6,
                   .unevenness = 0.75,
                   .width_px = 0,
                   .turn_deg = 5};
    scene.details = {.waviness = 0.8,
                     .fuzz = 0.5,
                     .ruler = RulerOptions{.x_px = -20, .y_px = 90, .turn_deg = -8}};
    scene.light = {.from_deg = 210, .elevation_deg = 40, .ambient = 0.42, .unevenness = 0.4};
    scene.camera = looks::nearCamera(1.15);
    return sample;
}

SampleScene shadows()
{
    SampleScene sample{SampleLevel::NotStamps, "shadows", "", "", "", {}, {}};
    SceneOptions& scene = sample.scene;
    scene.size_px = {1200, 900};
    scene.seed = 9004;
    scene.piece = {.material = Material::Twill,
                   .colour_bgr = looks::undyed,
                   .thread_px = 4,
                   .unevenness = 0.65,
                   .width_px = 0,
                   .turn_deg = 12};
    scene.details = {.waviness = 0.7, .fuzz = 0.4};
    scene.light = {.from_deg = 250,
                   .elevation_deg = 48,
                   .ambient = 0.4,
                   .unevenness = 0.3,
                   .shadows = {{-220, 0, 62, 60, 9, 0.5},
                               {-40, 0, 64, 26, 7, 0.45},
                               {130, 0, 60, 70, 14, 0.5},
                               {60, 190, 152, 34, 10, 0.4}}};
    scene.camera = looks::nearCamera(0.85);
    return sample;
}

SampleScene bareCloth()
{
    SampleScene sample{SampleLevel::NotStamps, "bare_cloth", "", "", "", {}, {}};
    SceneOptions& scene = sample.scene;
    scene.size_px = {1200, 900};
    scene.seed = 9005;
    scene.piece = {.material = Material::Canvas,
                   .colour_bgr = looks::sand,
                   .thread_px = 5.4,
                   .unevenness = 0.9,
                   .width_px = 0,
                   .turn_deg = -14};
    scene.details = {
        .waviness = 1,
        .fuzz = 0.8,
        .stains = {{.along_px = 200, .across_px = 130, .radius_px = 190, .strength = 0.3}}};
    scene.light = {.from_deg = 190, .elevation_deg = 24, .ambient = 0.36, .unevenness = 0.45};
    scene.camera = looks::nearCamera(1.0);
    return sample;
}

SampleScene crease()
{
    SampleScene sample{SampleLevel::NotStamps, "crease", "", "", "", {}, {}};
    SceneOptions& scene = sample.scene;
    scene.size_px = {1200, 900};
    scene.seed = 9006;
    scene.piece = {.material = Material::Canvas,
                   .colour_bgr = looks::drab,
                   .thread_px = 4.2,
                   .unevenness = 0.7,
                   .width_px = 0,
                   .turn_deg = 3};
    scene.details = {
        .waviness = 1,
        .fuzz = 0.5,
        .creases = {
            {.along_px = -140, .turn_deg = 74, .height_px = 11},
            {.along_px = 90, .across_px = 60, .turn_deg = 38, .height_px = 9, .length_px = 620},
            {.along_px = 330, .turn_deg = 97, .height_px = 8}}};
    scene.light = {.from_deg = 200, .elevation_deg = 28, .ambient = 0.4, .unevenness = 0.4};
    scene.camera = looks::nearCamera(1.2);
    return sample;
}

SampleScene printedPattern()
{
    SampleScene sample{SampleLevel::NotStamps, "pattern", "", "", "", {}, {}};
    SceneOptions& scene = sample.scene;
    scene.size_px = {1200, 900};
    scene.seed = 9007;
    scene.piece = {.material = Material::Twill,
                   .colour_bgr = looks::undyed,
                   .thread_px = 4,
                   .unevenness = 0.65,
                   .width_px = 0,
                   .turn_deg = 9};
    scene.piece.pattern = Pattern::Dots;
    scene.piece.pattern_px = 46;
    scene.piece.pattern_bgr = {96, 62, 52};
    scene.details = {.waviness = 0.8,
                     .fuzz = 0.4,
                     .creases = {{.along_px = 260, .turn_deg = 80, .height_px = 7}}};
    scene.light = {.from_deg = 320, .elevation_deg = 38, .ambient = 0.45, .unevenness = 0.35};
    scene.camera = looks::nearCamera(0.85);
    return sample;
}

SampleScene thumb()
{
    SampleScene sample{SampleLevel::NotStamps, "thumb", "", "", "", {}, {}};
    SceneOptions& scene = sample.scene;
    scene.size_px = {1200, 900};
    scene.seed = 9008;
    scene.piece = {.material = Material::Webbing,
                   .colour_bgr = looks::khaki,
                   .thread_px = 5,
                   .unevenness = 0.7,
                   .width_px = 400,
                   .turn_deg = -5,
                   .table = Table::Board};
    scene.details = {
        .waviness = 0.7,
        .fuzz = 0.6,
        .thumb = ThumbOptions{.x_px = 60, .y_px = 20, .turn_deg = 215, .width_px = 190}};
    scene.light = {.from_deg = 225, .elevation_deg = 42, .ambient = 0.45, .unevenness = 0.35};
    scene.camera = looks::nearCamera(1.05);
    return sample;
}

}  // namespace

std::vector<SampleScene> notStampSamples()
{
    return {stitching(), eyelets(), ruler(),          shadows(),
            bareCloth(), crease(),  printedPattern(), thumb()};
}
