#include "tests/support/synthetic/typeset.h"

#include <algorithm>
#include <cmath>
#include <memory>
#include <stdexcept>

#include <ft2build.h>
#include FT_FREETYPE_H

#include <opencv2/imgproc.hpp>

#include "tests/support/synthetic/noise.h"

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

// A face at a size, through FreeType.
class Type {
public:
    Type(Face face, double letter_px) : kind_(face)
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
        constexpr double kTrial = 100;
        FT_Set_Char_Size(face_, 0, std::lround(64 * kTrial), 72, 72);
        FT_Load_Char(face_, 'H', FT_LOAD_NO_HINTING);
        const double capital = static_cast<double>(face_->glyph->metrics.height) / 64;
        FT_Set_Char_Size(face_, 0, std::lround(64 * kTrial * letter_px / capital), 72, 72);
    }
    ~Type()
    {
        FT_Done_Face(face_);
        FT_Done_FreeType(library_);
    }
    Type(const Type&) = delete;
    Type& operator=(const Type&) = delete;

    struct Glyph {
        cv::Mat cover;          // CV_8UC1, may be empty
        int left = 0, top = 0;  // of the cover against the pen, up positive
        double advance = 0;
    };

    Glyph glyph(char32_t letter, double turn_deg) const
    {
        const double turn = turn_deg * CV_PI / 180;
        const auto fixed = [](double value) { return std::lround(value * 65536); };
        FT_Matrix matrix{fixed(std::cos(turn)), fixed(std::sin(turn)), fixed(-std::sin(turn)),
                         fixed(std::cos(turn))};
        FT_Set_Transform(face_, &matrix, nullptr);
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

private:
    // A stencil's islands are held by bridges: here one down the middle of each wide letter.
    static void cutBridges(cv::Mat& cover)
    {
        if (cover.empty() || cover.cols * 2 < cover.rows)
            return;
        const int width = std::max(2, cover.rows / 9);
        cover.colRange((cover.cols - width) / 2, (cover.cols + width) / 2) = 0;
    }

    Face kind_;
    FT_Library library_ = nullptr;
    FT_Face face_ = nullptr;
};

struct Character {
    std::string bytes;
    char32_t code;
};

// Texts come from the tests themselves and are well-formed UTF-8.
std::vector<Character> charactersOf(const std::string& text)
{
    std::vector<Character> characters;
    for (std::size_t at = 0; at < text.size();) {
        const auto first = static_cast<unsigned char>(text[at]);
        const std::size_t length = first < 0x80 ? 1 : first < 0xE0 ? 2 : first < 0xF0 ? 3 : 4;
        char32_t code = length == 1 ? first : first & (0xFFU >> (length + 1));
        for (std::size_t i = 1; i < length; ++i)
            code = (code << 6) | (static_cast<unsigned char>(text.at(at + i)) & 0x3FU);
        characters.push_back({text.substr(at, length), code});
        at += length;
    }
    return characters;
}

struct PlacedGlyph {
    Type::Glyph glyph;
    cv::Point at;  // top left of its cover, from the line's start and base line
};

struct RawLine {
    SetLine line;  // boxes from the line's start and base line
    std::vector<PlacedGlyph> glyphs;
    double width = 0;
};

RawLine setLine(const Type& type, const std::string& text, const TypesetOptions& options,
                cv::RNG& random)
{
    RawLine raw;
    raw.line.text = text;
    double pen = 0;
    for (const Character& character : charactersOf(text)) {
        const double loose = options.looseness * options.letter_px;
        const double turn = options.looseness * random.gaussian(0.9);
        const double dx = loose * random.gaussian(0.014), dy = loose * random.gaussian(0.018);
        PlacedGlyph placed{type.glyph(character.code, turn), {}};
        placed.at = cv::Point(static_cast<int>(std::lround(pen + dx)) + placed.glyph.left,
                              static_cast<int>(std::lround(dy)) - placed.glyph.top);
        const bool blank = placed.glyph.cover.empty();
        const cv::Rect2d box =
            blank ? cv::Rect2d(pen, -options.letter_px, placed.glyph.advance, options.letter_px)
                  : cv::Rect2d(placed.at.x, placed.at.y, placed.glyph.cover.cols,
                               placed.glyph.cover.rows);
        raw.line.letters.push_back({character.bytes, box});
        if (!blank)
            raw.line.box = raw.line.box.empty() ? box : raw.line.box | box;
        pen += placed.glyph.advance + options.letter_spacing * options.letter_px;
        raw.glyphs.push_back(placed);
    }
    raw.width = pen - options.letter_spacing * options.letter_px;
    return raw;
}

