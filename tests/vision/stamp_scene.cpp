#include "tests/vision/stamp_scene.h"

#include <algorithm>
#include <cmath>

synthetic::SceneOptions stampScene(const std::vector<std::string>& lines, double turn_deg,
                                   double fading)
{
    synthetic::SceneOptions scene;
    scene.size_px = {800, 600};
    scene.piece.material = synthetic::Material::Canvas;
    scene.piece.width_px = 0;
    scene.piece.thread_px = 4;
    scene.details.waviness = 0.2;
    scene.seed = 11;
    synthetic::StampOptions stamp;
    stamp.text.lines = lines;
    stamp.text.letter_px = 40;
    stamp.ink.fading = fading;
    stamp.turn_deg = turn_deg;
    scene.stamps.push_back(stamp);
    return scene;
}

vision::Photo photoOf(const synthetic::SceneOptions& scene)
{
    vision::Photo photo;
    photo.pixels = synthetic::drawPhoto(scene).pixels;
    return photo;
}

double betweenDirections(double a_deg, double b_deg)
{
    const double apart = std::fmod(std::fmod(a_deg - b_deg, 180) + 180, 180);
    return std::min(apart, 180 - apart);
}
