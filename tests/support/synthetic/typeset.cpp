#include "tests/support/synthetic/typeset.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include <opencv2/imgproc.hpp>

#include "tests/support/synthetic/type_face.h"

namespace synthetic {
namespace {

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
    TypeFace::Glyph glyph;
    cv::Point at;  // top left of its cover, from the line's start and base line
    char32_t code = 0;
    double turn_deg = 0;  // clockwise, as it was set by hand
    cv::Point2d origin;   // of its pen, from the line's start and base line
};

struct RawLine {
    SetLine line;  // boxes from the line's start and base line
    std::vector<PlacedGlyph> glyphs;
    double width = 0;
};

std::array<cv::Point2d, 4> cornersOf(const cv::Rect2d& box)
{
    return {box.tl(), {box.x + box.width, box.y}, box.br(), {box.x, box.y + box.height}};
}

void standAt(PlacedGlyph& placed, const cv::Point2d& origin)
{
    placed.at = cv::Point(static_cast<int>(std::lround(origin.x)) + placed.glyph.left,
                          static_cast<int>(std::lround(origin.y)) - placed.glyph.top);
}

RawLine setLine(const TypeFace& type, const std::string& text, const TypesetOptions& options,
                cv::RNG& random)
{
    RawLine raw;
    raw.line.text = text;
    double pen = 0;
    for (const Character& character : charactersOf(text)) {
        const double loose = options.looseness * options.letter_px;
        const double turn = options.looseness * random.gaussian(0.9);
        const double dx = loose * random.gaussian(0.014), dy = loose * random.gaussian(0.018);
        PlacedGlyph placed{
            type.glyph(character.code, turn), {}, character.code, turn, {pen + dx, dy}};
        standAt(placed, placed.origin);
        const bool blank = placed.glyph.cover.empty();
        const cv::Rect2d box =
            blank ? cv::Rect2d(pen, -options.letter_px, placed.glyph.advance, options.letter_px)
                  : cv::Rect2d(placed.at.x, placed.at.y, placed.glyph.cover.cols,
                               placed.glyph.cover.rows);
        raw.line.letters.push_back({character.bytes, box, cornersOf(box)});
        if (!blank)
            raw.line.box = raw.line.box.empty() ? box : raw.line.box | box;
        pen += placed.glyph.advance + options.letter_spacing * options.letter_px;
        raw.glyphs.push_back(placed);
    }
    raw.width = pen - options.letter_spacing * options.letter_px;
    raw.line.base = {{0, 0}, {raw.width, 0}};
    return raw;
}

double radiusOf(const RawLine& raw, double arch_deg)
{
    return raw.width / (arch_deg * CV_PI / 180);
}

// How far a line's ends come to lie below its middle.
double sagOf(const RawLine& raw, double arch_deg)
{
    return arch_deg > 0 ? radiusOf(raw, arch_deg) * (1 - std::cos(arch_deg * CV_PI / 360)) : 0;
}

// Bends a straight line up over a circle's top; its middle stays where it was.
void archLine(RawLine& raw, const TypeFace& type, double arch_deg)
{
    const double radius = radiusOf(raw, arch_deg), middle = raw.width / 2;
    raw.line.box = {};
    raw.line.base.clear();
    for (std::size_t i = 0; i < raw.glyphs.size(); ++i) {
        PlacedGlyph& placed = raw.glyphs[i];
        SetLetter& letter = raw.line.letters[i];
        const double stands = placed.origin.x + placed.glyph.advance / 2;
        const double turn = (stands - middle) / radius;  // clockwise
        const cv::Point2d foot(middle + radius * std::sin(turn), radius * (1 - std::cos(turn)));
        const auto bent = [&](const cv::Point2d& flat) {
            const cv::Point2d d(flat.x - stands, flat.y);
            return foot + cv::Point2d(d.x * std::cos(turn) - d.y * std::sin(turn),
                                      d.x * std::sin(turn) + d.y * std::cos(turn));
        };
        const bool blank = placed.glyph.cover.empty();
        placed.glyph = type.glyph(placed.code, placed.turn_deg + turn * 180 / CV_PI);
        standAt(placed, bent(placed.origin));
        for (cv::Point2d& corner : letter.corners)
            corner = bent(corner);
        const std::vector<cv::Point2f> corners(letter.corners.begin(), letter.corners.end());
        letter.box = cv::Rect2d(cv::boundingRect(corners));
        if (!blank)
            raw.line.box = raw.line.box.empty() ? letter.box : raw.line.box | letter.box;
        raw.line.base.push_back(foot);
    }
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
    for (SetLetter& letter : line.letters) {
        letter.box += cv::Point2d(start);
        for (cv::Point2d& corner : letter.corners)
            corner += cv::Point2d(start);
    }
    for (cv::Point2d& point : line.base)
        point += cv::Point2d(start);
    set.lines.push_back(line);
}

void checkText(const TypesetOptions& options)
{
    if (options.lines.empty())
        throw std::invalid_argument("TypesetOptions::lines must hold a line");
    if (options.letter_px < 6)
        throw std::invalid_argument("TypesetOptions::letter_px must be at least 6");
    if (!(options.arch_deg >= 0 && options.arch_deg <= 200))
        throw std::invalid_argument("TypesetOptions::arch_deg must be 0 to 200");
}

}  // namespace

Typeset typeset(const TypesetOptions& options, std::uint32_t seed)
{
    checkText(options);
    cv::RNG random(seed);
    const TypeFace type(options.face, options.letter_px);
    std::vector<RawLine> raws;
    cv::Size2d block(
        0, options.letter_px *
               (1 + options.line_spacing * static_cast<double>(options.lines.size() - 1)));
    for (const std::string& text : options.lines) {
        raws.push_back(setLine(type, text, options, random));
        block.width = std::max(block.width, raws.back().width);
    }
    const double sag = sagOf(raws[0], options.arch_deg);
    block.height += sag;
    if (options.arch_deg > 0)
        archLine(raws[0], type, options.arch_deg);
    const cv::Size2d room = roomFor(options.frame, block, options.letter_px);
    const double margin = options.letter_px;
    cv::Mat cover = cv::Mat::zeros(cvCeil(block.height + 2 * (room.height + margin)),
                                   cvCeil(block.width + 2 * (room.width + margin)), CV_8UC1);
    Typeset set;
    set.bounds = {margin, margin, block.width + 2 * room.width, block.height + 2 * room.height};
    for (std::size_t i = 0; i < raws.size(); ++i) {
        const double base = margin + room.height + options.letter_px + (i > 0 ? sag : 0) +
                            static_cast<double>(i) * options.line_spacing * options.letter_px;
        const double left = (cover.cols - raws[i].width) / 2;
        place(raws[i], {cvRound(left), cvRound(base)}, cover, set);
    }
    drawFrame(cover, options.frame, set.bounds, options.letter_px);
    cover.convertTo(set.cover, CV_32F, 1.0 / 255);
    return set;
}

}  // namespace synthetic
