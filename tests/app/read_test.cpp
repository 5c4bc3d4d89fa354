#include <sstream>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <opencv2/imgcodecs.hpp>

#include "tests/app/command_runner.h"
#include "tests/support/picture_files.h"

using Catch::Contains;
using support::CommandRunner;
using support::Ran;

namespace {

std::string blankPhoto(const CommandRunner& runner)
{
    const std::filesystem::path file = runner.folder.path() / "blank.png";
    picture_files::write(file,
                         picture_files::png(cv::Mat(200, 300, CV_8UC3, cv::Scalar(160, 170, 180))));
    return file.string();
}

std::string stampedPhoto(const CommandRunner& runner, const std::string& name = "belt one ü.jpg")
{
    return support::writeStampedPhoto(runner.folder, name).string();
}

}  // namespace

TEST_CASE("Read tells stamps, lines and candidates with reasons", "[app][read]")
{
    CommandRunner runner;
    const std::string photo = stampedPhoto(runner);
    const Ran ran = runner.run({"read", photo, "--type", "belt"});
    CHECK(ran.code == 0);
    CHECK_THAT(ran.out, Contains(photo) && Contains("W. POLGLASE") && Contains("% sure"));
    CHECK_THAT(ran.out, Contains("Wenna Polglase [polglase], 1941"));
    CHECK_THAT(ran.out, Contains("not in the register"));
    CHECK_THAT(ran.out, !Contains("truth"));
    CHECK(ran.err.empty());  // no progress where there is no terminal
}

TEST_CASE("The truth beside a photograph is printed and counted", "[app][read]")
{
    CommandRunner runner;
    const std::string one = stampedPhoto(runner, "one.jpg");
    const std::string two = stampedPhoto(runner, "two.jpg");
    const std::string three = stampedPhoto(runner, "three.jpg");
    const std::string untold = stampedPhoto(runner, "untold.jpg");
    runner.folder.write("one.truth.json",
                        R"({"made": true, "item_type": "belt", "maker_id": "polglase",
                            "edtf": "1941", "stamps": [{"outline": [[0,0],[1,0],[1,1],[0,1]],
                            "up_deg": 0, "lines": ["W. POLGLASE", "19[.]1"]}]})");
    runner.folder.write("two.truth.json", R"({"maker_id": "tarrow", "edtf": "1950"})");
    runner.folder.write("three.truth.json", R"({"maker_id": "nobody of the register"})");

    const Ran ran = runner.run({"read", one, two, three, untold});
    CHECK(ran.code == 0);
    CHECK_THAT(ran.out, Contains("truth: Wenna Polglase [polglase], 1941\n"
                                 "    W. POLGLASE / 19[.]1"));
    CHECK(ran.outLines().back() == "true maker first: 1 of 3, among three: 2 of 3");

    // Another program's reader is told nothing of it.
    const Ran in_json = runner.run({"read", one, "--json"});
    CHECK_THAT(in_json.out, !Contains("truth") && !Contains("true maker"));
}

TEST_CASE("What was read where no stamp is gets counted", "[app][read]")
{
    CommandRunner runner;
    const std::string misread = stampedPhoto(runner, "misread.jpg");
    runner.folder.write("misread.truth.json", R"({"maker_id": "", "stamps": []})");
    runner.folder.write("torn.jpg", "no picture");
    runner.folder.write("torn.truth.json", R"({"stamps": []})");
    const std::string torn = (runner.folder.path() / "torn.jpg").string();
    const Ran ran = runner.run({"read", misread, torn});
    CHECK_THAT(ran.out, Contains("truth: no stamp\n"));
    CHECK(ran.outLines().back() ==
          "of 2 without a stamp, 1 gave a line with certainty 0.5 or more");

    const std::string one = stampedPhoto(runner, "one.jpg");
    runner.folder.write("one.truth.json", R"({"maker_id": "polglase"})");
    CHECK(runner.run({"read", one, misread}).outLines().back() ==
          "true maker first: 1 of 1, among three: 1 of 1; of 1 without a stamp, 1 gave a line with "
          "certainty 0.5 or more");
}

TEST_CASE("A truth counts where its photograph cannot be read, and a broken truth is said",
          "[app][read]")
{
    CommandRunner runner;
    const std::string photo = stampedPhoto(runner, "one.jpg");
    runner.folder.write("one.truth.json", "{\"maker_id\": ");
    runner.folder.write("torn.jpg", "no picture");
    runner.folder.write("torn.truth.json", R"({"maker_id": "polglase"})");
    const Ran ran = runner.run({"read", photo, (runner.folder.path() / "torn.jpg").string()});
    CHECK(ran.code == 3);
    CHECK_THAT(ran.err, Contains("one.truth.json is not a truth file"));
    CHECK(ran.outLines().back() == "true maker first: 0 of 1, among three: 0 of 1");
}

