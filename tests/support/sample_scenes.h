#pragma once

#include <string>
#include <vector>

#include "tests/support/synthetic_stamp.h"

// The photographs of the demo: marks of the invented register on drawn pieces.
struct SampleScene {
    std::string name;       // of its files
    std::string item_type;  // ids of the register
    std::string maker_id;
    std::string edtf;  // when the piece was made
    // What can be read of each stamp, a line a string, in the typed notation.
    std::vector<std::vector<std::string>> typed;
    synthetic::SceneOptions scene;
};

std::vector<SampleScene> sampleScenes();
