// Dating filed items, and changes of production from many of them.
#include <fstream>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "tests/app/command_runner.h"

using Catch::Contains;
using support::CommandRunner;
using support::Ran;

namespace {

void useDemoRegister(CommandRunner& runner)
{
    runner.environment["WEFTMARK_REGISTER"] = std::string(WEFTMARK_SOURCE_DIR) + "/models/register";
}

void fileItem(CommandRunner& runner, const std::string& accession, const std::string& stamp,
              const std::vector<std::string>& more = {})
{
    std::vector<std::string> arguments = {"item",    "--fresh", "--accession",
                                          accession, "--stamp", stamp};
    arguments.insert(arguments.end(), more.begin(), more.end());
    const Ran ran = runner.run(arguments);
    CAPTURE(ran.err);
    REQUIRE(ran.code == 0);
}

}  // namespace

TEST_CASE("A contradiction is told with its likeliest culprit", "[app][date]")
{
    CommandRunner runner;
    useDemoRegister(runner);
    fileItem(runner, "SHT 1", "HESPERLOW & PRUDDERN / 1948",
             {"--type", "belt-1937", "--feature", "steel-buckle=present", "--feature",
              "end-tab=present"});
    const Ran words = runner.run({"date", "SHT 1"});
    CHECK(words.code == 0);
    CHECK_THAT(words.out, Contains("the evidence contradicts itself"));
    CHECK_THAT(words.out, Contains("the 8 may be a 0 (1940 read as 1948)"));
    const auto json = nlohmann::json::parse(runner.run({"date", "SHT 1", "--json"}).out);
    const auto& part = json.at("parts").at(0);
    CHECK(part.at("is_contradiction") == true);
    CHECK(part.at("culprits").at(0).at("fault") == "misread");
    CHECK(part.at("culprits").at(0).at("printed") == 1940);
    double sum = 0;
    for (const auto& year : part.at("years"))
        sum += year.at(1).get<double>();
    CHECK(sum == Approx(1).margin(0.05));  // years below 0.001 are left out
    CHECK(part.at("evidence").size() == 5);
}

TEST_CASE("An item that is not there, or says nothing, is told as such", "[app][date]")
{
    CommandRunner runner;
    useDemoRegister(runner);
    CHECK(runner.run({"date", "SHT 1"}).code == 3);  // no archive at all
    fileItem(runner, "SHT 3", "SIZE 2", {"--type", "belt-1937"});
    const Ran long_list = runner.run({"date", "SHT 3"});
    CHECK_THAT(long_list.out, Contains("1937") && Contains("other years with 4 % or less each"));
    fileItem(runner, "SHT 1", "SIZE 2");
    const Ran none = runner.run({"date", "SHT 1"});
    CHECK(none.code == 0);
    CHECK(runner.run({"date", "SHT 2"}).code == 1);
    CHECK(runner.run({"date"}).code == 2);
}

TEST_CASE("A change of production comes from the archive, with a plot", "[app][change]")
{
    CommandRunner runner;
    useDemoRegister(runner);
    for (int year = 1937; year <= 1950; ++year)
        for (const char* half : {"a", "b"})
            fileItem(runner, std::to_string(year) + half, "MADE " + std::to_string(year),
                     {"--type", "belt-1937", "--feature",
                      std::string("end-tab=") + (year < 1943 ? "present" : "absent")});
    const std::string svg = (runner.folder.path() / "tab.svg").string();
    const std::string png = (runner.folder.path() / "tab.png").string();
    const Ran words = runner.run({"change", "end-tab", "--plot", svg});
    CAPTURE(words.err);
    CHECK(words.code == 0);
    CHECK_THAT(words.out, Contains("Metal end tab: was given up between"));
    std::ifstream drawn(svg);
    const std::string text{std::istreambuf_iterator<char>(drawn), {}};
    CHECK_THAT(text, Contains("<svg") && Contains("Metal end tab"));
    const auto json =
        nlohmann::json::parse(runner.run({"change", "end-tab", "--plot", png, "--json"}).out);
    CHECK(json.at("pooled").at("can_say") == true);
    CHECK(json.at("makers").empty());
    CHECK(json.at("pooled").at("from").get<double>() < 1943.3);
    CHECK(json.at("pooled").at("to").get<double>() > 1942.7);
    CHECK(json.at("pooled").at("with") == 12);
    double sum = 0;
    for (const auto& step : json.at("pooled").at("time"))
        sum += step.at(1).get<double>();
    CHECK(sum == Approx(1).margin(0.05));  // steps below 0.0005 are left out
    CHECK(json.at("pooled").at("time").front().at(0).get<double>() <
          json.at("pooled").at("from").get<double>());
    std::ifstream image(png, std::ios::binary);
    std::string magic(8, ' ');
    image.read(magic.data(), 8);
    CHECK(magic == "\x89PNG\r\n\x1a\n");  // PNG specification, 5.2
    CHECK(runner.run({"change", "end-tab", "--plot", "tab.bmp"}).code == 2);
    const Ran nowhere = runner.run({"change", "end-tab", "--plot", "/nowhere/tab.svg"});
    CHECK(nowhere.code == 3);
    CHECK_THAT(nowhere.err, Contains("/nowhere/tab.svg"));
    CHECK(runner.run({"change", "no-such"}).code == 2);
    const Ran none = runner.run({"change", "press-stud"});
    CHECK(none.code == 1);
    CHECK_THAT(none.err, Contains("no dated item says"));
}
