#include "vision/photo_jpeg.h"

#include "vision/photo_colour.h"
#include "vision/photo_jpeg_reader.h"

namespace vision {

namespace {

// The file with what an interrupted copy fills in its place, a long run of zeros, taken off.
std::span<const unsigned char> withoutZeroTail(std::span<const unsigned char> bytes)
{
    constexpr std::size_t long_run = 64;
    std::size_t end = bytes.size();
    while (end > 0 && bytes[end - 1] == 0)
        --end;
    return bytes.size() - end >= long_run ? bytes.first(end) : bytes;
}

}  // namespace

DecodedPicture decodeJpeg(std::span<const unsigned char> bytes, double max_pixels)
{
    DecodedPicture picture;
    JpegReader reader(withoutZeroTail(bytes));
    const bool header = reader.readHeader();
    picture.fault = reader.fault();
    if (!header)
        return picture;
    picture.size_px = reader.size();
    reader.takeExif(picture.exif);
    const auto profile = reader.colourProfile();
    if (isOverLimit(picture.size_px, max_pixels)) {
        picture.fault = PictureFault::TooLarge;
        return picture;
    }
    cv::Mat rows;
    bool decoded = reader.start();
    if (decoded) {
        rows = cv::Mat(picture.size_px, CV_8UC(reader.channels()), cv::Scalar::all(128));
        decoded = reader.readRows(rows);
    }
    picture.fault = reader.fault();
    picture.whole = reader.whole();
    if (rows.empty())
        return picture;
    const ToSrgb to_srgb(reader.layout(), profile);
    picture.profile_left_out = !profile.empty() && !to_srgb.followsProfile();
    picture.pixels = to_srgb.convert(rows);
    return picture;
}

}  // namespace vision
