#pragma once

#include <filesystem>
#include <functional>
#include <string>
#include <vector>

#include <opencv2/core.hpp>

#include "app/flow/examine.h"
#include "tests/support/temporary_folder.h"

namespace support {

// A reader that sees what the test tells it to, from the stamp it is shown.
class FakeReader : public vision::TextReader {
public:
    using Sight = std::function<std::vector<models::Line>(const vision::EnhancedStamp&)>;

    FakeReader(std::string name, Sight sight) : name_(std::move(name)), sight_(std::move(sight)) {}

    std::string name() const override { return name_; }
    std::string version() const override { return name_ + " 1"; }
    models::Reading read(const vision::EnhancedStamp& stamp) override;
    models::Reading readLine(const vision::EnhancedStamp& stamp) override;

private:
    std::string name_;
    Sight sight_;
};

// Letters that were all read with this certainty.
models::Line seenLine(const std::string& letters, double certainty);

// Sees W. POLGLASE / 1941 in the middle of what writeStampedPhoto and writeMarkedCanvas write, and
// nothing elsewhere: locating may well propose other places.
std::vector<models::Line> seePolglase(const vision::EnhancedStamp& stamp);

// Engines with a register of two makers, WP (Wenna Polglase, 1930 to 1945) and RT (Rufus Tarrow,
// 1946 to 1958), who never were, and one item type, "belt".
flow::Engines enginesWith(std::vector<std::unique_ptr<vision::TextReader>> readers);

// That register as a folder of files.
std::filesystem::path writeRegister(const TemporaryFolder& folder);

// A drawn photograph of canvas with a dark stamp of two lines, in a file.
std::filesystem::path writeStampedPhoto(const TemporaryFolder& folder, const std::string& name);

// Canvas alone, with a red patch above the middle, and the outline of the middle as it would be for
// a stamp that stands on its head.
struct MarkedCanvas {
    std::filesystem::path file;
    vision::Quad upside_down;
};
MarkedCanvas writeMarkedCanvas(const TemporaryFolder& folder);

// Whether the red patch is in the upper half of the rectified stamp.
bool redIsAbove(const vision::EnhancedStamp& stamp);

}  // namespace support
