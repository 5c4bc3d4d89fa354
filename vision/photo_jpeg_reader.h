#pragma once

#include <array>
#include <csetjmp>
#include <cstdio>
#include <span>
#include <vector>

#include <jpeglib.h>
#include <opencv2/core.hpp>

#include "vision/decoded_picture.h"
#include "vision/photo_colour.h"

namespace vision {

// The steps of decoding a JPEG through libjpeg, in order: header, then what it tells, start, rows.
// Each step answers false where the file holds no more that can be used; what is wrong with it is
// in fault() then.
// libjpeg reports errors through functions that must not return, and longjmp must not pass over
// C++ objects: everything that outlives a step is a member, and the steps that may jump hold plain
// values only.
class JpegReader {
public:
    explicit JpegReader(std::span<const unsigned char> bytes);
    ~JpegReader() { jpeg_destroy_decompress(&jpeg_); }
    JpegReader(const JpegReader&) = delete;
    JpegReader& operator=(const JpegReader&) = delete;

    bool readHeader();
    bool start();
    bool readRows(cv::Mat& rows);
    void takeExif(std::vector<unsigned char>& exif) const;
    std::vector<unsigned char> colourProfile();

    cv::Size size() const;
    int channels() const { return jpeg_.output_components; }
    SampleLayout layout() const;
    PictureFault fault() const { return fault_; }
    double whole() const { return whole_; }

private:
    static JpegReader& of(j_common_ptr jpeg);
    static void onError(j_common_ptr jpeg);
    static void onMessage(j_common_ptr jpeg, int level);
    static boolean onEnd(j_decompress_ptr jpeg);
    static void onSkip(j_decompress_ptr jpeg, long count);
    static void onProgress(j_common_ptr jpeg);

    void noteFault(PictureFault fault);
    double shareSoFar() const;

    jpeg_decompress_struct jpeg_{};
    jpeg_error_mgr errors_{};
    jpeg_source_mgr source_{};
    jpeg_progress_mgr progress_{};
    std::jmp_buf back_{};
    PictureFault fault_ = PictureFault::None;
    double whole_ = 1;
    bool decoding_ = false;
    const std::array<JOCTET, 2> end_marker_ = {0xFF, JPEG_EOI};
};

}  // namespace vision
