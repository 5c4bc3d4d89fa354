#include "tests/support/synthetic/type_face.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <string>

#include <ft2build.h>
#include FT_FREETYPE_H

namespace synthetic {
namespace {

struct FaceFile {
    const char* file;
    const char* package;
};

FaceFile fileOf(Face face)
{
    switch (face) {
        case Face::Sans:
            return {"dejavu/DejaVuSans.ttf", "fonts-dejavu-core"};
        case Face::SansBold:
            return {"dejavu/DejaVuSans-Bold.ttf", "fonts-dejavu-core"};
        case Face::Condensed:
            return {"dejavu/DejaVuSansCondensed-Bold.ttf", "fonts-dejavu-extra"};
        case Face::Narrow:
            return {"liberation/LiberationSansNarrow-Bold.ttf", "fonts-liberation"};
        case Face::Serif:
            return {"liberation/LiberationSerif-Regular.ttf", "fonts-liberation"};
        case Face::SerifBold:
            return {"dejavu/DejaVuSerif-Bold.ttf", "fonts-dejavu-core"};
        case Face::Mono:
            return {"liberation/LiberationMono-Bold.ttf", "fonts-liberation"};
        case Face::Stencil:
            return {"liberation/LiberationSerif-Bold.ttf", "fonts-liberation"};
    }
    throw std::invalid_argument("unknown face");
}

// A stencil's islands are held by bridges: here one down the middle of each wide letter.
void cutBridges(cv::Mat& cover)
{
    if (cover.empty() || cover.cols * 2 < cover.rows)
        return;
    const int width = std::max(2, cover.rows / 9);
    cover.colRange((cover.cols - width) / 2, (cover.cols + width) / 2) = 0;
}

}  // namespace

TypeFace::TypeFace(Face face, double letter_px) : kind_(face)
{
    if (FT_Init_FreeType(&library_) != 0)
        throw std::runtime_error("FreeType does not start; is libfreetype6 installed?");
    const FaceFile file = fileOf(face);
    const std::string path = std::string("/usr/share/fonts/truetype/") + file.file;
    if (FT_New_Face(library_, path.c_str(), 0, &face_) != 0) {
        FT_Done_FreeType(library_);
        throw std::runtime_error(path + " is missing; install " + file.package + ".");
    }
    // Once to learn how high a capital is, once to make it as high as asked.
    constexpr double trial = 100;
    FT_Set_Char_Size(face_, 0, std::lround(64 * trial), 72, 72);
    FT_Load_Char(face_, 'H', FT_LOAD_NO_HINTING);
    const double capital = static_cast<double>(face_->glyph->metrics.height) / 64;
    FT_Set_Char_Size(face_, 0, std::lround(64 * trial * letter_px / capital), 72, 72);
}

TypeFace::~TypeFace()
{
    FT_Done_Face(face_);
    FT_Done_FreeType(library_);
}

TypeFace::Glyph TypeFace::glyph(char32_t letter, double turn_deg) const
{
    const double turn = turn_deg * CV_PI / 180;
    const auto fixed = [](double value) { return std::lround(value * 65536); };
    FT_Matrix matrix{fixed(std::cos(turn)), fixed(std::sin(turn)), fixed(-std::sin(turn)),
                     fixed(std::cos(turn))};
    FT_Set_Transform(face_, &matrix, nullptr);
    if (FT_Get_Char_Index(face_, letter) == 0)
        throw std::invalid_argument("the face has no such character");
    if (FT_Load_Char(face_, letter, FT_LOAD_RENDER | FT_LOAD_NO_HINTING) != 0)
        throw std::runtime_error("FreeType cannot draw a letter");
    const FT_GlyphSlot slot = face_->glyph;
    Glyph glyph{{},
                slot->bitmap_left,
                slot->bitmap_top,
                static_cast<double>(slot->linearHoriAdvance) / 65536};
    if (slot->bitmap.width > 0 && slot->bitmap.rows > 0)
        glyph.cover =
            cv::Mat(static_cast<int>(slot->bitmap.rows), static_cast<int>(slot->bitmap.width),
                    CV_8UC1, slot->bitmap.buffer, static_cast<std::size_t>(slot->bitmap.pitch))
                .clone();
    if (kind_ == Face::Stencil)
        cutBridges(glyph.cover);
    return glyph;
}

}  // namespace synthetic
