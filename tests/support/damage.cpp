#include "tests/support/damage.h"

#include <algorithm>
#include <stdexcept>

namespace synthetic {
namespace {

// Where the stamp's writing ends to its right along the strap, about.
double halfLength(const StampOptions& stamp)
{
    std::size_t longest = 1;
    for (const std::string& line : stamp.text.lines)
        longest = std::max(longest, line.size());
    return 0.42 * stamp.text.letter_px * static_cast<double>(longest);
}

StampOptions ownersNumber(const StampOptions& under, double strength)
{
    StampOptions number;
    number.text = {.lines = {"4071"},
                   .face = Face::Stencil,
                   .letter_px = under.text.letter_px * (0.8 + 0.9 * strength)};
    number.ink = {.fading = 0.6 * (1 - strength), .patchiness = 0.1};
    number.along_px = under.along_px + 0.3 * halfLength(under);
    number.across_px = under.across_px;
    number.turn_deg = under.turn_deg + 9;
    return number;
}

void damageInk(StampOptions& stamp, Damage damage, double strength)
{
    InkOptions& ink = stamp.ink;
    if (damage == Damage::Fade)
        ink.fading = 0.9 * strength;
    if (damage == Damage::Smear)
        ink.smudge_px = 0.5 * stamp.text.letter_px * strength;
    if (damage == Damage::Speckle)
        ink.speckle = strength;
    if (damage == Damage::Rub)
        ink.rubbed = 0.6 * strength;
    if (damage == Damage::UnevenPressure)
        ink.patchiness = strength;
    if (damage == Damage::DoubleImpression)
        ink.second_px = 0.4 * stamp.text.letter_px * strength;
}

void damagePiece(SceneOptions& scene, Damage damage, double strength)
{
    const StampOptions stamp = scene.stamps[0];
    DetailOptions& details = scene.details;
    const bool on = strength > 0;
    const double across = stamp.across_px, letter = stamp.text.letter_px;
    if (damage == Damage::CutOff) {
        details.hem_px.reset();
        if (on)
            details.hem_px = stamp.along_px + halfLength(stamp) * (1 - 1.2 * strength);
    }
    if (damage == Damage::Stain) {
        details.stains.clear();
        if (on)
            details.stains = {{stamp.along_px, across, 2.5 * letter, strength}};
    }
    if (damage == Damage::Crease) {
        details.creases.clear();
        if (on)
            details.creases = {{stamp.along_px, across, 80, 8 * strength}};
    }
    if (damage == Damage::Overprint) {
        scene.stamps.resize(1);
        if (on)
            scene.stamps.push_back(ownersNumber(stamp, strength));
    }
}

void damagePhoto(SceneOptions& scene, Damage damage, double strength)
{
    CameraOptions& camera = scene.camera;
    if (damage == Damage::UnevenLight)
        scene.light.unevenness = 0.8 * strength;
    if (damage == Damage::CastShadow) {
        scene.light.shadows.clear();
        if (strength > 0)
            scene.light.shadows = {{scene.stamps[0].along_px, 0, 70, 90, 10, 0.7 * strength}};
    }
    if (damage == Damage::Blur)
        camera.blur_px = 3 * strength;
    if (damage == Damage::OutOfFocus)
        camera.defocus_px = 5 * strength;
    if (damage == Damage::LowResolution)
        camera.resolution = 1 - 0.7 * strength;
    if (damage == Damage::Noise)
        camera.noise = strength;
    if (damage == Damage::Jpeg)
        camera.jpeg_quality = strength > 0 ? static_cast<int>(95 - 75 * strength) : 0;
}

}  // namespace

std::vector<Damage> allDamages()
{
    return {Damage::Fade,
            Damage::Smear,
            Damage::Speckle,
            Damage::Rub,
            Damage::UnevenPressure,
            Damage::DoubleImpression,
            Damage::CutOff,
            Damage::Stain,
            Damage::Crease,
            Damage::Overprint,
            Damage::UnevenLight,
            Damage::CastShadow,
            Damage::Blur,
            Damage::OutOfFocus,
            Damage::LowResolution,
            Damage::Noise,
            Damage::Jpeg};
}

const char* nameOf(Damage damage)
{
    switch (damage) {
        case Damage::Fade:
            return "fade";
        case Damage::Smear:
            return "smear";
        case Damage::Speckle:
            return "speckle";
        case Damage::Rub:
            return "rubbed off";
        case Damage::UnevenPressure:
            return "uneven pressure";
        case Damage::DoubleImpression:
            return "double impression";
        case Damage::CutOff:
            return "cut off";
        case Damage::Stain:
            return "stain";
        case Damage::Crease:
            return "crease";
        case Damage::Overprint:
            return "overprint";
        case Damage::UnevenLight:
            return "uneven light";
        case Damage::CastShadow:
            return "cast shadow";
        case Damage::Blur:
            return "blur";
        case Damage::OutOfFocus:
            return "out of focus";
        case Damage::LowResolution:
            return "low resolution";
        case Damage::Noise:
            return "noise";
        case Damage::Jpeg:
            break;
    }
    return "JPEG";
}

SceneOptions undamaged(SceneOptions scene)
{
    scene.stamps.resize(std::min<std::size_t>(1, scene.stamps.size()));
    for (StampOptions& stamp : scene.stamps) {
        stamp.contrast.reset();
        stamp.ink.fading = stamp.ink.patchiness = stamp.ink.smudge_px = stamp.ink.second_px = 0;
        stamp.ink.speckle = stamp.ink.rubbed = 0;
    }
    scene.details.hem_px.reset();
    scene.details.creases.clear();
    scene.details.stains.clear();
    scene.details.waviness = scene.details.fuzz = 0;
    scene.light.unevenness = 0;
    scene.light.shadows.clear();
    CameraOptions& camera = scene.camera;
    camera.blur_px = camera.defocus_px = camera.noise = camera.sharpening = camera.vignetting = 0;
    camera.resolution = 1;
    camera.jpeg_quality = 0;
    return scene;
}

SceneOptions damaged(SceneOptions scene, Damage damage, double strength)
{
    if (!(strength >= 0 && strength <= 1))
        throw std::invalid_argument("the strength of a damage must be 0 to 1");
    if (scene.stamps.empty())
        throw std::invalid_argument("SceneOptions::stamps must hold the stamp to damage");
    damageInk(scene.stamps[0], damage, strength);
    damagePiece(scene, damage, strength);
    damagePhoto(scene, damage, strength);
    return scene;
}

}  // namespace synthetic
