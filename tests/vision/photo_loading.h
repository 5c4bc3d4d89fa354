#pragma once

#include <filesystem>
#include <string>

#include <opencv2/core.hpp>

#include "tests/support/picture_files.h"
#include "vision/photo.h"

// What the tests of loading share.

// The photo that these bytes are, under a name whose ending is often wrong.
vision::Photo loaded(const picture_files::Bytes& bytes, const vision::LoadOptions& options = {});

// What loading the file complains of; "loaded" when it does not.
std::string complaint(const std::filesystem::path& file, const vision::LoadOptions& options = {});

// Noise, so that every row takes about the same number of bytes.
cv::Mat noise(cv::Size size);

// That share of a file's bytes, from the beginning.
picture_files::Bytes firstPart(const picture_files::Bytes& whole, double share);

// Largest difference of a channel between two colours.
int distance(const cv::Vec3b& a, const cv::Vec3b& b);
