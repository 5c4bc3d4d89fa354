#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <vector>

#include <opencv2/core.hpp>

namespace synthetic {

enum class Face { Sans, SansBold, Condensed, Narrow, Serif, SerifBold, Mono, Stencil };
enum class Frame { None, Box, Oval, Round, Diamond };

struct TypesetOptions {
    std::vector<std::string> lines{};  // UTF-8, one to three are usual
    Face face = Face::SansBold;
    Frame frame = Frame::None;
    double letter_px = 34;         // height of a capital
    double letter_spacing = 0.08;  // added between letters, in heights of a capital
    double line_spacing = 1.65;    // from base line to base line, in heights of a capital
    double looseness = 0.3;        // 0 to 1: how unevenly the letters were set by hand
    double arch_deg = 0;  // of the circle that the first line spans, arched up; 0: straight
};

struct SetLetter {
    std::string text;
    cv::Rect2d box;  // of its ink; for a space, of the room it takes
    std::array<cv::Point2d, 4>
        corners;  // the same, turned with it: from its own top left, clockwise
};

struct SetLine {
    std::string text;
    cv::Rect2d box;
    std::vector<SetLetter> letters;
    std::vector<cv::Point2d>
        base;  // what the letters stand on, left to right; two points if straight
};

// A stamp's face, clean and straight.
struct Typeset {
    cv::Mat cover;      // CV_32FC1, 0 to 1; 1 where ink belongs
    cv::Rect2d bounds;  // around all lines and the frame, with a little air
    std::vector<SetLine> lines;
};

// Sets lines of text, centred, through FreeType, with faces of Debian's fonts-dejavu-core,
// fonts-dejavu-extra and fonts-liberation.
// Throws std::invalid_argument if there is no text, the letters are under 6 px, the arch is outside
// 0 to 200 degrees or a face lacks a character,
// std::runtime_error naming the package if a face is not installed.
Typeset typeset(const TypesetOptions& options, std::uint32_t seed);

}  // namespace synthetic
