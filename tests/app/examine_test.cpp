#include "app/flow/examine.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include <catch2/catch.hpp>
#include <opencv2/imgcodecs.hpp>

#include "app/flow/filing.h"
#include "app/flow/register_hash.h"
#include "tests/app/fake_reader.h"
#include "tests/support/picture_files.h"
#include "vision/image_error.h"

using support::FakeReader;
using support::seenLine;
using support::TemporaryFolder;

namespace {

std::vector<std::unique_ptr<vision::TextReader>> one(FakeReader::Sight sight)
{
    std::vector<std::unique_ptr<vision::TextReader>> readers;
    readers.push_back(std::make_unique<FakeReader>("fake", std::move(sight)));
    return readers;
}

double sumOf(const models::CandidateList& list)
{
    double sum = list.other_makers + list.unknown_maker;
    for (const models::Candidate& candidate : list.candidates)
        sum += candidate.probability;
    return sum;
}

double cornerGap(const flow::StampExamination& stamp)
{
    // The rectified picture's margin is the same on all sides, so its centre is the outline's.
    const cv::Mat& pixels = stamp.enhanced.rectified.pixels;
    const cv::Point2d centre = vision::photoFromRectified(
        stamp.enhanced.rectified, {(pixels.cols - 1) / 2.0, (pixels.rows - 1) / 2.0});
    cv::Point2f outline{};
    for (const cv::Point2f& corner : stamp.outline.corners)
        outline += corner * 0.25F;
    return std::hypot(centre.x - static_cast<double>(outline.x),
                      centre.y - static_cast<double>(outline.y));
}

}  // namespace

TEST_CASE("A photograph goes the whole way to its candidates", "[app][examine]")
{
    const TemporaryFolder folder;
    flow::Engines engines = support::enginesWith(one(support::seePolglase));
    std::vector<std::string> stages;
    double before = -1;

    const flow::Examination examination =
        flow::examinePhoto(support::writeStampedPhoto(folder, "belt.jpg"), engines,
                           {.type_id = "belt"}, {}, [&](const std::string& stage, double done) {
                               stages.push_back(stage);
                               CHECK(done > before);
                               CHECK(done <= 1);
                               before = done;
                           });

    REQUIRE_FALSE(examination.stamps.empty());
    const auto read =
        std::find_if(examination.stamps.begin(), examination.stamps.end(),
                     [](const flow::StampExamination& one) { return !one.proposal.lines.empty(); });
    REQUIRE(read != examination.stamps.end());
    const flow::StampExamination& stamp = *read;
    CHECK(models::plainText(stamp.proposal.lines.at(0)) == "W. POLGLASE");
    CHECK(stamp.readings.size() == 1);
    CHECK_FALSE(stamp.enhanced.layers.empty());
    REQUIRE_FALSE(examination.candidates.candidates.empty());
    CHECK(examination.candidates.candidates[0].maker_id == "polglase");
    REQUIRE_FALSE(examination.candidates.candidates[0].years.empty());
    CHECK(examination.candidates.candidates[0].years[0].year == 1941);
    CHECK(sumOf(examination.candidates) == Approx(1).margin(1e-6));  // the contract's tolerance
    CHECK(sumOf(stamp.candidates) == Approx(1).margin(1e-6));
    REQUIRE(stages.size() >= 4);
    CHECK(stages.front() == "loading");
}

TEST_CASE("A stamp that stands on its head is turned, its outline with it", "[app][examine]")
{
    const TemporaryFolder folder;
    const support::MarkedCanvas canvas = support::writeMarkedCanvas(folder);
    flow::Engines engines = support::enginesWith(
        one([](const vision::EnhancedStamp& stamp) -> std::vector<models::Line> {
            return {seenLine("WP", support::redIsAbove(stamp) ? 0.9 : 0.1)};
        }));

    const flow::Examination examination =
        flow::examinePhoto(canvas.file, engines, {.outline = canvas.upside_down});

    const flow::StampExamination& stamp = examination.stamps.at(0);
    CHECK(support::redIsAbove(stamp.enhanced));
    CHECK(stamp.outline.corners[0] == canvas.upside_down[2]);  // the upper left
    CHECK(stamp.outline.corners[1] == canvas.upside_down[3]);
    // Turned by nothing, whichever way round a circle of 360 degrees that is said.
    CHECK(std::cos(stamp.outline.up_deg * CV_PI / 180) == Approx(1).margin(1e-9));
    CHECK(stamp.outline.up_deg == stamp.enhanced.rectified.up_deg);
    CHECK(cornerGap(stamp) < 1);  // half a pixel each way from rounding the picture's size
}

