#pragma once

#include <vector>

#include "tests/support/synthetic_stamp.h"

namespace synthetic {

// What can have happened to a mark, its piece or its photograph, one switch each.
enum class Damage {
    Fade,
    Smear,
    Speckle,
    Rub,  // ink gone in patches
    UnevenPressure,
    DoubleImpression,
    CutOff,  // its end lies under a hem
    Stain,
    Crease,
    Overprint,  // an owner's number stamped over it; a further stamp of the scene
    UnevenLight,
    CastShadow,
    Blur,
    OutOfFocus,  // towards the photo's top and bottom
    LowResolution,
    Noise,
    Jpeg
};

std::vector<Damage> allDamages();

// In plain words, "double impression".
const char* nameOf(Damage damage);

// The same scene with every damage off: fresh ink, its first stamp only, a clean piece in even
// light before a perfect camera.
SceneOptions undamaged(SceneOptions scene);

// The scene with one damage set, the others as they were. At strength 0 it is exactly off, at 1 as
// strong as is usual at its worst. Damages to a mark are done to the scene's first stamp.
// Throws std::invalid_argument for a strength outside 0 to 1 or a scene without a stamp.
SceneOptions damaged(SceneOptions scene, Damage damage, double strength);

}  // namespace synthetic