// Room that a frame needs around a block of text, on each side.
cv::Size2d roomFor(Frame frame, cv::Size2d block, double letter_px)
{
    switch (frame) {
        case Frame::None:
            return {0.18 * letter_px, 0.18 * letter_px};
        case Frame::Box:
            return {0.65 * letter_px, 0.55 * letter_px};
        case Frame::Oval:
            return {0.22 * block.width + 0.3 * letter_px, 0.22 * block.height + 0.5 * letter_px};
        case Frame::Round: {
            const double radius = std::hypot(block.width, block.height) / 2 + 0.35 * letter_px;
            return {radius - block.width / 2, radius - block.height / 2};
        }
        case Frame::Diamond:
            return {block.height * 0.9 + 0.6 * letter_px, block.width * 0.38 + 0.6 * letter_px};
    }
    return {};
}

void drawFrame(cv::Mat& cover, Frame frame, const cv::Rect2d& bounds, double letter_px)
{
    const int thickness = std::max(1, static_cast<int>(std::lround(letter_px * 0.085)));
    const cv::Point2d centre = (bounds.tl() + bounds.br()) / 2;
    const cv::Size2d half(bounds.width / 2 - thickness, bounds.height / 2 - thickness);
    const auto pixel = [](double x, double y) { return cv::Point(cvRound(x), cvRound(y)); };
    switch (frame) {
        case Frame::None:
            return;
        case Frame::Box:
            cv::rectangle(cover, pixel(centre.x - half.width, centre.y - half.height),
                          pixel(centre.x + half.width, centre.y + half.height), 255, thickness,
                          cv::LINE_AA);
            return;
        case Frame::Oval:
        case Frame::Round:
            cv::ellipse(cover, pixel(centre.x, centre.y),
                        cv::Size(cvRound(half.width), cvRound(half.height)), 0, 0, 360, 255,
                        thickness, cv::LINE_AA);
            return;
        case Frame::Diamond: {
            const std::vector<cv::Point> corners = {
                pixel(centre.x, centre.y - half.height), pixel(centre.x + half.width, centre.y),
                pixel(centre.x, centre.y + half.height), pixel(centre.x - half.width, centre.y)};
            cv::polylines(cover, corners, true, 255, thickness, cv::LINE_AA);
            return;
        }
    }
}

void place(const RawLine& raw, const cv::Point& start, cv::Mat& cover, Typeset& set)
{
    for (const PlacedGlyph& placed : raw.glyphs) {
        if (placed.glyph.cover.empty())
            continue;
        cv::Mat room = cover(cv::Rect(placed.at + start, placed.glyph.cover.size()));
        cv::max(room, placed.glyph.cover, room);
    }
    SetLine line = raw.line;
    line.box += cv::Point2d(start);
    for (SetLetter& letter : line.letters)
        letter.box += cv::Point2d(start);
    set.lines.push_back(line);
}

}  // namespace

Typeset typeset(const TypesetOptions& options, std::uint32_t seed)
{
    if (options.lines.empty())
        throw std::invalid_argument("TypesetOptions::lines must hold a line");
    if (options.letter_px < 6)
        throw std::invalid_argument("TypesetOptions::letter_px must be at least 6");
    cv::RNG random(seed);
    const Type type(options.face, options.letter_px);
    std::vector<RawLine> raws;
    cv::Size2d block(
        0, options.letter_px *
               (1 + options.line_spacing * static_cast<double>(options.lines.size() - 1)));
    for (const std::string& text : options.lines) {
        raws.push_back(setLine(type, text, options, random));
        block.width = std::max(block.width, raws.back().width);
    }
    const cv::Size2d room = roomFor(options.frame, block, options.letter_px);
    const double margin = options.letter_px;
    cv::Mat cover = cv::Mat::zeros(cvCeil(block.height + 2 * (room.height + margin)),
                                   cvCeil(block.width + 2 * (room.width + margin)), CV_8UC1);
    Typeset set;
    set.bounds = {margin, margin, block.width + 2 * room.width, block.height + 2 * room.height};
    for (std::size_t i = 0; i < raws.size(); ++i) {
        const double base = margin + room.height + options.letter_px +
                            static_cast<double>(i) * options.line_spacing * options.letter_px;
        const double left = (cover.cols - raws[i].width) / 2;
        place(raws[i], {cvRound(left), cvRound(base)}, cover, set);
    }
    drawFrame(cover, options.frame, set.bounds, options.letter_px);
    cover.convertTo(set.cover, CV_32F, 1.0 / 255);
    return set;
}

}  // namespace synthetic
