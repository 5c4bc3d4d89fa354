#include "vision/photo_png.h"

#include <csetjmp>
#include <cstring>

#include <png.h>

namespace vision {
namespace {

struct PngInput {
    std::span<const unsigned char> bytes;
    std::size_t at = 0;
    bool ended = false;  // more was asked for than there is
};

void readFromMemory(png_structp png, png_bytep to, png_size_t count)
{
    auto& input = *static_cast<PngInput*>(png_get_io_ptr(png));
    if (count > input.bytes.size() - input.at) {
        input.ended = true;
        png_error(png, "the file ends");
    }
    std::memcpy(to, input.bytes.data() + input.at, count);
    input.at += count;
}

void jumpBack(png_structp png, png_const_charp)
{
    png_longjmp(png, 1);
}

void staySilent(png_structp, png_const_charp)
{
}

// libpng reports errors by longjmp, which must not pass over C++ objects: everything that outlives
// a step is a member, and the steps that may jump hold plain values only.
class PngReader {
public:
    explicit PngReader(std::span<const unsigned char> bytes) : input_{bytes}
    {
        png_ = png_create_read_struct(PNG_LIBPNG_VER_STRING, nullptr, jumpBack, staySilent);
        if (png_ != nullptr)
            info_ = png_create_info_struct(png_);
    }
    ~PngReader() { png_destroy_read_struct(&png_, &info_, nullptr); }
    PngReader(const PngReader&) = delete;
    PngReader& operator=(const PngReader&) = delete;

    bool readHeader();
    bool setUp();
    bool readRows();
    bool readEnd();
    void takeExif(std::vector<unsigned char>& exif);

    cv::Size size() const;
    cv::Mat raw;  // CV_8UC3, or CV_8UC4 where something is transparent
    bool ended() const { return input_.ended; }
    double wholeShare() const;

private:
    PngInput input_;
    png_structp png_ = nullptr;
    png_infop info_ = nullptr;
    int passes_ = 1, pass_ = 0, row_ = 0;
};

bool PngReader::readHeader()
{
    if (png_ == nullptr || info_ == nullptr || setjmp(png_jmpbuf(png_)) != 0)
        return false;
    png_set_read_fn(png_, &input_, readFromMemory);
    png_read_info(png_, info_);
    return true;
}

cv::Size PngReader::size() const
{
    return {static_cast<int>(png_get_image_width(png_, info_)),
            static_cast<int>(png_get_image_height(png_, info_))};
}

// Brings every kind to 8-bit BGR, with alpha only where something is transparent.
bool PngReader::setUp()
{
    if (setjmp(png_jmpbuf(png_)) != 0)
        return false;
    png_set_scale_16(png_);
    png_set_expand(png_);
    png_set_gray_to_rgb(png_);
    png_set_bgr(png_);
    passes_ = png_set_interlace_handling(png_);
    png_read_update_info(png_, info_);
    return true;
}

bool PngReader::readRows()
{
    const int channels = png_get_channels(png_, info_);
    if (channels != 3 && channels != 4)
        return false;
    raw = cv::Mat(size(), CV_8UC(channels), cv::Scalar::all(255));
    if (setjmp(png_jmpbuf(png_)) != 0)
        return false;
    for (pass_ = 0; pass_ < passes_; ++pass_)
        for (row_ = 0; row_ < raw.rows; ++row_)
            png_read_row(png_, raw.ptr(row_), nullptr);
    return true;
}

bool PngReader::readEnd()
{
    if (setjmp(png_jmpbuf(png_)) != 0)
        return false;
    png_read_end(png_, info_);
    return true;
}

void PngReader::takeExif(std::vector<unsigned char>& exif)
{
    png_uint_32 length = 0;
    png_bytep block = nullptr;
    if (png_get_eXIf_1(png_, info_, &length, &block) != 0 && block != nullptr)
        exif.assign(block, block + length);
}

// An interlaced picture is whole only with its last pass, which holds every other row.
double PngReader::wholeShare() const
{
    const double rows = raw.empty() ? 0 : static_cast<double>(row_) / raw.rows;
    if (passes_ == 1)
        return rows;
    return pass_ < passes_ - 1 ? 0.5 * pass_ / passes_ : 0.5 + 0.5 * rows;
}

cv::Mat onWhite(const cv::Mat& bgra)
{
    cv::Mat bgr(bgra.size(), CV_8UC3);
    bgr.forEach<cv::Vec3b>([&](cv::Vec3b& to, const int* at) {
        const auto& from = bgra.at<cv::Vec4b>(at[0], at[1]);
        for (int c = 0; c < 3; ++c)
            to[c] = static_cast<uchar>((from[c] * from[3] + 255 * (255 - from[3]) + 127) / 255);
    });
    return bgr;
}

}  // namespace

DecodedPicture decodePng(std::span<const unsigned char> bytes, double max_pixels)
{
    DecodedPicture picture;
    PngReader reader(bytes);
    const auto fault = [&] { return reader.ended() ? PictureFault::Torn : PictureFault::Damaged; };
    if (!reader.readHeader()) {
        picture.fault = fault();
        return picture;
    }
    picture.size_px = reader.size();
    if (static_cast<double>(picture.size_px.width) * picture.size_px.height > max_pixels) {
        picture.fault = PictureFault::TooLarge;
        return picture;
    }
    if (!reader.setUp() || !reader.readRows()) {
        picture.fault = fault();
        picture.whole = reader.wholeShare();
    } else {
        picture.whole = 1;
        if (!reader.readEnd())
            picture.fault = fault();
    }
    reader.takeExif(picture.exif);
    if (!reader.raw.empty())
        picture.pixels = reader.raw.channels() == 4 ? onWhite(reader.raw) : reader.raw;
    return picture;
}

}  // namespace vision
