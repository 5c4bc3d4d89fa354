#include "tests/vision/photo_loading.h"

#include <algorithm>
#include <cstdlib>

#include "tests/support/temporary_folder.h"
#include "vision/image_error.h"

vision::Photo loaded(const picture_files::Bytes& bytes, const vision::LoadOptions& options)
{
    const support::TemporaryFolder folder;
    const auto file = folder.path() / "picture.jpg";
    picture_files::write(file, bytes);
    return vision::loadPhoto(file, options);
}

std::string complaint(const std::filesystem::path& file, const vision::LoadOptions& options)
{
    try {
        vision::loadPhoto(file, options);
    } catch (const vision::ImageError& error) {
        return error.what();
    }
    return "loaded";
}

cv::Mat noise(cv::Size size)
{
    cv::Mat picture(size, CV_8UC3);
    cv::RNG random(17);
    random.fill(picture, cv::RNG::UNIFORM, 60, 200);
    return picture;
}

picture_files::Bytes firstPart(const picture_files::Bytes& whole, double share)
{
    const auto count = static_cast<std::ptrdiff_t>(share * static_cast<double>(whole.size()));
    return {whole.begin(), whole.begin() + count};
}

int distance(const cv::Vec3b& a, const cv::Vec3b& b)
{
    int most = 0;
    for (int c = 0; c < 3; ++c)
        most = std::max(most, std::abs(a[c] - b[c]));
    return most;
}
