#include "tests/vision/stamp_scene.h"

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
