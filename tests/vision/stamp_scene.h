#pragma once

#include <string>
#include <vector>

#include "tests/support/synthetic_stamp.h"
#include "vision/photo.h"

// A fresh, even stamp on flat canvas, turned clockwise by `turn_deg`; letters 40 px high.
synthetic::SceneOptions stampScene(const std::vector<std::string>& lines, double turn_deg,
                                   double fading = 0.1);

// Draws the scene as a photo that was loaded.
vision::Photo photoOf(const synthetic::SceneOptions& scene);

// Between two directions of a line of text, heads up or down: 0 to 90 degrees.
double betweenDirections(double a_deg, double b_deg);