TEST_CASE("Where two readers differ on the way up, the surer one settles it", "[app][examine]")
{
    const TemporaryFolder folder;
    const support::MarkedCanvas canvas = support::writeMarkedCanvas(folder);
    std::vector<std::unique_ptr<vision::TextReader>> readers;
    readers.push_back(std::make_unique<FakeReader>(
        "unsure", [](const vision::EnhancedStamp& stamp) -> std::vector<models::Line> {
            return {support::redIsAbove(stamp) ? seenLine("UP", 0.1) : seenLine("DOWN", 0.4)};
        }));
    readers.push_back(std::make_unique<FakeReader>(
        "sure", [](const vision::EnhancedStamp& stamp) -> std::vector<models::Line> {
            return {support::redIsAbove(stamp) ? seenLine("UPRIGHT", 0.9) : seenLine("X", 0.1)};
        }));
    flow::Engines engines = support::enginesWith(std::move(readers));
    engines.sure_from = 1;  // both are asked

    const flow::Examination examination =
        flow::examinePhoto(canvas.file, engines, {.outline = canvas.upside_down});

    const flow::StampExamination& stamp = examination.stamps.at(0);
    CHECK(support::redIsAbove(stamp.enhanced));
    CHECK(models::plainText(stamp.readings.at(0).lines.at(0)) == "UP");  // read again, turned
    CHECK(models::plainText(stamp.readings.at(1).lines.at(0)) == "UPRIGHT");
}

TEST_CASE("A reader is asked only where those before it are not sure", "[app][examine]")
{
    const TemporaryFolder folder;
    const support::MarkedCanvas canvas = support::writeMarkedCanvas(folder);
    for (const double certainty : {0.9, 0.2}) {
        CAPTURE(certainty);
        std::vector<std::unique_ptr<vision::TextReader>> readers;
        readers.push_back(std::make_unique<FakeReader>(
            "line-reader", [&](const vision::EnhancedStamp&) -> std::vector<models::Line> {
                return {seenLine("HULL", certainty)};
            }));
        readers.push_back(std::make_unique<FakeReader>(
            "tesseract", [](const vision::EnhancedStamp&) -> std::vector<models::Line> {
                return {seenLine("HILL", 0.3)};
            }));
        flow::Engines engines = support::enginesWith(std::move(readers));
        engines.sure_from = 0.5;

        const flow::Examination examination =
            flow::examinePhoto(canvas.file, engines, {.outline = canvas.upside_down});

        const flow::StampExamination& stamp = examination.stamps.at(0);
        CHECK(stamp.readings.size() == (certainty > 0.5 ? 1 : 2));
        CHECK(models::plainText(stamp.proposal.lines.at(0)).substr(0, 1) == "H");
    }
}

TEST_CASE("An outline or a single line is taken as given, nothing is located", "[app][examine]")
{
    const TemporaryFolder folder;
    const support::MarkedCanvas canvas = support::writeMarkedCanvas(folder);
    flow::Engines engines = support::enginesWith(
        one([](const vision::EnhancedStamp&) { return std::vector<models::Line>{{}}; }));

    const flow::Examination outlined =
        flow::examinePhoto(canvas.file, engines, {.outline = canvas.upside_down});
    REQUIRE(outlined.stamps.size() == 1);
    CHECK(outlined.stamps[0].outline.score == 1);
    CHECK(outlined.stamps[0].proposal.lines.empty());  // a line without cells is none

    CHECK(flow::examinePhoto(canvas.file, engines, {.single_line = true}).stamps.size() == 1);
}

TEST_CASE("A crop too small for a letter is refused with its size and what to do", "[app][examine]")
{
    const TemporaryFolder folder;
    const std::filesystem::path file = folder.path() / "sliver.png";
    REQUIRE(cv::imwrite(file.string(), cv::Mat(40, 1, CV_8UC1, cv::Scalar(128))));
    flow::Engines engines = support::enginesWith(one(support::seePolglase));

    CHECK_THROWS_WITH(flow::examinePhoto(file, engines, {.single_line = true}),
                      Catch::Contains("sliver.png is 1 x 40 pixels") &&
                          Catch::Contains("cut out the line"));
}

