#include "tests/support/synthetic_stamp.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <string>

#include <opencv2/imgproc.hpp>

#include "tests/support/synthetic/ink_amount.h"
#include "tests/support/synthetic/layout.h"
#include "tests/support/synthetic/lighting.h"
#include "tests/support/synthetic/measure.h"
#include "tests/support/synthetic/piece.h"
#include "tests/support/synthetic/pressed.h"
#include "tests/support/synthetic/props.h"
#include "tests/support/synthetic/scene_light.h"

namespace synthetic {
namespace {

// All that does not hang on how much ink there is.
struct Studio {
    const SceneOptions& options;
    Layout layout;
    Surface bare;                 // pressed and folded, but without ink
    std::vector<Pressed> stamps;  // as much ink as was pressed on
    cv::Mat stays;                // of the surface's size: the share of ink that creases leave
    cv::Mat mask;                 // of the surface's size: where the piece is
    cv::Mat there, table;         // of the photo's size: share of the piece, the table around it
    cv::Mat light;                // of the photo's size
};

// The piece on its table, in linear light, as the lens is about to see it.
struct Seen {
    cv::Mat radiance;  // CV_32FC3
    cv::Mat in_sight;  // CV_32FC1
};

Studio setUp(const SceneOptions& options)
{
    Studio studio{options, layOut(options), {}, {}, {}, {}, {}, {}, {}};
    studio.bare = makePiece(studio.layout, options);
    for (const StampOptions& stamp : options.stamps)
        studio.stamps.push_back(pressStamp(
            studio.bare, studio.layout, stamp,
            options.seed * 31 + 100 + 2 * static_cast<std::uint32_t>(studio.stamps.size())));
    studio.stays = creasePiece(studio.bare, studio.layout, options);
    studio.mask = pieceMask(studio.layout, options.piece, options.seed + 6);
    studio.there = toPhoto(studio.mask, studio.layout, options.size_px);
    if (options.piece.width_px > 0)
        studio.table = tableAround(studio.there, options);
    cv::RNG random(options.seed + 8);
    studio.light = lightField(options.size_px, options.light, random);
    return studio;
}

cv::Mat onTable(const cv::Mat& seen, const Studio& studio)
{
    if (studio.table.empty())
        return seen;
    cv::Mat scene = studio.table.clone();
    scene.forEach<cv::Vec3f>([&](cv::Vec3f& value, const int* at) {
        const float share = studio.there.at<float>(at[0], at[1]);
        value = value * (1 - share) + seen.at<cv::Vec3f>(at[0], at[1]) * share;
    });
    return scene;
}

//   amounts  of each stamp's ink, 0 to 1
//   shading  of the finished piece; made here if empty, since ink does not change it
Seen look(const Studio& studio, const std::vector<double>& amounts, Shading& shading)
{
    const SceneOptions& options = studio.options;
    Surface surface{studio.bare.height.clone(), studio.bare.albedo.clone(),
                    studio.bare.take.clone(), studio.bare.gloss.clone()};
    for (std::size_t i = 0; i < amounts.size(); ++i)
        if (amounts[i] > 0)
            dye(surface, studio.stamps[i].density.mul(studio.stays, amounts[i]),
                studio.stamps[i].colour_bgr);
    const cv::Mat sight = finishPiece(surface, studio.layout, options).mul(studio.mask);
    if (shading.amount.empty())
        shading = shadingOf(surface, lightOn(options, options.piece.turn_deg));
    const cv::Mat piece = toPhoto(shaded(surface.albedo, shading), studio.layout, options.size_px);
    Seen seen{onTable(piece, studio), toPhoto(sight, studio.layout, options.size_px)};
    seen.in_sight = seen.in_sight.mul(layProps(seen.radiance, options));
    seen.radiance.forEach<cv::Vec3f>(
        [&](cv::Vec3f& value, const int* at) { value *= studio.light.at<float>(at[0], at[1]); });
    return seen;
}

StampPlace placeOf(const Studio& studio, std::size_t which, const cv::Mat& in_sight, double amount)
{
    const auto seen = [&](const cv::Mat& drawn) {
        return toPhoto(drawn, studio.layout, studio.options.size_px);
    };
    const Pressed& stamp = studio.stamps[which];
    StampPlace place{seen(stamp.place), {}, cv::Mat::zeros(in_sight.size(), CV_32FC1), in_sight};
    place.ink = seen(stamp.density.mul(studio.stays, amount)).mul(in_sight);
    for (std::size_t i = 0; i < studio.stamps.size(); ++i)
        if (i != which)
            cv::max(place.others, seen(studio.stamps[i].place), place.others);
    return place;
}

// Thins the ink of the stamps that ask for a contrast until they have it.
Seen lookWithContrasts(const Studio& studio, std::vector<double>& amounts)
{
    const std::vector<StampOptions>& stamps = studio.options.stamps;
    const auto asks = [](const StampOptions& stamp) { return stamp.contrast.has_value(); };
    const auto asking = std::count_if(stamps.begin(), stamps.end(), asks);
    Shading shading;
    const Seen full = look(studio, amounts, shading);
    if (asking == 0)
        return full;
    std::vector<double> without = amounts;
    for (std::size_t i = 0; i < stamps.size(); ++i)
        if (asks(stamps[i]))
            without[i] = 0;
    const Seen none = look(studio, without, shading);
    for (std::size_t i = 0; i < stamps.size(); ++i)
        if (asks(stamps[i]))
            amounts[i] = inkAmountFor(
                *stamps[i].contrast, {none.radiance, full.radiance},
                contrastPlaces(placeOf(studio, i, full.in_sight, 1), stamps[i].text.letter_px),
                studio.options.camera);
    if (asking > 1)
        return look(studio, amounts, shading);
    // Light is linear in the ink of one stamp.
    const std::size_t one =
        static_cast<std::size_t>(std::find_if(stamps.begin(), stamps.end(), asks) - stamps.begin());
    const double share = amounts[one];
    return {none.radiance * (1 - share) + full.radiance * share, full.in_sight};
}

void tellTruth(DrawnPhoto& photo, const Studio& studio, const std::vector<double>& amounts,
               const cv::Mat& in_sight)
{
    cv::Mat grey, ink = cv::Mat::zeros(in_sight.size(), CV_32FC1), face = ink.clone();
    cv::cvtColor(photo.pixels, grey, cv::COLOR_BGR2GRAY);
    for (std::size_t i = 0; i < studio.stamps.size(); ++i) {
        const StampPlace place = placeOf(studio, i, in_sight, amounts[i]);
        StampTruth truth = seenTruth(studio.stamps[i], in_sight);
        truth.contrast =
            contrastOf(grey, contrastPlaces(place, studio.options.stamps[i].text.letter_px));
        truth.lost = lostShare(place);
        const cv::Mat left = inkLeft(place);
        for (LineTruth& line : truth.lines)
            for (LetterTruth& letter : line.letters)
                letter.inked = inkedShare(letter.corners, place, left);
        photo.stamps.push_back(truth);
        cv::max(ink, place.ink, ink);
        cv::max(face, place.face, face);
    }
    ink.convertTo(photo.ink, CV_8U, 255);
    face.convertTo(photo.face, CV_8U, 255);
    photo.light =
        studio.light.mul(vignette(studio.options.size_px, studio.options.camera.vignetting));
}

void requireShare(const char* field, double value)
{
    if (!(value >= 0 && value <= 1))
        throw std::invalid_argument(std::string(field) + " must be 0 to 1");
}

void check(const SceneOptions& options)
{
    if (options.size_px.width < 32 || options.size_px.height < 32)
        throw std::invalid_argument("SceneOptions::size_px must be at least 32 x 32");
    if (std::abs(options.pitch_deg) > 40 || std::abs(options.yaw_deg) > 40)
        throw std::invalid_argument("SceneOptions::pitch_deg and yaw_deg must be -40 to 40");
    if (options.piece.width_px < 0)
        throw std::invalid_argument("PieceOptions::width_px must not be negative");
    requireShare("DetailOptions::waviness", options.details.waviness);
    requireShare("DetailOptions::fuzz", options.details.fuzz);
    requireShare("SceneLight::unevenness", options.light.unevenness);
    for (const ShadowOptions& shadow : options.light.shadows)
        requireShare("ShadowOptions::depth", shadow.depth);
    for (const PlateOptions& plate : options.details.plates)
        requireShare("PlateOptions::wear", plate.wear);
    for (const StampOptions& stamp : options.stamps) {
        if (stamp.contrast && !(*stamp.contrast >= 0.02 && *stamp.contrast <= 0.9))
            throw std::invalid_argument("StampOptions::contrast must be 0.02 to 0.9");
        if (stamp.depth_px < 0)
            throw std::invalid_argument("StampOptions::depth_px must not be negative");
    }
    for (const StainOptions& stain : options.details.stains)
        requireShare("StainOptions::strength", stain.strength);
}

}  // namespace

DrawnPhoto drawPhoto(const SceneOptions& options)
{
    check(options);
    const Studio studio = setUp(options);
    std::vector<double> amounts(studio.stamps.size(), 1.0);
    const Seen seen = lookWithContrasts(studio, amounts);
    DrawnPhoto photo;
    photo.pixels = photographed(seen.radiance, options.camera, options.seed + 7);
    tellTruth(photo, studio, amounts, seen.in_sight);
    return photo;
}

}  // namespace synthetic
