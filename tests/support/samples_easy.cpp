#include "tests/support/sample_looks.h"
#include "tests/support/sample_scenes.h"

namespace {

using namespace synthetic;

SampleScene clearBelt()
{
    SampleScene sample{SampleLevel::Easy,
                       "belt_clear",
                       "belt-1937",
                       "hewlaby",
                       "1938",
                       {{{"J. HEWLABY & CO 1938"}}},
                       {}};
    SceneOptions& scene = sample.scene;
    scene.seed = 3801;
    scene.piece = {.material = Material::Webbing,
                   .colour_bgr = {98, 142, 160},
                   .thread_px = 5.2,
                   .width_px = 400,
                   .turn_deg = -6,
                   .offset_px = -14,
                   .table = Table::Wood};
    scene.details = {.waviness = 0.6,
                     .fuzz = 0.5,
                     .eyelets_px = {{-560, -70}, {-560, 62}, {590, -74}, {590, 60}},
                     .creases = {{.along_px = -440, .turn_deg = 86, .height_px = 4}}};
    scene.stamps = {
        {.text = {.lines = {"J. HEWLABY & CO 1938"}, .face = Face::SansBold, .letter_px = 37},
         .ink =
             {.colour_bgr = looks::black_ink, .fading = 0.12, .soaking = 0.45, .patchiness = 0.16},
         .along_px = 10,
         .across_px = -6,
         .turn_deg = 1.2}};
    scene.light = {.from_deg = 228, .elevation_deg = 42, .ambient = 0.4, .unevenness = 0.32};
    scene.pitch_deg = 7;
    scene.camera = {
        .exposure = 1.12, .cast_bgr = {0.94F, 1, 1.05F}, .noise = 0.35, .defocus_px = 1.2};
    return sample;
}

SampleScene twiceStampedPouch()
{
    SampleScene sample{SampleLevel::Easy,
                       "pouch_two_stamps",
                       "lamp-pouch",
                       "mestrelby",
                       "1944",
                       {{{"MESTRELBY & ESKWITH", "1944"}}, {{"S.H. 31"}}},
                       {}};
    SceneOptions& scene = sample.scene;
    scene.seed = 4406;
    scene.piece = {.material = Material::Twill,
                   .colour_bgr = looks::grey_blue,
                   .thread_px = 4.4,
                   .unevenness = 0.6,
                   .width_px = 760,
                   .turn_deg = 4,
                   .table = Table::Wood};
    scene.details = {.waviness = 0.8,
                     .fuzz = 0.45,
                     .edge_stitching = true,
                     .creases = {{.along_px = -500, .turn_deg = 95, .height_px = 5}}};
    scene.stamps = {{.text = {.lines = {"MESTRELBY & ESKWITH", "1944"},
                              .face = Face::Narrow,
                              .letter_px = 38,
                              .letter_spacing = 0.12},
                     .ink = looks::worn(looks::black_ink, 0.2, 0.5, 0.3),
                     .along_px = -110,
                     .across_px = -120,
                     .turn_deg = -3},
                    {.text = {.lines = {"S.H. 31"},
                              .face = Face::SansBold,
                              .frame = Frame::Box,
                              .letter_px = 34},
                     .ink = {.colour_bgr = looks::violet_ink,
                             .fading = 0.2,
                             .soaking = 0.5,
                             .patchiness = 0.25},
                     .along_px = 330,
                     .across_px = 170,
                     .turn_deg = 17}};
    scene.light = {.from_deg = 320, .elevation_deg = 36, .ambient = 0.4, .unevenness = 0.34};
    scene.pitch_deg = 10;
    scene.yaw_deg = 6;
    scene.camera = {.exposure = 1.15, .cast_bgr = {1, 1, 1.02F}, .noise = 0.4, .defocus_px = 1.5};
    return sample;
}

SampleScene satchelFlap()
{
    SampleScene sample{SampleLevel::Easy,
                       "satchel_flap",
                       "line-satchel",
                       "vallowmere",
                       "1934",
                       {{{"VALLOWMERE CANVAS WORKS", "1934"}}},
                       {}};
    SceneOptions& scene = sample.scene;
    scene.size_px = {1320, 990};
    scene.seed = 3407;
    scene.piece = {.material = Material::Canvas,
                   .colour_bgr = looks::sand,
                   .thread_px = 4.2,
                   .unevenness = 0.75,
                   .width_px = 0,
                   .turn_deg = 3};
    scene.details = {
        .waviness = 0.9,
        .fuzz = 0.5,
        .hem_px = 590.0,
        .eyelets_px = {{520, -330}},
        .creases =
            {{.along_px = -300, .across_px = 330, .turn_deg = 8, .height_px = 7, .length_px = 900}},
        .stains = {{.along_px = -480, .across_px = -330, .radius_px = 150, .strength = 0.3}}};
    scene.stamps = {{.text = {.lines = {"VALLOWMERE CANVAS WORKS", "1934"},
                              .face = Face::Serif,
                              .letter_px = 36,
                              .letter_spacing = 0.12},
                     .ink = looks::worn(looks::blue_black_ink, 0.05, 0.8, 0.2),
                     .along_px = -30,
                     .across_px = 20,
                     .turn_deg = 2,
                     .contrast = 0.40}};
    scene.light = {.from_deg = 200,
                   .elevation_deg = 34,
                   .ambient = 0.42,
                   .unevenness = 0.4,
                   .shadows = {looks::bystander(760, 82)}};
    scene.pitch_deg = 12;
    scene.camera = looks::nearCamera(1.0, 1.8);
    scene.camera.cast_bgr = {0.93F, 1, 1.05F};
    return sample;
}

SampleScene strapWithSize()
{
    SampleScene sample{SampleLevel::Easy,
                       "strap_size",
                       "shoulder-strap",
                       "bramsoe",
                       "1941",
                       {{{"BRAMSOE WEBBING CO 1941", "38"}}},
                       {}};
    SceneOptions& scene = sample.scene;
    scene.size_px = {1500, 1000};
    scene.seed = 4108;
    scene.piece = {.material = Material::Webbing,
                   .colour_bgr = looks::drab,
                   .thread_px = 5.4,
                   .unevenness = 0.7,
                   .width_px = 300,
                   .turn_deg = 5,
                   .offset_px = 30,
                   .table = Table::Board};
    scene.details = {.waviness = 0.9,
                     .fuzz = 0.7,
                     .creases = {{.along_px = 560, .turn_deg = 84, .height_px = 8}}};
    scene.stamps = {{.text = {.lines = {"BRAMSOE WEBBING CO 1941", "38"},
                              .face = Face::Narrow,
                              .letter_px = 38,
                              .letter_spacing = 0.14},
                     .ink = looks::worn(looks::black_ink, 0.05, 0.6, 0.22),
                     .along_px = -40,
                     .across_px = 32,
                     .turn_deg = -1,
                     .contrast = 0.38}};
    scene.light = {.from_deg = 250, .elevation_deg = 45, .ambient = 0.5, .unevenness = 0.35};
    scene.pitch_deg = 8;
    scene.yaw_deg = 5;
    scene.camera = looks::nearCamera(1.15);
    return sample;
}

SampleScene plainFrog()
{
    SampleScene sample{SampleLevel::Easy,
                       "frog_plain",
                       "knife-frog",
                       "wexloe",
                       "1934",
                       {{{"WEXLOE SADDLERY CO", "1934"}}},
                       {}};
    SceneOptions& scene = sample.scene;
    scene.seed = 3409;
    scene.piece = {.material = Material::Leather,
                   .colour_bgr = looks::tan_leather,
                   .thread_px = 4.2,
                   .unevenness = 0.7,
                   .width_px = 470,
                   .turn_deg = -4,
                   .table = Table::Cloth};
    scene.details = {.waviness = 0.6, .edge_stitching = true, .eyelets_px = {{-590, 0}}};
    scene.stamps = {{.text = {.lines = {"WEXLOE SADDLERY CO", "1934"},
                              .face = Face::SerifBold,
                              .letter_px = 37},
                     .ink = looks::worn({28, 24, 26}, 0.05, 0.8, 0.15),
                     .along_px = 40,
                     .turn_deg = 1,
                     .contrast = 0.42,
                     .depth_px = 0.7}};
    scene.light = {.from_deg = 225, .elevation_deg = 52, .ambient = 0.55, .unevenness = 0.3};
    scene.pitch_deg = 9;
    scene.camera = looks::nearCamera(1.2);
    return sample;
}

SampleScene boxedRoll()
{
    SampleScene sample{SampleLevel::Easy,
                       "roll_boxed",
                       "signal-roll",
                       "saltmere-works",
                       "1947",
                       {{{"S.H.W. 1947"}}},
                       {}};
    SceneOptions& scene = sample.scene;
    scene.size_px = {1200, 900};
    scene.seed = 4710;
    scene.piece = {.material = Material::Twill,
                   .colour_bgr = looks::undyed,
                   .thread_px = 4.0,
                   .unevenness = 0.6,
                   .width_px = 0,
                   .turn_deg = -7};
    scene.details = {.waviness = 1,
                     .fuzz = 0.4,
                     .creases = {{.along_px = -330, .turn_deg = 95, .height_px = 8},
                                 {.along_px = 420, .turn_deg = 88, .height_px = 6}}};
    scene.stamps = {{.text = {.lines = {"S.H.W. 1947"},
                              .face = Face::Sans,
                              .frame = Frame::Box,
                              .letter_px = 44,
                              .letter_spacing = 0.12},
                     .ink = looks::worn(looks::violet_ink, 0.1, 0.8, 0.25),
                     .along_px = 60,
                     .across_px = -20,
                     .turn_deg = -3,
                     .contrast = 0.44}};
    scene.light = {.from_deg = 330, .elevation_deg = 32, .ambient = 0.45, .unevenness = 0.35};
    scene.yaw_deg = -8;
    scene.camera = looks::nearCamera(0.85);
    scene.camera.cast_bgr = {1.04F, 1, 0.97F};
    return sample;
}

SampleScene plainCarrier()
{
    SampleScene sample{SampleLevel::Easy,
                       "carrier_plain",
                       "flask-carrier",
                       "crossenvale",
                       "1931",
                       {{{"C.O. & L.", "1931"}}},
                       {}};
    SceneOptions& scene = sample.scene;
    scene.seed = 3111;
    scene.piece = {.material = Material::Canvas,
                   .colour_bgr = looks::olive,
                   .thread_px = 5.6,
                   .unevenness = 0.8,
                   .width_px = 800,
                   .turn_deg = 2,
                   .offset_px = -40,
                   .table = Table::Wood};
    scene.details = {.waviness = 0.8,
                     .fuzz = 0.6,
                     .edge_stitching = true,
                     .creases = {{.along_px = 400,
                                  .across_px = -200,
                                  .turn_deg = 60,
                                  .height_px = 7,
                                  .length_px = 620}}};
    scene.stamps = {{.text = {.lines = {"C.O. & L.", "1931"},
                              .face = Face::SansBold,
                              .letter_px = 46,
                              .line_spacing = 1.5},
                     .ink = looks::worn(looks::black_ink, 0.1, 0.55, 0.2),
                     .along_px = -80,
                     .across_px = 60,
                     .turn_deg = -6,
                     .contrast = 0.40}};
    scene.light = {.from_deg = 190, .elevation_deg = 40, .ambient = 0.42, .unevenness = 0.35};
    scene.pitch_deg = 11;
    scene.yaw_deg = 6;
    scene.camera = looks::nearCamera(1.25, 1.8);
    return sample;
}

SampleScene facedBelt()
{
    SampleScene sample{SampleLevel::Easy,
                       "belt_faced",
                       "belt-1921",
                       "harskell-sons",
                       "1936",
                       {{{"HARSKELL & SONS LTD", "1936"}}},
                       {}};
    SceneOptions& scene = sample.scene;
    scene.size_px = {1400, 940};
    scene.seed = 3612;
    scene.piece = {.material = Material::Canvas,
                   .colour_bgr = looks::khaki,
                   .thread_px = 4.8,
                   .unevenness = 0.7,
                   .width_px = 360,
                   .turn_deg = 8,
                   .table = Table::Cloth};
    scene.details = {
        .waviness = 0.7,
        .fuzz = 0.5,
        .edge_stitching = true,
        .stains = {{.along_px = 480, .across_px = 60, .radius_px = 120, .strength = 0.35}}};
    scene.stamps = {{.text = {.lines = {"HARSKELL & SONS LTD", "1936"},
                              .face = Face::Condensed,
                              .letter_px = 36},
                     .ink = looks::worn(looks::black_ink, 0.1, 0.6, 0.22),
                     .along_px = -60,
                     .turn_deg = 2,
                     .contrast = 0.38}};
    scene.light = {.from_deg = 300, .elevation_deg = 36, .ambient = 0.45, .unevenness = 0.4};
    scene.pitch_deg = 6;
    scene.camera = looks::nearCamera(1.15);
    return sample;
}

}  // namespace

std::vector<SampleScene> easySamples()
{
    return {clearBelt(), twiceStampedPouch(), satchelFlap(),  strapWithSize(),
            plainFrog(), boxedRoll(),         plainCarrier(), facedBelt()};
}
