#include "tests/support/sample_looks.h"
#include "tests/support/sample_scenes.h"

namespace {

using namespace synthetic;

SampleScene beltWithOwner()
{
    SampleScene sample{SampleLevel::Hard,
                       "belt_owner",
                       "belt-1937",
                       "hesperlow",
                       "1939",
                       {{{"HESPERLOW & PRUDDERN", "1939"}}, {{"4071"}, "body", ""}},
                       {}};
    SceneOptions& scene = sample.scene;
    scene.seed = 3917;
    scene.piece = {.material = Material::Webbing,
                   .colour_bgr = looks::khaki,
                   .thread_px = 4.6,
                   .unevenness = 0.75,
                   .width_px = 360,
                   .turn_deg = 7,
                   .table = Table::Cloth};
    scene.details = {.waviness = 0.8,
                     .fuzz = 0.7,
                     .eyelets_px = {{-560, -60}, {-560, 60}},
                     .creases = {{.along_px = -350, .turn_deg = 93, .height_px = 8}}};
    scene.stamps = {
        {.text = {.lines = {"HESPERLOW & PRUDDERN", "1939"},
                  .face = Face::Narrow,
                  .letter_px = 29,
                  .letter_spacing = 0.14},
         .ink = looks::worn(looks::black_ink, 0.2, 0.6, 0.3),
         .along_px = -20,
         .across_px = -20,
         .turn_deg = -2,
         .contrast = 0.22},
        {.text = {.lines = {"4071"}, .face = Face::Stencil, .letter_px = 58, .looseness = 0.8},
         .ink = looks::worn({34, 36, 86}, 0.35, 0.4, 0.45),
         .along_px = 150,
         .across_px = -6,
         .turn_deg = 11}};
    scene.light = {.from_deg = 240, .elevation_deg = 36, .ambient = 0.45, .unevenness = 0.4};
    scene.pitch_deg = 9;
    scene.camera = looks::nearCamera(1.2);
    return sample;
}

SampleScene rubbedCarrier()
{
    SampleScene sample{SampleLevel::Hard,
                       "carrier_rubbed",
                       "flask-carrier",
                       "garravane",
                       "1946",
                       {{{"G.?O?. &? L.", "1946"}}},
                       {}};
    SceneOptions& scene = sample.scene;
    scene.seed = 4618;
    scene.piece = {.material = Material::Canvas,
                   .colour_bgr = looks::drab,
                   .thread_px = 5.0,
                   .unevenness = 0.85,
                   .width_px = 0,
                   .turn_deg = 18};
    scene.details = {
        .waviness = 1,
        .fuzz = 0.8,
        .creases =
            {{.along_px = 60, .across_px = 20, .turn_deg = 70, .height_px = 7, .length_px = 700}},
        .stains = {{.along_px = 200, .across_px = -160, .radius_px = 170, .strength = 0.35}}};
    scene.stamps = {
        {.text = {.lines = {"G.O. & L.", "1946"}, .face = Face::SansBold, .letter_px = 30},
         .ink = {.colour_bgr = looks::black_ink,
                 .fading = 0.2,
                 .soaking = 0.6,
                 .patchiness = 0.3,
                 .speckle = 0.3,
                 .rubbed = 0.22},
         .turn_deg = -4,
         .contrast = 0.22}};
    scene.light = {.from_deg = 205, .elevation_deg = 30, .ambient = 0.4, .unevenness = 0.45};
    scene.pitch_deg = 14;
    scene.camera = looks::nearCamera(1.25, 2.2);
    return sample;
}

SampleScene stainedPouch()
{
    SampleScene sample{SampleLevel::Hard,
                       "pouch_stained",
                       "lamp-pouch",
                       "orlanby",
                       "1938",
                       {{{"ORLANBY & DURROWANCE", "1938"}}},
                       {}};
    SceneOptions& scene = sample.scene;
    scene.size_px = {1300, 1000};
    scene.seed = 3819;
    scene.piece = {.material = Material::Canvas,
                   .colour_bgr = looks::sand,
                   .thread_px = 4.2,
                   .unevenness = 0.75,
                   .width_px = 0,
                   .turn_deg = -9};
    scene.details = {
        .waviness = 0.9,
        .fuzz = 0.6,
        .creases = {{.along_px = -120, .turn_deg = 78, .height_px = 9, .length_px = 800}},
        .stains = {{.along_px = 140, .across_px = 20, .radius_px = 190, .strength = 0.5},
                   {.along_px = -420, .across_px = 260, .radius_px = 110, .strength = 0.3}}};
    scene.stamps = {{.text = {.lines = {"ORLANBY & DURROWANCE", "1938"},
                              .face = Face::Condensed,
                              .letter_px = 28},
                     .ink = looks::worn(looks::blue_black_ink, 0.2, 0.7, 0.35),
                     .along_px = -10,
                     .turn_deg = 6,
                     .contrast = 0.22}};
    scene.light = {.from_deg = 320, .elevation_deg = 34, .ambient = 0.42, .unevenness = 0.45};
    scene.yaw_deg = 10;
    scene.camera = looks::nearCamera(1.0, 1.8);
    return sample;
}

SampleScene strapTwicePressed()
{
    SampleScene sample{SampleLevel::Hard,
                       "strap_double",
                       "shoulder-strap",
                       "pellarby-r",
                       "1944",
                       {{{"R. PELLARBY & CO", "1944"}}},
                       {}};
    SceneOptions& scene = sample.scene;
    scene.size_px = {1500, 1000};
    scene.seed = 4420;
    scene.piece = {.material = Material::Webbing,
                   .colour_bgr = looks::drab,
                   .thread_px = 4.4,
                   .unevenness = 0.75,
                   .width_px = 280,
                   .turn_deg = -28,
                   .table = Table::Wood};
    scene.details = {.waviness = 1, .fuzz = 0.8};
    scene.stamps = {
        {.text = {.lines = {"R. PELLARBY & CO", "1944"}, .face = Face::SansBold, .letter_px = 29},
         .ink = {.colour_bgr = looks::black_ink,
                 .fading = 0.2,
                 .soaking = 0.6,
                 .patchiness = 0.35,
                 .second_px = 7},
         .along_px = 30,
         .across_px = 6,
         .turn_deg = 2,
         .contrast = 0.23}};
    scene.light = {.from_deg = 260,
                   .elevation_deg = 36,
                   .ambient = 0.45,
                   .unevenness = 0.4,
                   .shadows = {looks::bystander(-620, 70)}};
    scene.pitch_deg = 8;
    scene.camera = looks::nearCamera(1.2, 1.8);
    return sample;
}

SampleScene satchelOfNobody()
{
    SampleScene sample{SampleLevel::Hard,
                       "satchel_unknown",
                       "line-satchel",
                       "",
                       "1935",
                       {{{"DRELLOWAY & TUNNISK", "SKELLHOLT", "1935"}}},
                       {}};
    SceneOptions& scene = sample.scene;
    scene.seed = 3521;
    scene.piece = {.material = Material::Canvas,
                   .colour_bgr = looks::olive,
                   .thread_px = 4.6,
                   .unevenness = 0.75,
                   .width_px = 0,
                   .turn_deg = 11};
    scene.details = {.waviness = 0.9,
                     .fuzz = 0.6,
                     .hem_px = -520.0 + 1150,
                     .creases = {{.along_px = -420, .turn_deg = 75, .height_px = 9}}};
    scene.stamps = {{.text = {.lines = {"DRELLOWAY & TUNNISK", "SKELLHOLT", "1935"},
                              .face = Face::Serif,
                              .letter_px = 29,
                              .letter_spacing = 0.12,
                              .line_spacing = 1.75},
                     .ink = looks::worn(looks::black_ink, 0.15, 0.75, 0.3),
                     .along_px = -20,
                     .across_px = -20,
                     .turn_deg = -3,
                     .contrast = 0.21}};
    scene.light = {.from_deg = 215, .elevation_deg = 36, .ambient = 0.42, .unevenness = 0.4};
    scene.pitch_deg = 10;
    scene.yaw_deg = 7;
    scene.camera = looks::nearCamera(1.3, 1.8);
    return sample;
}

SampleScene rollInLowLight()
{
    SampleScene sample{SampleLevel::Hard,
                       "roll_low_light",
                       "signal-roll",
                       "ulvergrane",
                       "1927",
                       {{{"U. & D.", "1927"}}},
                       {}};
    SceneOptions& scene = sample.scene;
    scene.size_px = {1280, 960};
    scene.seed = 2722;
    scene.piece = {.material = Material::Canvas,
                   .colour_bgr = looks::undyed,
                   .thread_px = 5.0,
                   .unevenness = 0.85,
                   .width_px = 560,
                   .turn_deg = 6,
                   .table = Table::Cloth};
    scene.details = {.waviness = 0.9,
                     .fuzz = 0.8,
                     .edge_stitching = true,
                     .creases = {{.along_px = 330, .turn_deg = 95, .height_px = 7}}};
    scene.stamps = {
        {.text = {.lines = {"U. & D.", "1927"}, .face = Face::SerifBold, .letter_px = 29},
         .ink =
             {.colour_bgr = looks::violet_ink, .fading = 0.2, .soaking = 0.7, .patchiness = 0.35},
         .along_px = -60,
         .across_px = 20,
         .turn_deg = 184,
         .contrast = 0.20}};
    scene.light = {.from_deg = 195, .elevation_deg = 16, .ambient = 0.3, .unevenness = 0.5};
    scene.camera = looks::nearCamera(0.8);
    scene.camera.noise = 0.6;
    return sample;
}

SampleScene darkFrog()
{
    SampleScene sample{SampleLevel::Hard,
                       "frog_dark",
                       "knife-frog",
                       "quillsby",
                       "1937",
                       {{{"E. QUILLSBY LTD", "1937"}}},
                       {}};
    SceneOptions& scene = sample.scene;
    scene.seed = 3723;
    scene.piece = {.material = Material::Leather,
                   .colour_bgr = looks::chestnut,
                   .thread_px = 4.4,
                   .unevenness = 0.8,
                   .width_px = 520,
                   .turn_deg = -20,
                   .table = Table::Board};
    scene.details = {.waviness = 0.8,
                     .edge_stitching = true,
                     .creases = {{.along_px = 250, .turn_deg = 70, .height_px = 7}}};
    scene.stamps = {
        {.text = {.lines = {"E. QUILLSBY LTD", "1937"}, .face = Face::SansBold, .letter_px = 30},
         .ink = {.colour_bgr = {24, 22, 22},
                 .fading = 0.1,
                 .soaking = 0.85,
                 .patchiness = 0.25,
                 .smudge_px = 4},
         .along_px = -60,
         .across_px = 20,
         .turn_deg = 3,
         .contrast = 0.20}};
    scene.light = {.from_deg = 230, .elevation_deg = 50, .ambient = 0.55, .unevenness = 0.4};
    scene.pitch_deg = 8;
    scene.camera = looks::nearCamera(1.5, 1.8);
    return sample;
}

SampleScene shadowedBelt()
{
    SampleScene sample{
        SampleLevel::Hard, "belt_shadow", "belt-1937", "rellwick", "1951", {{{"R.W.C. 1951"}}}, {}};
    SceneOptions& scene = sample.scene;
    scene.size_px = {1280, 960};
    scene.seed = 5124;
    scene.piece = {.material = Material::Webbing,
                   .colour_bgr = looks::grey_blue,
                   .thread_px = 4.8,
                   .unevenness = 0.75,
                   .width_px = 320,
                   .turn_deg = 33,
                   .table = Table::Wood};
    scene.details = {.waviness = 0.9, .fuzz = 0.7};
    scene.stamps = {{.text = {.lines = {"R.W.C. 1951"}, .face = Face::Mono, .letter_px = 28},
                     .ink = {.colour_bgr = looks::black_ink,
                             .fading = 0.15,
                             .soaking = 0.7,
                             .patchiness = 0.3,
                             .speckle = 0.25},
                     .along_px = -20,
                     .across_px = 10,
                     .turn_deg = -2,
                     .contrast = 0.20}};
    scene.light = {
        .from_deg = 300,
        .elevation_deg = 40,
        .ambient = 0.42,
        .unevenness = 0.4,
        .shadows = {
            {.x_px = 60, .turn_deg = 75, .width_px = 150, .softness_px = 30, .depth = 0.45}}};
    scene.camera = looks::nearCamera(1.15);
    scene.camera.blur_px = 1.2;
    scene.camera.resolution = 0.75;
    return sample;
}

}  // namespace

std::vector<SampleScene> hardSamples()
{
    return {beltWithOwner(),   rubbedCarrier(),  stainedPouch(), strapTwicePressed(),
            satchelOfNobody(), rollInLowLight(), darkFrog(),     shadowedBelt()};
}
