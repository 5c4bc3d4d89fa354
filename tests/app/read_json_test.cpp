// The contract of `weftmark read --json`, field by field.
#include <cmath>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <opencv2/core.hpp>

#include "tests/app/command_runner.h"
#include "tests/support/picture_files.h"

using nlohmann::json;
using support::CommandRunner;
using support::Ran;

namespace {

models::Cell cell(models::CellState state, std::vector<models::Alternative> alternatives, int least,
                  std::optional<int> most)
{
    models::Cell made;
    made.state = state;
    made.alternatives = std::move(alternatives);
    made.least = least;
    made.most = most;
    made.left_px = 3;
    made.right_px = 21.5;
    return made;
}

models::Line lineOfAllStates()
{
    models::Line line;
    line.cells = {cell(models::CellState::Clear, {{"2", 0.98}, {"Z", 0.01}}, 1, 1),
                  cell(models::CellState::Doubtful, {{"4", 0.5}, {"A", 0.3}}, 1, 1),
                  cell(models::CellState::Traces, {}, 1, 1),
                  cell(models::CellState::Lost, {}, 2, 2),
                  cell(models::CellState::Lost, {}, 0, std::nullopt)};
    line.right_end = models::LineEnd::CutOff;
    line.box_px = {10, 20, 300, 40.5};
    return line;
}

json readOne(CommandRunner& runner, const std::vector<std::string>& more)
{
    std::vector<std::string> arguments = {"read", "--json"};
    arguments.insert(arguments.end(), more.begin(), more.end());
    const Ran ran = runner.run(arguments);
    REQUIRE(ran.outLines().size() == 1);
    return json::parse(ran.out);
}

void checkCandidates(const json& object)
{
    double sum = object.at("other_makers").get<double>() + object.at("unknown_maker").get<double>();
    CHECK(object.at("candidates").size() <= 10);
    double before = 1;
    for (const json& candidate : object.at("candidates")) {
        CHECK(candidate.at("maker").is_string());
        CHECK(candidate.at("maker_id").is_string());
        CHECK(candidate.at("mark").is_string());
        const double probability = candidate.at("probability");
        CHECK(probability <= before);
        before = probability;
        sum += probability;
        double years = 0;
        for (const json& share : candidate.at("years")) {
            CHECK(share.at(0).get<std::string>().size() == 4);
            years += share.at(1).get<double>();
        }
        CHECK(years <= 1 + 1e-6);
        CHECK((candidate.at("edtf").is_string() || candidate.at("edtf").is_null()));
        for (const json& reason : candidate.at("reasons"))
            CHECK_FALSE(reason.get<std::string>().empty());
    }
    CHECK(sum == Approx(1).margin(1e-6));  // the contract's tolerance
}

std::vector<std::string> keysOf(const std::string& text)
{
    std::vector<std::string> keys;
    const nlohmann::ordered_json object = nlohmann::ordered_json::parse(text);
    for (const auto& [key, value] : object.items())
        keys.push_back(key);
    return keys;
}

}  // namespace

TEST_CASE("A photo's object has the contract's fields in the contract's order", "[app][json]")
{
    CommandRunner runner;
    const std::string photo = support::writeStampedPhoto(runner.folder, "belt ü.jpg").string();
    const Ran ran = runner.run({"read", "--json", photo});
    REQUIRE(ran.code == 0);
    CHECK(keysOf(ran.out) == std::vector<std::string>{"photo", "width_px", "height_px", "error",
                                                      "warnings", "stamps", "candidates",
                                                      "other_makers", "unknown_maker", "settling"});
    const json object = json::parse(ran.out);
    CHECK(object.at("photo") == photo);
    CHECK(object.at("width_px") == 900);
    CHECK(object.at("height_px") == 600);
    CHECK(object.at("error").is_null());
    CHECK(object.at("warnings").is_array());
    checkCandidates(object);
    REQUIRE_FALSE(object.at("stamps").empty());
    for (const json& stamp : object.at("stamps")) {
        CHECK(stamp.at("score").get<double>() > 0);
        CHECK(stamp.at("score").get<double>() <= 1);
        checkCandidates(stamp);
    }
}

TEST_CASE("A stamp's outline, homography and turn say the same thing", "[app][json]")
{
    CommandRunner runner;
    const support::MarkedCanvas canvas = support::writeMarkedCanvas(runner.folder);
    runner.sight = [](const vision::EnhancedStamp& stamp) -> std::vector<models::Line> {
        return {support::seenLine("WP", support::redIsAbove(stamp) ? 0.9 : 0.1)};
    };
    const json stamp =
        readOne(runner, {canvas.file.string(), "--outline", "450,250,150,250,150,150,450,150"})
            .at("stamps")
            .at(0);

    // Clockwise from the stamp's own top left, which reading found at the photo's upper left.
    CHECK(stamp.at("outline") == json::parse("[[150,150],[450,150],[450,250],[150,250]]"));
    CHECK(stamp.at("score") == 1);
    const double up = stamp.at("up_deg");
    CHECK(up >= 0);
    CHECK(up < 360);
    CHECK(std::cos(up * CV_PI / 180) == Approx(1).margin(1e-9));

    const std::vector<double> h = stamp.at("rectified").at("photo_from_rectified");
    REQUIRE(h.size() == 9);
    const double width = stamp.at("rectified").at("width_px");
    const double height = stamp.at("rectified").at("height_px");
    const double x = (width - 1) / 2, y = (height - 1) / 2;
    const double w = h[6] * x + h[7] * y + h[8];
    // The picture's centre is the outline's, but for rounding its size to whole pixels.
    CHECK((h[0] * x + h[1] * y + h[2]) / w == Approx(300).margin(1));
    CHECK((h[3] * x + h[4] * y + h[5]) / w == Approx(200).margin(1));
}

