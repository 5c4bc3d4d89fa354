#pragma once

#include <opencv2/core.hpp>

#include "tests/support/synthetic/typeset.h"

struct FT_LibraryRec_;
struct FT_FaceRec_;

namespace synthetic {

// A face at a size, through FreeType.
class TypeFace {
public:
    // Throws std::runtime_error naming the package if the face is not installed.
    TypeFace(Face face, double letter_px);
    ~TypeFace();
    TypeFace(const TypeFace&) = delete;
    TypeFace& operator=(const TypeFace&) = delete;

    struct Glyph {
        cv::Mat cover;          // CV_8UC1, may be empty
        int left = 0, top = 0;  // of the cover against the pen, up positive
        double advance = 0;
    };

    // Turned clockwise. Throws std::invalid_argument if the face lacks the letter.
    Glyph glyph(char32_t letter, double turn_deg) const;

private:
    Face kind_;
    FT_LibraryRec_* library_ = nullptr;
    FT_FaceRec_* face_ = nullptr;
};

}  // namespace synthetic