TEST_CASE("What hinders reading a mark is told among the photo's warnings", "[app][examine]")
{
    const TemporaryFolder folder;
    const support::MarkedCanvas canvas = support::writeMarkedCanvas(folder);
    flow::Engines engines = support::enginesWith(one(support::seePolglase));
    const flow::ExamineOptions outlined{.outline = canvas.upside_down};
    CHECK(flow::examinePhoto(canvas.file, engines, outlined).photo.warnings.empty());

    const std::filesystem::path burnt = folder.path() / "burnt.png";
    picture_files::write(burnt,
                         picture_files::png(cv::Mat(400, 600, CV_8UC3, cv::Scalar::all(255))));
    const auto warnings = flow::examinePhoto(burnt, engines, outlined).photo.warnings;
    REQUIRE(warnings.size() == 1);
    CHECK_THAT(warnings[0], Catch::Contains("burnt out to white"));
}

TEST_CASE("A stop is heeded before every stage", "[app][examine]")
{
    const TemporaryFolder folder;
    const std::filesystem::path photo = support::writeStampedPhoto(folder, "belt.jpg");
    flow::Engines engines = support::enginesWith(one(support::seePolglase));
    std::size_t stages = 0;
    flow::examinePhoto(photo, engines, {}, {}, [&](const std::string&, double) { ++stages; });
    REQUIRE(stages >= 4);

    for (std::size_t stop_at = 0; stop_at + 1 < stages; ++stop_at) {
        CAPTURE(stop_at);
        std::stop_source source;
        std::size_t told = 0;
        const auto stopping = [&](const std::string&, double) {
            if (told++ == stop_at)
                source.request_stop();
        };
        CHECK_THROWS_AS(flow::examinePhoto(photo, engines, {}, source.get_token(), stopping),
                        flow::Cancelled);
        CHECK(told == stop_at + 1);
    }
    std::stop_source source;
    source.request_stop();
    CHECK_THROWS_AS(flow::examinePhoto(photo, engines, {}, source.get_token()), flow::Cancelled);
}

TEST_CASE("An examination refuses what it cannot do", "[app][examine]")
{
    const TemporaryFolder folder;
    const support::MarkedCanvas canvas = support::writeMarkedCanvas(folder);
    flow::Engines engines = support::enginesWith(one(support::seePolglase));

    CHECK_THROWS_AS(flow::examinePhoto(canvas.file, engines,
                                       {.outline = canvas.upside_down, .single_line = true}),
                    std::invalid_argument);
    CHECK_THROWS_AS(flow::examinePhoto(canvas.file, engines, {.type_id = "no such"}),
                    std::invalid_argument);
    CHECK_THROWS_AS(flow::examinePhoto(folder.path() / "none.jpg", engines), vision::ImageError);
    engines.readers.clear();
    CHECK_THROWS_AS(flow::examinePhoto(canvas.file, engines), std::invalid_argument);
}

TEST_CASE("Marks of one item are weighed together", "[app][examine]")
{
    const flow::Engines engines = support::enginesWith(one(support::seePolglase));
    models::Reading maker, year, nothing;
    maker.lines = {seenLine("R. TARROW", 0.9)};
    year.lines = {seenLine("1950", 0.9)};

    const models::CandidateList together =
        flow::rankReadings({maker, nothing, year}, engines.known, "belt");
    REQUIRE_FALSE(together.candidates.empty());
    CHECK(together.candidates[0].maker_id == "tarrow");
    REQUIRE_FALSE(together.candidates[0].years.empty());
    CHECK(together.candidates[0].years[0].year == 1950);
    CHECK(sumOf(flow::rankReadings({nothing}, engines.known, "")) == Approx(1).margin(1e-6));
}

