#include "tests/support/sample_scenes.h"

namespace {

using namespace synthetic;

const cv::Vec3b kBlackInk(38, 32, 32), kBlueBlackInk(64, 38, 36), kVioletInk(88, 40, 62);

SampleScene clearBelt()
{
    SampleScene sample{
        "belt_clear", "belt-1937", "hewlaby", "1938", {{"J. HEWLABY & CO 1938"}}, {}};
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
         .ink = {.colour_bgr = kBlackInk, .fading = 0.12, .soaking = 0.45, .patchiness = 0.16},
         .along_px = 10,
         .across_px = -6,
         .turn_deg = 1.2}};
    scene.light = {.from_deg = 228, .elevation_deg = 42, .ambient = 0.4, .unevenness = 0.32};
    scene.pitch_deg = 7;
    scene.camera = {.exposure = 1.12, .cast_bgr = {0.94F, 1, 1.05F}, .noise = 0.35};
    return sample;
}

SampleScene fadedStrap()
{
    SampleScene sample{
        "strap_faded", "shoulder-strap", "rellwick", "1943", {{"RELLWICK WEBBING CO", "1943"}}, {}};
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
    scene.stamps = {
        {.text = {.lines = {"RELLWICK WEBBING CO", "1943"},
                  .face = Face::Condensed,
                  .letter_px = 38},
         .ink = {.colour_bgr = kBlackInk, .fading = 0.45, .soaking = 0.55, .patchiness = 0.12},
         .along_px = -20,
         .turn_deg = -2}};
    scene.light = {.from_deg = 300, .elevation_deg = 33, .ambient = 0.42, .unevenness = 0.4};
    scene.yaw_deg = 8;
    scene.camera = {.exposure = 1.2, .cast_bgr = {1.02F, 1, 1}, .noise = 0.45};
    return sample;
}

SampleScene angledSatchel()
{
    SampleScene sample{"satchel_angled",
                       "line-satchel",
                       "norrowby",
                       "1937-04",
                       {{"NORROWBY & STAUNEL", "THRENNEL", "4/37"}},
                       {}};
    SceneOptions& scene = sample.scene;
    scene.seed = 3703;
    scene.piece = {.material = Material::Canvas,
                   .colour_bgr = {84, 112, 112},
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
    scene.stamps = {
        {.text = {.lines = {"NORROWBY & STAUNEL", "THRENNEL", "4/37"},
                  .face = Face::SerifBold,
                  .letter_px = 34,
                  .line_spacing = 1.8},
         .ink = {.colour_bgr = kBlueBlackInk, .fading = 0.22, .soaking = 0.6, .patchiness = 0.3},
         .along_px = 0,
         .across_px = -10,
         .turn_deg = 3}};
    scene.light = {.from_deg = 200, .elevation_deg = 30, .ambient = 0.38, .unevenness = 0.42};
    scene.pitch_deg = 16;
    scene.yaw_deg = -7;
    scene.camera = {.exposure = 1.35, .cast_bgr = {0.92F, 1, 1.06F}, .noise = 0.4};
    return sample;
}

SampleScene smudgedFrog()
{
    SampleScene sample{
        "frog_smudged", "knife-frog", "thurrowby", "1932", {{"T.H. CO", "UMBERWICK 1932"}}, {}};
    SceneOptions& scene = sample.scene;
    scene.seed = 3204;
    scene.piece = {.material = Material::Leather,
                   .colour_bgr = {62, 98, 146},
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
                     .ink = {.colour_bgr = kBlackInk,
                             .fading = 0.2,
                             .soaking = 0.7,
                             .patchiness = 0.35,
                             .smudge_px = 11},
                     .along_px = -30,
                     .across_px = 15,
                     .turn_deg = 178}};
    scene.light = {.from_deg = 245, .elevation_deg = 48, .ambient = 0.45, .unevenness = 0.35};
    scene.pitch_deg = -6;
    scene.camera = {.exposure = 1.1, .noise = 0.4};
    return sample;
}

SampleScene hemmedCarrier()
{
    SampleScene sample{"carrier_hem",
                       "flask-carrier",
                       "garravane",
                       "1942",
                       {{"GARRAVANE OSKEL[- - -]", "1942"}},
                       {}};
    SceneOptions& scene = sample.scene;
    scene.seed = 4205;
    scene.piece = {.material = Material::Canvas,
                   .colour_bgr = {112, 152, 170},
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
    scene.stamps = {
        {.text = {.lines = {"GARRAVANE OSKELL & LYTHELL", "1942"},
                  .face = Face::SansBold,
                  .letter_px = 33},
         .ink = {.colour_bgr = kVioletInk, .fading = 0.25, .soaking = 0.55, .patchiness = 0.3},
         .along_px = 60,
         .across_px = 0,
         .turn_deg = -3}};
    scene.light = {.from_deg = 205, .elevation_deg = 32, .ambient = 0.38, .unevenness = 0.4};
    scene.pitch_deg = 9;
    scene.camera = {.exposure = 1.05, .cast_bgr = {0.95F, 1, 1.04F}, .noise = 0.4};
    return sample;
}

SampleScene twiceStampedPouch()
{
    SampleScene sample{"pouch_two_stamps",
                       "lamp-pouch",
                       "mestrelby",
                       "1944",
                       {{"MESTRELBY & ESKWITH", "1944"}, {"S.H. 31"}},
                       {}};
    SceneOptions& scene = sample.scene;
    scene.seed = 4406;
    scene.piece = {.material = Material::Twill,
                   .colour_bgr = {142, 128, 116},
                   .thread_px = 4.4,
                   .unevenness = 0.6,
                   .width_px = 760,
                   .turn_deg = 4,
                   .table = Table::Wood};
    scene.details = {.waviness = 0.8,
                     .fuzz = 0.45,
                     .edge_stitching = true,
                     .creases = {{.along_px = -500, .turn_deg = 95, .height_px = 5}}};
    scene.stamps = {
        {.text = {.lines = {"MESTRELBY & ESKWITH", "1944"},
                  .face = Face::Narrow,
                  .letter_px = 38,
                  .letter_spacing = 0.12},
         .ink = {.colour_bgr = kBlackInk, .fading = 0.2, .soaking = 0.5, .patchiness = 0.3},
         .along_px = -110,
         .across_px = -120,
         .turn_deg = -3},
        {.text =
             {.lines = {"S.H. 31"}, .face = Face::SansBold, .frame = Frame::Box, .letter_px = 34},
         .ink = {.colour_bgr = kVioletInk, .fading = 0.2, .soaking = 0.5, .patchiness = 0.25},
         .along_px = 330,
         .across_px = 170,
         .turn_deg = 17}};
    scene.light = {.from_deg = 320, .elevation_deg = 36, .ambient = 0.4, .unevenness = 0.34};
    scene.pitch_deg = 10;
    scene.yaw_deg = 6;
    scene.camera = {.exposure = 1.15, .cast_bgr = {1, 1, 1.02F}, .noise = 0.4};
    return sample;
}

}  // namespace

std::vector<SampleScene> sampleScenes()
{
    return {clearBelt(),   fadedStrap(),    angledSatchel(),
            smudgedFrog(), hemmedCarrier(), twiceStampedPouch()};
}
