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
};

struct CreaseOptions {
    double along_px = 0, across_px = 0;  // a point on it, from the photo's middle
    double turn_deg = 90;                // its direction, clockwise against the strap
    double height_px = 5;                // how far it stands up
};

struct StainOptions {
    double along_px = 0, across_px = 0;
    double radius_px = 90;
    double strength = 0.4;  // 0 to 1
    cv::Vec3b colour_bgr{40, 62, 84};
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
};

struct StampOptions {
    TypesetOptions text{};
    InkOptions ink{};
    double along_px = 0, across_px = 0;  // of its centre from the photo's, as the strap lies
    double turn_deg = 0;                 // clockwise against the strap; 180 is upside down
};

struct SceneLight {
    double from_deg = 215;      // clockwise from the photo's right; 215 is the upper left
    double elevation_deg = 40;  // 5 (raking) to 90
    double ambient = 0.35;      // 0 to 1, share of light from all around
    double unevenness = 0.3;    // 0 to 1, how much darker the far side is
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
};

struct LineTruth {
    std::string text;
    Quad corners;
    std::vector<LetterTruth> letters;  // spaces included
};

struct StampTruth {
    Quad outline;       // around its lines and frame, hidden parts too
    Quad in_sight;      // the same, less what is hidden on the left and right; outline if all is
    double up_deg = 0;  // how far its up is turned clockwise from the photo's, 0 <= x < 360
    std::vector<LineTruth> lines;
};

struct DrawnPhoto {
    cv::Mat pixels;  // CV_8UC3
    std::vector<StampTruth> stamps;
    cv::Mat ink;  // CV_8UC1, the photo's size: how much ink lies in each pixel
};

// Throws std::invalid_argument when an option is out of range.
DrawnPhoto drawPhoto(const SceneOptions& options);

}  // namespace synthetic
