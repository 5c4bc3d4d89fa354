#pragma once

#include <cstdint>

#include <opencv2/core.hpp>

// Seeded randomness for drawn cloth. The same seed gives the same values on the same machine.
namespace synthetic {

// A value in 0 to 1 for two whole numbers and a seed, without memory: threads ask for theirs.
float hashed(int a, int b, std::uint32_t seed);

// Smooth values along a line: like `hashed` at whole numbers, eased in between.
float hashedAlong(float at, int which, std::uint32_t seed);

// CV_32FC1 of smooth random values, mean 0, deviation about 1, without structure finer than
// `scale_px`; `stretch` makes it that much longer in x.
cv::Mat smoothNoise(cv::Size size, double scale_px, cv::RNG& random, double stretch = 1);

// CV_32FC1 of independent normal values, mean 0, deviation 1.
cv::Mat grainNoise(cv::Size size, cv::RNG& random);

// 0 below `low`, 1 above `high`, eased between; `high` may be below `low`.
float smoothStep(float low, float high, float value);

}  // namespace synthetic
