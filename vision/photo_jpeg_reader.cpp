#include "vision/photo_jpeg_reader.h"

#include <algorithm>
#include <cstdlib>
#include <cstring>

#include <jerror.h>

namespace vision {

namespace {

constexpr int most_scans = 100;  // cameras write about ten; thousands are an attack on patience

}  // namespace

JpegReader& JpegReader::of(j_common_ptr jpeg)
{
    return *static_cast<JpegReader*>(jpeg->client_data);
}

JpegReader::JpegReader(std::span<const unsigned char> bytes)
{
    jpeg_.err = jpeg_std_error(&errors_);
    jpeg_.client_data = this;
    errors_.error_exit = onError;
    errors_.emit_message = onMessage;
    errors_.output_message = [](j_common_ptr) {};
    jpeg_CreateDecompress(&jpeg_, JPEG_LIB_VERSION, sizeof(jpeg_));

    source_.next_input_byte = bytes.data();
    source_.bytes_in_buffer = bytes.size();
    source_.init_source = [](j_decompress_ptr) {};
    source_.fill_input_buffer = onEnd;
    source_.skip_input_data = onSkip;
    source_.resync_to_restart = jpeg_resync_to_restart;
    source_.term_source = [](j_decompress_ptr) {};
    jpeg_.src = &source_;
    progress_.progress_monitor = onProgress;
    jpeg_.progress = &progress_;
}

void JpegReader::noteFault(PictureFault fault)
{
    if (fault_ != PictureFault::None)
        return;  // the first one says from where on the picture is not to be trusted
    fault_ = fault;
    whole_ = decoding_ ? shareSoFar() : 0;
}

void JpegReader::onError(j_common_ptr jpeg)
{
    JpegReader& reader = of(jpeg);
    switch (jpeg->err->msg_code) {
        case JERR_BAD_PRECISION:
        case JERR_SOF_UNSUPPORTED:
        case JERR_CONVERSION_NOTIMPL:
        case JERR_COMPONENT_COUNT:
        case JERR_CCIR601_NOTIMPL:
        case JERR_FRACT_SAMPLE_NOTIMPL:
        case JERR_NOT_COMPILED:
            reader.noteFault(PictureFault::Unsupported);
            break;
        default:
            reader.noteFault(PictureFault::Damaged);
    }
    std::longjmp(reader.back_, 1);
}

void JpegReader::onMessage(j_common_ptr jpeg, int level)
{
    if (level >= 0)
        return;
    switch (jpeg->err->msg_code) {
        case JWRN_EXTRANEOUS_DATA:  // old cameras pad their segments
        case JWRN_ADOBE_XFORM:
        case JWRN_BOGUS_ICC:
        case JWRN_BOGUS_PROGRESSION:
        case JWRN_JFIF_MAJOR:
        case JWRN_NOT_SEQUENTIAL:
        case JWRN_TOO_MUCH_DATA:
            break;
        default:
            of(jpeg).noteFault(PictureFault::Damaged);
    }
}

boolean JpegReader::onEnd(j_decompress_ptr jpeg)
{
    JpegReader& reader = of(reinterpret_cast<j_common_ptr>(jpeg));
    reader.noteFault(PictureFault::Torn);
    jpeg->src->next_input_byte = reader.end_marker_.data();
    jpeg->src->bytes_in_buffer = reader.end_marker_.size();
    return TRUE;
}

void JpegReader::onSkip(j_decompress_ptr jpeg, long count)
{
    if (count <= 0)
        return;
    if (static_cast<std::size_t>(count) > jpeg->src->bytes_in_buffer) {
        onEnd(jpeg);
        return;
    }
    jpeg->src->next_input_byte += count;
    jpeg->src->bytes_in_buffer -= static_cast<std::size_t>(count);
}

void JpegReader::onProgress(j_common_ptr jpeg)
{
    JpegReader& reader = of(jpeg);
    if (jpeg->is_decompressor == FALSE || reader.jpeg_.input_scan_number <= most_scans)
        return;
    reader.noteFault(PictureFault::Damaged);
    std::longjmp(reader.back_, 1);
}

// A progressive picture comes in scans, each over the whole height: what counts is how many of the
// coefficients are known, and how exactly. One in plain scans counts its components; one scan its
// rows.
double JpegReader::shareSoFar() const
{
    const double scan =
        jpeg_.total_iMCU_rows == 0
            ? 0
            : std::min(1.0, static_cast<double>(jpeg_.input_iMCU_row) / jpeg_.total_iMCU_rows);
    const auto inThisScan = [&](int component) {
        for (int i = 0; i < jpeg_.comps_in_scan; ++i)
            // A scan header that fails half-way leaves components unset.
            if (jpeg_.cur_comp_info[i] != nullptr &&
                jpeg_.cur_comp_info[i]->component_index == component)
                return true;
        return false;
    };
    double known = 0;
    for (int component = 0; component < jpeg_.num_components; ++component) {
        const bool current = inThisScan(component);
        if (jpeg_.coef_bits == nullptr) {
            const bool started = jpeg_.comp_info[component].quant_table != nullptr;
            known += current ? scan : (started ? 1 : 0);
            continue;
        }
        for (int k = 0; k < DCTSIZE2; ++k) {
            const auto exactness = [](int missing_bits) {
                return missing_bits < 0 ? 0.0 : 1.0 / (1 + missing_bits);
            };
            const int bits = jpeg_.coef_bits[component][k];
            double share = exactness(bits);
            if (current && k >= jpeg_.Ss && k <= jpeg_.Se)
                share = scan * share + (1 - scan) * exactness(jpeg_.Ah == 0 ? -1 : jpeg_.Ah);
            known += share / DCTSIZE2;
        }
    }
    return known / std::max(1, jpeg_.num_components);
}

bool JpegReader::readHeader()
{
    if (setjmp(back_) != 0)
        return false;
    jpeg_save_markers(&jpeg_, JPEG_APP0 + 1, 0xFFFF);
    jpeg_save_markers(&jpeg_, JPEG_APP0 + 2, 0xFFFF);
    return jpeg_read_header(&jpeg_, TRUE) == JPEG_HEADER_OK && fault_ == PictureFault::None;
}

cv::Size JpegReader::size() const
{
    return {static_cast<int>(jpeg_.image_width), static_cast<int>(jpeg_.image_height)};
}

bool JpegReader::start()
{
    if (setjmp(back_) != 0)
        return false;
    const bool inks = jpeg_.jpeg_color_space == JCS_CMYK || jpeg_.jpeg_color_space == JCS_YCCK;
    const bool grey = jpeg_.jpeg_color_space == JCS_GRAYSCALE;
    jpeg_.out_color_space = inks ? JCS_CMYK : grey ? JCS_GRAYSCALE : JCS_EXT_BGR;
    decoding_ = true;
    return jpeg_start_decompress(&jpeg_) != FALSE;
}

bool JpegReader::readRows(cv::Mat& rows)
{
    if (setjmp(back_) != 0)
        return false;
    while (jpeg_.output_scanline < jpeg_.output_height) {
        JSAMPROW row = rows.ptr(static_cast<int>(jpeg_.output_scanline));
        jpeg_read_scanlines(&jpeg_, &row, 1);
    }
    jpeg_finish_decompress(&jpeg_);
    return true;
}

void JpegReader::takeExif(std::vector<unsigned char>& exif) const
{
    static constexpr std::array<unsigned char, 6> prefix = {'E', 'x', 'i', 'f', 0, 0};
    for (auto marker = jpeg_.marker_list; marker != nullptr; marker = marker->next) {
        const std::span<const unsigned char> data(marker->data, marker->data_length);
        if (marker->marker != JPEG_APP0 + 1 || data.size() <= prefix.size() ||
            !std::equal(prefix.begin(), prefix.end(), data.begin()))
            continue;
        exif.assign(data.begin() + prefix.size(), data.end());
        return;
    }
}

std::vector<unsigned char> JpegReader::colourProfile()
{
    JOCTET* data = nullptr;
    unsigned int length = 0;
    if (setjmp(back_) != 0 || jpeg_read_icc_profile(&jpeg_, &data, &length) == FALSE)
        return {};
    std::vector<unsigned char> profile(data, data + length);
    std::free(data);
    return profile;
}

// Adobe's programs, whose marker tells, store light where the standard has ink.
SampleLayout JpegReader::layout() const
{
    if (jpeg_.out_color_space == JCS_GRAYSCALE)
        return {ColourModel::Grey};
    if (jpeg_.out_color_space == JCS_CMYK)
        return {jpeg_.saw_Adobe_marker != FALSE ? ColourModel::CmykInverted : ColourModel::Cmyk};
    return {ColourModel::Bgr};
}

}  // namespace vision
