#pragma once

#include <memory>
#include <span>

#include <tiffio.h>

#include "vision/decoded_picture.h"

namespace vision {

// A TIFF in memory as libtiff wants to read it, silently.
class TiffFile {
public:
    // No single allocation of libtiff may be larger than `most_bytes`.
    TiffFile(std::span<const unsigned char> bytes, tmsize_t most_bytes);

    TIFF* tiff() const { return tiff_.get(); }  // null when the file has no sound directory

    // Whether the file ends before its directory or before the end of what that points to.
    bool isShort() const;

    // Orientation and capture facts; leaves libtiff at another directory.
    ExifFacts facts() const;

private:
    struct Close {
        void operator()(TIFF* tiff) const { TIFFClose(tiff); }
    };
    struct Source {
        std::span<const unsigned char> bytes;
        std::uint64_t at = 0;
    };

    static tmsize_t read(thandle_t handle, void* to, tmsize_t count);
    static toff_t seek(thandle_t handle, toff_t offset, int whence);

    std::unique_ptr<Source> source_;  // libtiff keeps its address
    std::unique_ptr<TIFF, Close> tiff_;
};

}  // namespace vision
