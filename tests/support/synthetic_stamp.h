#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include <opencv2/core.hpp>

#include "tests/support/synthetic/camera.h"
#include "tests/support/synthetic/stamp_ink.h"
#include "tests/support/synthetic/typeset.h"

// Drawn photographs of stamped straps and bags, with the truth about them. Everything follows from
// the options and the seed: the same ones give the same picture on the same machine.
namespace synthetic {

// Corners clockwise from the top left as the writing sees it, in photo pixels.
using Quad = std::array<cv::Point2f, 4>;

enum class Material { Webbing, Canvas, Twill, Leather };
enum class Table { Wood, Cloth, Board };

// A pattern that was printed on the cloth when it was made.
enum class Pattern { None, Stripes, Checks, Dots };

// The stamped piece, lying on a table.
struct PieceOptions {
    Material material = Material::Webbing;
    cv::Vec3b colour_bgr{96, 140, 158};  // khaki
    double thread_px = 5;                // of leather: the size of its grain
    double unevenness = 0.6;             // 0 to 1
    double width_px = 420;               // of the strap; 0: it fills the photo
    double turn_deg = 0;                 // the strap's direction, clockwise from the photo's right
    double offset_px = 0;                // of the strap's middle from the photo's, across the strap
    Table table = Table::Wood;
    Pattern pattern = Pattern::None;
    double pattern_px = 60;  // from one repeat to the next
    cv::Vec3b pattern_bgr{70, 70, 96};
};

struct CreaseOptions {
    double along_px = 0, across_px = 0;  // a point on it, from the photo's middle
    double turn_deg = 90;                // its direction, clockwise against the strap
    double height_px = 5;                // how far it stands up
    double length_px = 0;                // runs out so far from end to end; 0: right across
};

struct StainOptions {
    double along_px = 0, across_px = 0;
    double radius_px = 90;
    double strength = 0.4;  // 0 to 1
    cv::Vec3b colour_bgr{40, 62, 84};
};

// A metal fitting fixed on the piece; stamps placed on it are on metal.
struct PlateOptions {
    double along_px = 0, across_px = 0;  // its middle
    cv::Size2d size_px{320, 130};
    cv::Vec3b colour_bgr{78, 138, 160};  // brass
    double wear = 0.5;                   // 0 to 1: scratches and tarnish
};

// A rule with tick marks and no figures.
struct RulerOptions {
    double x_px = 0, y_px = 0;  // its middle from the photo's
    double turn_deg = 0;
    double length_px = 900, width_px = 90;
    double tick_px = 11;  // from tick to tick
};

// A thumb that holds the piece down, reaching in from a side of the photo.
struct ThumbOptions {
    double x_px = 0, y_px = 0;  // its tip from the photo's middle
    double turn_deg = 200;      // the way it points, clockwise from the photo's right
    double width_px = 150;
};

// What makes a piece look used. Places are from the photo's middle, as the strap lies.
struct DetailOptions {
    double waviness = 0.5;           // 0 (flat) to 1
    double fuzz = 0.4;               // 0 to 1, fibres that stand off; none on leather
    bool edge_stitching = false;     // a row of stitches along both edges of a strap
    std::optional<double> hem_px{};  // a hem sewn over everything beyond, along the strap
    std::vector<cv::Point2d> eyelets_px{};
    std::vector<CreaseOptions> creases{};
    std::vector<StainOptions> stains{};
    std::vector<PlateOptions> plates{};
    std::optional<RulerOptions> ruler{};
    std::optional<ThumbOptions> thumb{};
};

struct StampOptions {
    TypesetOptions text{};
    InkOptions ink{};
    double along_px = 0, across_px = 0;  // of its centre from the photo's, as the strap lies
    double turn_deg = 0;                 // clockwise against the strap; 180 is upside down
    // Ink against the cloth beside it as the picture shows them, a share of the cloth's brightness;
    // the ink is thinned until it is so. Unset: as its fading leaves it.
    std::optional<double> contrast{};
    double depth_px = 0;  // of letters that are punched into metal or leather; 0: not at all
};

// The shadow of something straight that is held into the light.
struct ShadowOptions {
    double x_px = 0, y_px = 0;  // a point of its middle line, from the photo's middle
    double turn_deg = 0;        // its direction, clockwise from the photo's right
    double width_px = 80;
    double softness_px = 12;  // half of its edge's width
    double depth = 0.5;       // 0 to 1, share of the light it takes
};

struct SceneLight {
    double from_deg = 215;      // clockwise from the photo's right; 215 is the upper left
    double elevation_deg = 40;  // 5 (raking) to 90
    double ambient = 0.35;      // 0 to 1, share of light from all around
    double unevenness = 0.3;    // 0 to 1, how much darker the far side is
    std::vector<ShadowOptions> shadows{};
};

struct SceneOptions {
    cv::Size size_px{1400, 1050};
    PieceOptions piece{};
    DetailOptions details{};
    std::vector<StampOptions> stamps{};  // may be empty: bare cloth
    SceneLight light{};
    double pitch_deg = 0, yaw_deg = 0;  // of the camera: perspective; -40 to 40
    CameraOptions camera{};
    std::uint32_t seed = 1;
};

struct LetterTruth {
    std::string text;
    Quad corners;
    double in_sight = 1;  // 0 to 1, share of its place that is not hidden or off the piece
    double inked = 1;     // 0 to 1, share of its face that shows ink, as in StampTruth::lost
};

struct LineTruth {
    std::string text;
    Quad corners;
    std::vector<LetterTruth> letters;   // spaces included
    std::vector<cv::Point2f> baseline;  // what the letters stand on, from left to right
};

struct StampTruth {
    Quad outline;       // around its lines and frame, hidden parts too
    Quad in_sight;      // the same, less what is hidden on the left and right; outline if all is
    double up_deg = 0;  // how far its up is turned clockwise from the photo's, 0 <= x < 360
    std::vector<LineTruth> lines;
    double letter_px = 0;  // height of its capitals in the photo; the rest as in measure.h
    double contrast = 0;   // as measured on the finished picture
    double lost = 0;       // 0 to 1, share of its face that shows no ink, or hardly any
};

struct DrawnPhoto {
    cv::Mat pixels;  // CV_8UC3
    std::vector<StampTruth> stamps;
    // All of the photo's size:
    cv::Mat ink;    // CV_8UC1: how much ink lies in each pixel
    cv::Mat face;   // CV_8UC1: where stamps were pressed, whether or not ink is left or in sight
    cv::Mat light;  // CV_32FC1: brightness of the light, lamp and lens, against an even one of 1
};

// Throws std::invalid_argument when an option is out of range, or when the ink and cloth of a stamp
// do not reach the contrast asked for.
DrawnPhoto drawPhoto(const SceneOptions& options);

}  // namespace synthetic