TEST_CASE("What was examined is filed as it was seen", "[app][filing]")
{
    const TemporaryFolder folder;
    const support::MarkedCanvas canvas = support::writeMarkedCanvas(folder);
    flow::Engines engines = support::enginesWith(one(support::seePolglase));
    const flow::Examination examination =
        flow::examinePhoto(canvas.file, engines, {.outline = canvas.upside_down});

    const models::PhotoRecord photo = flow::photoRecord(examination.photo);
    CHECK(photo.file == canvas.file);
    CHECK(photo.original_name == "canvas.png");
    CHECK(photo.width_px == 600);
    CHECK(photo.height_px == 400);
    CHECK(photo.sha256.size() == 64);

    const models::StampRecord stamp =
        flow::stampRecord(examination.photo, examination.stamps.at(0), "1956-03-01T12:00:00Z");
    REQUIRE(stamp.views.size() == 1);
    CHECK(stamp.views[0].photo_sha256 == photo.sha256);
    CHECK(stamp.views[0].outline_px ==
          std::array<double, 8>{450, 250, 150, 250, 150, 150, 450, 150});
    REQUIRE(stamp.views[0].readings.size() == 1);
    models::Reading reading = examination.stamps[0].readings[0];
    reading.read_at = "1956-03-01T12:00:00Z";
    CHECK(stamp.views[0].readings[0].reading == reading);

    const models::AttributionRecord attribution =
        flow::attributionRecord("polglase", engines.known, examination.candidates);
    CHECK(attribution.maker_name == "Wenna Polglase");
    CHECK(attribution.mark == "W. POLGLASE");
    CHECK_FALSE(attribution.engine_reasons.empty());
    CHECK(flow::attributionRecord("nobody", engines.known, {}).maker_name == "nobody");
}

TEST_CASE("A register's hash changes with what it says", "[app][filing]")
{
    const TemporaryFolder folder;
    const std::filesystem::path known = support::writeRegister(folder);
    const std::string before = flow::registerSha256(known);
    CHECK(before.size() == 64);
    folder.write("register/SOURCE.md", "not a part of it");
    CHECK(flow::registerSha256(known) == before);
    folder.write("register/spellings.csv", "text,same_as\nLTD,LIMITED\n");
    CHECK(flow::registerSha256(known) != before);
    CHECK_THROWS_AS(flow::registerSha256(folder.path() / "none"), models::RegisterError);
}

TEST_CASE("Readings of a mirror image are marked as such, others are not", "[app][examine]")
{
    const TemporaryFolder folder;
    const support::MarkedCanvas canvas = support::writeMarkedCanvas(folder);
    flow::Engines engines =
        support::enginesWith(one([](const vision::EnhancedStamp&) -> std::vector<models::Line> {
            return {seenLine("WP", 0.9)};
        }));
    for (const bool mirrored : {false, true}) {
        const auto examination = flow::examinePhoto(
            canvas.file, engines, {.outline = canvas.upside_down, .mirrored = mirrored});
        const flow::StampExamination& stamp = examination.stamps.at(0);
        CHECK(stamp.enhanced.rectified.mirrored == mirrored);
        CHECK(flow::isMirrored(stamp.readings.at(0)) == mirrored);
        CHECK(flow::isMirrored(stamp.proposal) == mirrored);
        CHECK(cornerGap(stamp) < 1);
    }
    models::Reading reading;
    reading.options = "unmirrored";
    CHECK_FALSE(flow::isMirrored(reading));
}

TEST_CASE("A letter alone is no surer than that there is a mark", "[app][examine]")
{
    const TemporaryFolder folder;
    const support::MarkedCanvas canvas = support::writeMarkedCanvas(folder);
    flow::Engines engines =
        support::enginesWith(one([](const vision::EnhancedStamp&) -> std::vector<models::Line> {
            return {seenLine("J", 0.9), seenLine("LONGER", 0.9)};
        }));
    const vision::Photo photo = vision::loadPhoto(canvas.file);
    vision::StampOutline outline = vision::outlineFromCorners(canvas.upside_down);
    outline.score = 0.2;  // found by the program, and hardly likely

    const flow::StampExamination stamp = flow::examineStamp(photo, outline, engines);

    CHECK(models::lineCertainty(stamp.proposal.lines.at(0)) == Approx(0.18));
    CHECK(stamp.proposal.lines.at(0).cells.at(0).state == models::CellState::Doubtful);
    CHECK(models::lineCertainty(stamp.proposal.lines.at(1)) > 0.5);
    outline.score = 1;  // drawn by a person
    const flow::StampExamination drawn = flow::examineStamp(photo, outline, engines);
    CHECK(models::lineCertainty(drawn.proposal.lines.at(0)) == Approx(0.9));
}
