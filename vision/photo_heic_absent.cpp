#include "vision/photo_heic.h"

namespace vision {

bool canDecodeHeic()
{
    return false;
}

DecodedPicture decodeHeic(std::span<const unsigned char>, double)
{
    DecodedPicture picture;
    picture.fault = PictureFault::Unsupported;
    return picture;
}

}  // namespace vision
