#pragma once

#include <string>
#include <vector>

#include "tests/support/synthetic_stamp.h"

// The photographs of the demo: marks on drawn pieces, in three levels, and pieces without a mark.
enum class SampleLevel { Easy, Medium, Hard, NotStamps };

// The folder of a level's pictures: easy, medium, hard, not_stamps.
std::string folderOf(SampleLevel level);

struct Range {
    double least = 0, most = 0;
    bool holds(double value) const { return value >= least && value <= most; }
};

// What a level means, of the first stamp of each of its pictures.
struct LevelNumbers {
    Range letter_px;  // height of a capital in the photo
    Range contrast;   // of ink against the cloth beside it, share of the cloth's brightness
    Range lost;       // share of the stamp's face that shows no ink or hardly any
    Range tilt_deg;   // of its lines from the photo's level, 0 to 90, upside down or not
    Range lines;
};

// Throws std::invalid_argument for NotStamps.
LevelNumbers numbersOf(SampleLevel level);

// The angle of a stamp's lines from the photo's level, 0 to 90.
double tiltOf(const synthetic::StampTruth& stamp);

// What can be read of a stamp, a line a string, in the typed notation.
struct SampleStamp {
    std::vector<std::string> typed;
    std::string part = "body";
    std::string maker_id{};  // where it is not the item's
};

struct SampleScene {
    SampleLevel level{};
    std::string name;                 // of its files
    std::string item_type;            // id of the register; empty: none
    std::string maker_id;             // id of the register; empty: not in it, or no mark
    std::string edtf;                 // when the piece was made
    std::vector<SampleStamp> stamps;  // as in the scene
    synthetic::SceneOptions scene;
};

std::vector<SampleScene> easySamples();
std::vector<SampleScene> mediumSamples();
std::vector<SampleScene> hardSamples();
std::vector<SampleScene> notStampSamples();

// All of them, level by level.
std::vector<SampleScene> sampleScenes();
