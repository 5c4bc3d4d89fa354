#include "vision/photo_png.h"

#include <bit>
#include <csetjmp>
#include <cstring>

#include <png.h>

#include "vision/photo_colour.h"

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
    std::vector<unsigned char> colourProfile();
    SampleLayout layout() const;

    cv::Size size() const;
    cv::Mat raw;  // 8 or 16 bits; grey or BGR, with alpha where something is transparent
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

// Brings every kind to grey or BGR of whole bytes, with alpha only where something is transparent.
bool PngReader::setUp()
{
    if (setjmp(png_jmpbuf(png_)) != 0)
        return false;
    png_set_expand(png_);
    if constexpr (std::endian::native == std::endian::little)
        png_set_swap(png_);  // samples of 16 bits
    png_set_bgr(png_);
    passes_ = png_set_interlace_handling(png_);
    png_read_update_info(png_, info_);
    return true;
}

bool PngReader::readRows()
{
    const int depth = png_get_bit_depth(png_, info_) == 16 ? CV_16U : CV_8U;
    raw = cv::Mat(size(), CV_MAKETYPE(depth, png_get_channels(png_, info_)),
                  cv::Scalar::all(depth == CV_16U ? 65535 : 255));
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

std::vector<unsigned char> PngReader::colourProfile()
{
    png_charp name = nullptr;
    int compression = 0;
    png_bytep profile = nullptr;
    png_uint_32 length = 0;
    if (png_get_iCCP(png_, info_, &name, &compression, &profile, &length) == 0)
        return {};
    return {profile, profile + length};
}

SampleLayout PngReader::layout() const
{
    const int channels = raw.channels();
    return {channels < 3 ? ColourModel::Grey : ColourModel::Bgr,
            channels % 2 == 0 ? AlphaKind::Straight : AlphaKind::None};
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
    if (isOverLimit(picture.size_px, max_pixels)) {
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
    if (reader.raw.empty())
        return picture;
    const auto profile = reader.colourProfile();
    const ToSrgb to_srgb(reader.layout(), profile);
    picture.profile_left_out = !profile.empty() && !to_srgb.followsProfile();
    picture.pixels = to_srgb.convert(reader.raw);
    return picture;
}

}  // namespace vision
