#include <catch2/catch.hpp>
#include <cstdlib>
#include <filesystem>

#include "app/flow/examine.h"
#include "models/typed_notation.h"
#include "tests/support/temporary_folder.h"

namespace {

// Sets an environment variable while it lives.
class Named {
public:
    Named(const char* name, const std::string& value) : name_(name)
    {
        ::setenv(name, value.c_str(), 1);
    }
    ~Named() { ::unsetenv(name_); }
    Named(const Named&) = delete;
    Named& operator=(const Named&) = delete;

private:
    const char* name_;
};

const std::filesystem::path demo_register = WEFTMARK_SOURCE_DIR "/models/register";

}  // namespace

TEST_CASE("The line network is asked first, Tesseract behind it", "[app][engines]")
{
    const flow::Engines engines = flow::makeEngines(demo_register);
    REQUIRE(engines.readers.size() == 1);
    CHECK(engines.readers[0]->name() == "line-reader");
    CHECK(engines.finder.hasNetwork());
    CHECK(engines.upright != nullptr);
    CHECK(engines.troubles.empty());
}

TEST_CASE("Without usable weights the classical path is left, and sentences say why",
          "[app][engines]")
{
    const support::TemporaryFolder empty;
    const Named weights("WEFTMARK_WEIGHTS", empty.path().string());
    const flow::Engines engines = flow::makeEngines(demo_register);
    REQUIRE(engines.readers.size() == 1);
    CHECK(engines.readers[0]->name() == "tesseract");
    CHECK_FALSE(engines.finder.hasNetwork());
    CHECK(engines.upright == nullptr);
    REQUIRE(engines.troubles.size() == 3);  // a network each
    for (const std::string& trouble : engines.troubles) {
        CHECK_THAT(trouble, Catch::Contains(empty.path().string()));
        CHECK_THAT(trouble, Catch::Contains("anew"));
    }
}

// A made photograph, see sample_images/SOURCE.md: a code of two letters above two, in a frame.
TEST_CASE("Two letters above two are read as lines, not as columns", "[app][engines]")
{
    flow::Engines engines = flow::makeEngines(demo_register);
    const flow::Examination seen = flow::examinePhoto(
        std::filesystem::path(WEFTMARK_SOURCE_DIR "/sample_images/medium/roll_coded.jpg"), engines);
    REQUIRE(seen.stamps.size() == 1);
    const std::vector<models::Line>& lines = seen.stamps.front().proposal.lines;
    REQUIRE(lines.size() == 2);
    CHECK(models::writeTyped(lines[0]) == "K7");
    CHECK(models::writeTyped(lines[1]) == "YB");
}
