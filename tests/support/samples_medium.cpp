#include "tests/support/sample_looks.h"
#include "tests/support/sample_scenes.h"

namespace {

using namespace synthetic;

SampleScene fadedStrap()
{
    SampleScene sample{SampleLevel::Medium,
                       "strap_faded",
                       "shoulder-strap",
                       "rellwick",
                       "1943",
                       {{{"RELLWICK WEBBING CO", "1943"}}},
                       {}};
    SceneOptions& scene = sample.scene;
    scene.seed = 4302;
    scene.piece = {.material = Material::Webbing,
                   .colour_bgr = {104, 136, 146},
                   .thread_px = 4.6,
                   .unevenness = 0.7,
                   .width_px = 330,
                   .turn_deg = 11,
                   .table = Table::Cloth};
    scene.details = {
        .waviness = 0.9,
        .fuzz = 0.7,
        .creases = {{.along_px = 395, .turn_deg = 97, .height_px = 6}},
        .stains = {{.along_px = -520, .across_px = 50, .radius_px = 95, .strength = 0.35}}};
    scene.stamps = {{.text = {.lines = {"RELLWICK WEBBING CO", "1943"},
                              .face = Face::Condensed,
                              .letter_px = 38},
                     .ink = looks::worn(looks::black_ink, 0.25, 0.55, 0.12),
                     .along_px = -20,
                     .turn_deg = -2,
                     .contrast = 0.27}};
    scene.light = {.from_deg = 300, .elevation_deg = 33, .ambient = 0.42, .unevenness = 0.4};
    scene.yaw_deg = 8;
    scene.camera = {.exposure = 1.2, .cast_bgr = {1.02F, 1, 1}, .noise = 0.45, .defocus_px = 1.6};
    return sample;
}

SampleScene angledSatchel()
{
    SampleScene sample{SampleLevel::Medium,
                       "satchel_angled",
                       "line-satchel",
                       "norrowby",
                       "1937-04",
                       {{{"NORROWBY & STAUNEL", "THRENNEL", "4/37"}}},
                       {}};
    SceneOptions& scene = sample.scene;
    scene.seed = 3703;
    scene.piece = {.material = Material::Canvas,
                   .colour_bgr = looks::olive,
                   .thread_px = 4.4,
                   .unevenness = 0.7,
                   .width_px = 0,
                   .turn_deg = 23};
    scene.details = {
        .waviness = 0.9,
        .fuzz = 0.5,
        .hem_px = 560.0,
        .creases = {{.along_px = -440, .turn_deg = 66, .height_px = 5},
                    {.along_px = 60, .across_px = 330, .turn_deg = 12, .height_px = 4}},
        .stains = {{.along_px = 330, .across_px = -300, .radius_px = 150, .strength = 0.3}}};
    scene.stamps = {{.text = {.lines = {"NORROWBY & STAUNEL", "THRENNEL", "4/37"},
                              .face = Face::SerifBold,
                              .letter_px = 34,
                              .line_spacing = 1.8},
                     .ink = looks::worn(looks::blue_black_ink, 0.1, 0.6, 0.3),
                     .along_px = 0,
                     .across_px = -10,
                     .turn_deg = 3,
                     .contrast = 0.30}};
    scene.light = {.from_deg = 200, .elevation_deg = 30, .ambient = 0.38, .unevenness = 0.42};
    scene.pitch_deg = 16;
    scene.yaw_deg = -7;
    scene.camera = {
        .exposure = 1.35, .cast_bgr = {0.92F, 1, 1.06F}, .noise = 0.4, .defocus_px = 2.2};
    return sample;
}

SampleScene smudgedFrog()
{
    SampleScene sample{SampleLevel::Medium,
                       "frog_smudged",
                       "knife-frog",
                       "thurrowby",
                       "1932",
                       {{{"T.H. CO", "UMBERWICK 1932"}}},
                       {}};
    SceneOptions& scene = sample.scene;
    scene.seed = 3204;
    scene.piece = {.material = Material::Leather,
                   .colour_bgr = looks::tan_leather,
                   .thread_px = 4.6,
                   .unevenness = 0.5,
                   .width_px = 560,
                   .turn_deg = -9,
                   .table = Table::Board};
    scene.details = {
        .waviness = 0.7,
        .edge_stitching = true,
        .creases = {{.along_px = 470, .turn_deg = 80, .height_px = 3}},
        .stains = {{.along_px = 380, .across_px = -120, .radius_px = 70, .strength = 0.3}}};
    scene.stamps = {{.text = {.lines = {"T.H. CO", "UMBERWICK 1932"},
                              .face = Face::Sans,
                              .letter_px = 40,
                              .letter_spacing = 0.14},
                     .ink = {.colour_bgr = looks::black_ink,
                             .fading = 0.05,
                             .soaking = 0.7,
                             .patchiness = 0.35,
                             .smudge_px = 11},
                     .along_px = -30,
                     .across_px = 15,
                     .turn_deg = 178,
                     .contrast = 0.30}};
    scene.light = {.from_deg = 245, .elevation_deg = 48, .ambient = 0.45, .unevenness = 0.35};
    scene.pitch_deg = -6;
    scene.camera = {.exposure = 1.1, .noise = 0.4, .defocus_px = 1.4};
    return sample;
}

SampleScene hemmedCarrier()
{
    SampleScene sample{SampleLevel::Medium,
                       "carrier_hem",
                       "flask-carrier",
                       "garravane",
                       "1942",
                       {{{"GARRAVANE OSKEL[- - -]", "1942"}}},
                       {}};
    SceneOptions& scene = sample.scene;
    scene.seed = 4205;
    scene.piece = {.material = Material::Canvas,
                   .colour_bgr = looks::sand,
                   .thread_px = 4.8,
                   .unevenness = 0.65,
                   .width_px = 0,
                   .turn_deg = -4};
    scene.details = {
        .waviness = 0.8,
        .fuzz = 0.55,
        .hem_px = 157.0,
        .creases = {{.along_px = -520, .turn_deg = 100, .height_px = 5}},
        .stains = {{.along_px = -330, .across_px = 190, .radius_px = 130, .strength = 0.4},
                   {.along_px = -100, .across_px = -330, .radius_px = 60, .strength = 0.25}}};
    scene.stamps = {{.text = {.lines = {"GARRAVANE OSKELL & LYTHELL", "1942"},
                              .face = Face::SansBold,
                              .letter_px = 33},
                     .ink = looks::worn(looks::violet_ink, 0.1, 0.55, 0.3),
                     .along_px = 60,
                     .across_px = 0,
                     .turn_deg = -3,
                     .contrast = 0.30}};
    scene.light = {.from_deg = 205, .elevation_deg = 32, .ambient = 0.38, .unevenness = 0.4};
    scene.pitch_deg = 9;
    scene.camera = {
        .exposure = 1.05, .cast_bgr = {0.95F, 1, 1.04F}, .noise = 0.4, .defocus_px = 1.6};
    return sample;
}

SampleScene beltWithFitting()
{
    SampleScene sample{SampleLevel::Medium,
                       "belt_fitting",
                       "belt-1937",
                       "hewlaby",
                       "1940",
                       {{{"J.H. & CO", "1940"}}, {{"Z.B. CO", "1939"}, "fitting", "zennickby"}},
                       {}};
    SceneOptions& scene = sample.scene;
    scene.seed = 4013;
    scene.piece = {.material = Material::Webbing,
                   .colour_bgr = looks::khaki,
                   .thread_px = 5.0,
                   .unevenness = 0.7,
                   .width_px = 380,
                   .turn_deg = -12,
                   .table = Table::Wood};
    scene.details = {.waviness = 0.4,
                     .fuzz = 0.2,
                     .plates = {{.along_px = 330, .size_px = {310, 300}, .wear = 0.5}}};
    scene.stamps = {
        {.text = {.lines = {"J.H. & CO", "1940"}, .face = Face::SansBold, .letter_px = 34},
         .ink = looks::worn(looks::black_ink, 0.15, 0.5, 0.3),
         .along_px = -230,
         .across_px = 10,
         .turn_deg = 3,
         .contrast = 0.32},
        {.text =
             {.lines = {"Z.B. CO", "1939"}, .face = Face::Sans, .letter_px = 30, .looseness = 0.5},
         .ink = looks::worn({26, 34, 38}, 0.2, 0.9, 0.2),
         .along_px = 330,
         .turn_deg = -1,
         .depth_px = 2.2}};
    scene.light = {.from_deg = 235, .elevation_deg = 44, .ambient = 0.5, .unevenness = 0.35};
    scene.pitch_deg = 9;
    scene.camera = looks::nearCamera(1.1);
    return sample;
}

SampleScene archedPouch()
{
    SampleScene sample{SampleLevel::Medium,
                       "pouch_arched",
                       "lamp-pouch",
                       "ebberquist",
                       "1938",
                       {{{"EBBERQUIST & SONS", "1938"}}},
                       {}};
    SceneOptions& scene = sample.scene;
    scene.size_px = {1200, 1000};
    scene.seed = 3814;
    scene.piece = {.material = Material::Canvas,
                   .colour_bgr = looks::drab,
                   .thread_px = 4.4,
                   .unevenness = 0.75,
                   .width_px = 0,
                   .turn_deg = -5};
    scene.details = {
        .waviness = 0.8,
        .fuzz = 0.5,
        .eyelets_px = {{-430, 330}},
        .creases = {
            {.along_px = 300, .across_px = 280, .turn_deg = 30, .height_px = 8, .length_px = 560}}};
    scene.stamps = {{.text = {.lines = {"EBBERQUIST & SONS", "1938"},
                              .face = Face::SansBold,
                              .letter_px = 34,
                              .letter_spacing = 0.14,
                              .line_spacing = 1.1,
                              .arch_deg = 95},
                     .ink = looks::worn(looks::blue_black_ink, 0.15, 0.7, 0.3),
                     .along_px = 10,
                     .across_px = -10,
                     .turn_deg = 4,
                     .contrast = 0.33}};
    scene.light = {.from_deg = 210, .elevation_deg = 35, .ambient = 0.42, .unevenness = 0.4};
    scene.pitch_deg = 8;
    scene.yaw_deg = -6;
    scene.camera = looks::nearCamera(1.2, 1.8);
    return sample;
}

SampleScene codedRoll()
{
    SampleScene sample{SampleLevel::Medium,
                       "roll_coded",
                       "signal-roll",
                       "kestervane",
                       "1942",
                       {{{"K7", "YB"}}},
                       {}};
    SceneOptions& scene = sample.scene;
    scene.size_px = {1280, 960};
    scene.seed = 4215;
    scene.piece = {.material = Material::Twill,
                   .colour_bgr = looks::olive,
                   .thread_px = 4.6,
                   .unevenness = 0.7,
                   .width_px = 620,
                   .turn_deg = 14,
                   .table = Table::Board};
    scene.details = {.waviness = 0.9, .fuzz = 0.5, .edge_stitching = true};
    scene.stamps = {{.text = {.lines = {"K7", "YB"},
                              .face = Face::SansBold,
                              .frame = Frame::Diamond,
                              .letter_px = 36,
                              .line_spacing = 1.35},
                     .ink = looks::worn(looks::black_ink, 0.15, 0.55, 0.3),
                     .along_px = -40,
                     .across_px = 20,
                     .turn_deg = -5,
                     .contrast = 0.30}};
    scene.light = {.from_deg = 285,
                   .elevation_deg = 38,
                   .ambient = 0.42,
                   .unevenness = 0.4,
                   .shadows = {looks::bystander(-700, 100)}};
    scene.pitch_deg = -8;
    scene.camera = looks::nearCamera(1.25);
    return sample;
}

SampleScene inspectedStrap()
{
    SampleScene sample{SampleLevel::Medium,
                       "strap_inspected",
                       "shoulder-strap",
                       "dunlawick",
                       "1943",
                       {{{"D.W.C. {arrow}", "1943"}}, {{"S.H. 12"}}},
                       {}};
    SceneOptions& scene = sample.scene;
    scene.size_px = {1500, 1000};
    scene.seed = 4316;
    scene.piece = {.material = Material::Webbing,
                   .colour_bgr = looks::sand,
                   .thread_px = 4.8,
                   .unevenness = 0.75,
                   .width_px = 310,
                   .turn_deg = -17,
                   .table = Table::Wood};
    scene.details = {
        .waviness = 1,
        .fuzz = 0.7,
        .creases = {{.along_px = 60, .turn_deg = 84, .height_px = 8}},
        .stains = {{.along_px = 420, .across_px = -70, .radius_px = 120, .strength = 0.35}}};
    scene.stamps = {
        {.text = {.lines = {"D.W.C. \u2191", "1943"},
                  .face = Face::SansBold,
                  .letter_px = 30,
                  .letter_spacing = 0.16},
         .ink =
             {.colour_bgr = looks::black_ink, .fading = 0.15, .soaking = 0.55, .patchiness = 0.35},
         .along_px = -250,
         .across_px = 8,
         .turn_deg = 2,
         .contrast = 0.28},
        {.text = {.lines = {"S.H. 12"}, .face = Face::Sans, .frame = Frame::Box, .letter_px = 28},
         .ink =
             {.colour_bgr = looks::violet_ink, .fading = 0.15, .soaking = 0.7, .patchiness = 0.25},
         .along_px = 300,
         .across_px = 30,
         .turn_deg = -8,
         .contrast = 0.30}};
    scene.light = {.from_deg = 315, .elevation_deg = 34, .ambient = 0.42, .unevenness = 0.4};
    scene.yaw_deg = 9;
    scene.camera = looks::nearCamera(0.95);
    return sample;
}

}  // namespace

std::vector<SampleScene> mediumSamples()
{
    return {fadedStrap(),      angledSatchel(), smudgedFrog(), hemmedCarrier(),
            beltWithFitting(), archedPouch(),   codedRoll(),   inspectedStrap()};
}