TEST_CASE("A line's object tells every state apart", "[app][json]")
{
    CommandRunner runner;
    const support::MarkedCanvas canvas = support::writeMarkedCanvas(runner.folder);
    runner.sight = [](const vision::EnhancedStamp&) -> std::vector<models::Line> {
        return {lineOfAllStates()};
    };
    const json line =
        readOne(runner, {canvas.file.string(), "--line"}).at("stamps").at(0).at("lines").at(0);

    CHECK(line.at("text") == "24\uFFFD\uFFFD\uFFFD\u2026");
    CHECK(line.at("typed") == "2(4|A)+[..][- - -]");
    CHECK(line.at("leiden").get<std::string>().find("4\u0323") != std::string::npos);
    CHECK(line.at("certainty") == 0);  // an unread cell cannot be right
    CHECK(line.at("left_end") == "unknown");
    CHECK(line.at("right_end") == "cut_off");
    CHECK(line.at("box") == json::parse("[10,20,300,40.5]"));
    REQUIRE(line.at("cells").size() == 5);
    CHECK(line.at("cells").at(0) ==
          json::parse(R"({"state": "clear", "alternatives": [["2", 0.98], ["Z", 0.01]], "least": 1,
                          "most": 1, "left_px": 3, "right_px": 21.5, "by": "fake"})"));
    CHECK(line.at("cells").at(1).at("state") == "doubtful");
    CHECK(line.at("cells").at(2).at("state") == "traces");
    CHECK(line.at("cells").at(3).at("least") == 2);
    CHECK(line.at("cells").at(4).at("state") == "lost");
    CHECK(line.at("cells").at(4).at("most").is_null());
}

TEST_CASE("A mirrored stamp says so, any other says nothing of it", "[app][json]")
{
    CommandRunner runner;
    const std::string photo = support::writeStampedPhoto(runner.folder, "belt.jpg").string();
    const std::string outline = "100,80,300,80,300,160,100,160";
    for (const std::vector<std::string>& way :
         {std::vector<std::string>{}, {"--line"}, {"--outline", outline}}) {
        std::vector<std::string> arguments = way;
        arguments.insert(arguments.begin(), photo);
        const json plain = readOne(runner, arguments).at("stamps").at(0);
        arguments.push_back("--mirrored");
        const json mirrored = readOne(runner, arguments).at("stamps").at(0);

        CHECK_FALSE(plain.contains("mirrored"));
        CHECK(mirrored.at("mirrored") == true);
        CHECK(mirrored.at("outline") == plain.at("outline"));
        const json way_back = mirrored.at("rectified").at("photo_from_rectified");
        const auto number = [&](std::size_t i) { return way_back.at(i).get<double>(); };
        CHECK(number(0) * number(4) - number(1) * number(3) < 0);
    }
}

TEST_CASE("A photo that cannot be read keeps the object's shape", "[app][json]")
{
    CommandRunner runner;
    const std::string photo = runner.folder.write("text.jpg", "only text").string();
    const Ran ran = runner.run({"read", "--json", photo});
    CHECK(ran.code == 3);
    const json object = json::parse(ran.out);
    CHECK(object.at("photo") == photo);
    CHECK(object.at("error").get<std::string>().find("text.jpg") != std::string::npos);
    CHECK(object.at("stamps").empty());
    checkCandidates(object);
}

TEST_CASE("No stamp found is no error, and the prior comes back", "[app][json]")
{
    CommandRunner runner;
    const std::filesystem::path file = runner.folder.path() / "blank.png";
    picture_files::write(file,
                         picture_files::png(cv::Mat(200, 300, CV_8UC3, cv::Scalar(160, 170, 180))));
    const Ran ran = runner.run({"read", "--json", file.string()});
    CHECK(ran.code == 1);
    const json object = json::parse(ran.out);
    CHECK(object.at("error").is_null());
    CHECK(object.at("stamps").empty());
    CHECK_FALSE(object.at("candidates").empty());
    checkCandidates(object);
}

TEST_CASE("A file's name that is not UTF-8 does not break the JSON", "[app][json]")
{
    CommandRunner runner;
    const Ran ran = runner.run({"read", "--json", "missing \xFF.jpg"});
    CHECK(ran.code == 3);
    CHECK(json::parse(ran.out).at("photo") == "missing \uFFFD.jpg");
}

TEST_CASE("A line tells the dates that it can hold", "[app][json]")
{
    CommandRunner runner;
    runner.sight = [](const vision::EnhancedStamp&) -> std::vector<models::Line> {
        return {support::seenLine("3/4/41", 0.9)};
    };
    const std::string photo = support::writeStampedPhoto(runner.folder, "belt.jpg").string();
    const json line = readOne(runner, {photo, "--outline", "100,100,400,100,400,200,100,200",
                                       "--day-order", "day"})
                          .at("stamps")
                          .at(0)
                          .at("lines")
                          .at(0);
    const json date = line.at("dates").at(0);
    CHECK(date.at("edtf") == "1941-04-03");
    CHECK(date.at("probability").get<double>() > 0.5);
    CHECK(date.at("first_cell") == 0);
    CHECK(date.at("end_cell") == line.at("cells").size());
}