TEST_CASE("A batch goes on past what cannot be read", "[app][read]")
{
    CommandRunner runner;
    const std::string good = stampedPhoto(runner);
    const std::string text = runner.folder.write("text.jpg", "only text").string();
    const std::string empty = runner.folder.write("empty.png", "").string();
    const std::string folder = runner.folder.path().string();
    const Ran ran = runner.run({"read", "missing.jpg", text, empty, folder, good});
    CHECK(ran.code == 3);
    CHECK_THAT(ran.out, Contains("W. POLGLASE"));
    for (const std::string& bad : {std::string("missing.jpg"), text, empty, folder})
        CHECK_THAT(ran.err, Contains(bad));
    CHECK(std::count(ran.err.begin(), ran.err.end(), '\n') == 4);  // a sentence each

    const Ran in_json = runner.run({"read", "--json", text, good});
    CHECK(in_json.code == 3);
    REQUIRE(in_json.outLines().size() == 2);
    CHECK_THAT(nlohmann::json::parse(in_json.outLines()[0]).at("error").get<std::string>(),
               Contains(text));
    CHECK(nlohmann::json::parse(in_json.outLines()[1]).at("error").is_null());
}

TEST_CASE("Nothing found in any photograph has its own exit code", "[app][read]")
{
    CommandRunner runner;
    const std::string blank = blankPhoto(runner);
    const Ran none = runner.run({"read", blank});
    CHECK(none.code == 1);
    CHECK_THAT(none.out, Contains("no stamp was found"));
    CHECK(runner.run({"read", blank, stampedPhoto(runner)}).code == 0);

    // An outline that was given is no find; what is read in it is.
    const std::string outline = "20,20,280,20,280,120,20,120";
    runner.sight = [](const vision::EnhancedStamp&) -> std::vector<models::Line> {
        return {support::seenLine("WP", 0.9)};
    };
    CHECK(runner.run({"read", blank, "--outline", outline}).code == 0);
    runner.sight = [](const vision::EnhancedStamp&) { return std::vector<models::Line>{}; };
    CHECK(runner.run({"read", blank, "--outline", outline}).code == 1);
    CHECK(runner.run({"read", blank, "--line"}).code == 1);
}

TEST_CASE("An outline must be one, and of one photograph", "[app][read]")
{
    CommandRunner runner;
    const std::string photo = blankPhoto(runner);
    const std::string good = "20,20,280,20,280,120,20,120";
    for (const std::string bad : {"", "1,2,3", "a,b,c,d,e,f,g,h", "1,1,2,2,3,3,4,4",
                                  "20,20,280,20,280,120,20,120,", "20,20,280,20,280,120,20,nan",
                                  "20,20,20,120,280,120,280,20", "20 20 280 20 280 120 20 120"}) {
        CAPTURE(bad);
        const Ran ran = runner.run({"read", photo, "--outline=" + bad});
        CHECK(ran.code == 2);
        CHECK(ran.out.empty());
    }
    CHECK(runner.run({"read", photo, photo, "--outline", good}).code == 2);
    CHECK(runner.run({"read", photo, "--line", "--outline", good}).code == 2);
    CHECK(runner.run({"read", photo, "--type", "boat"}).code == 2);
    const Ran outside = runner.run({"read", photo, "--outline", "900,900,990,900,990,950,900,950"});
    CHECK(outside.code == 3);
    CHECK_THAT(outside.err, Contains("outside") && Contains("blank.png cannot be examined"));
}

TEST_CASE("Layers are written for every stamp and photograph", "[app][read]")
{
    CommandRunner runner;
    const std::string photo = blankPhoto(runner);
    std::filesystem::create_directories(runner.folder.path() / "other");
    const std::filesystem::path same_name = runner.folder.path() / "other" / "blank.png";
    std::filesystem::copy_file(photo, same_name);
    const std::filesystem::path layers = runner.folder.path() / "layers" / "ä";
    const Ran ran =
        runner.run({"read", "--line", photo, same_name.string(), "--layers", layers.string()});
    CHECK(ran.code == 1);  // blank pictures have layers too
    CHECK(ran.err.empty());
    for (const std::string stem : {"blank", "blank-2"}) {
        const cv::Mat flat = cv::imdecode(
            [&] {
                const std::string bytes = support::bytesOf(layers / (stem + "-stamp1-flat.png"));
                return std::vector<unsigned char>(bytes.begin(), bytes.end());
            }(),
            cv::IMREAD_UNCHANGED);
        CHECK(flat.type() == CV_8UC1);
        CHECK(flat.cols > 100);
    }
    const Ran refused = runner.run({"read", "--line", photo, "--layers", photo});
    CHECK(refused.code == 3);
    CHECK_THAT(refused.err, Contains("cannot be written"));
}

TEST_CASE("Progress is for terminals and leaves nothing behind", "[app][read]")
{
    CommandRunner runner;
    runner.progress_shown = true;
    const Ran ran = runner.run({"read", stampedPhoto(runner)});
    CHECK_THAT(ran.err, Contains("1/1 belt one ü.jpg: loading") && Contains("reading stamp 1 of"));
    CHECK_THAT(ran.err, Catch::EndsWith("\r\x1b[K"));
    CHECK_THAT(ran.out, !Contains("loading"));
}
