#include <filesystem>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <opencv2/imgcodecs.hpp>

#include "tests/app/command_runner.h"
#include "tests/support/picture_files.h"

using Catch::Contains;
using picture_files::Bytes;
using support::CommandRunner;
using support::Ran;

namespace {

struct BadPhoto {
    std::string name;
    std::string trouble;  // what its sentence must hold
};

cv::Mat noise()
{
    cv::Mat picture(200, 200, CV_8UC3);
    cv::RNG random(3);
    random.fill(picture, cv::RNG::UNIFORM, 60, 200);
    return picture;
}

Bytes firstHalf(const Bytes& whole)
{
    return {whole.begin(), whole.begin() + static_cast<std::ptrdiff_t>(whole.size() / 2)};
}

// One file of each kind of trouble; "vanished.jpg" is not there.
std::vector<BadPhoto> writeBadPhotos(const std::filesystem::path& folder)
{
    const auto put = [&](const char* name, const Bytes& bytes) {
        picture_files::write(folder / name, bytes);
    };
    put("bomb.png", picture_files::blackPng(20000, 20000));
    put("torn.jpg", firstHalf(picture_files::jpeg(noise())));
    put("torn.tif", firstHalf(picture_files::tiff({.samples = noise()})));
    put("empty.jpg", {});
    put("zeros.jpg", Bytes(3000, 0));
    picture_files::write(folder / "note.jpg", std::string("Strap, from the east shed.\n"));
    put("odd.jpg", {1, 2, 3, 4, 0, 6, 7, 8});
    put("moving.gif", {'G', 'I', 'F', '8', '9', 'a', 1, 0, 1, 0});
    Bytes damaged = picture_files::png(noise());
    damaged[18] ^= 0x55;
    put("damaged.png", damaged);
    std::filesystem::create_directory(folder / "shed.jpg");
    return {
        {"bomb.png", "has 20000 x 20000 pixels, more than the limit of 250 megapixels; save"},
        {"torn.jpg", "is torn off: about"},
        {"torn.tif", "is torn off before its picture begins; copy"},
        {"empty.jpg", "is empty; copy"},
        {"zeros.jpg", "holds nothing but zeros; copy"},
        {"note.jpg", "holds text, not a picture, whatever its name says; name a"},
        {"odd.jpg", "is not a picture of a known kind; save"},
        {"moving.gif", "is a GIF file; save"},
        {"damaged.png", "is damaged in its header; copy"},
        {"shed.jpg", "is a folder; name the photographs in it"},
        {"vanished.jpg", "is not there; check"},
    };
}

std::ptrdiff_t openDescriptors()
{
    const std::filesystem::directory_iterator open("/proc/self/fd");
    return std::distance(begin(open), end(open));
}

}  // namespace

TEST_CASE("Bad photos are told one by one, the others are read, nothing stays open", "[app][read]")
{
    CommandRunner runner;
    const std::filesystem::path folder = runner.folder.path();
    std::vector<std::string> arguments = {"read", "--json"};
    const std::string good = support::writeStampedPhoto(runner.folder, "good.jpg").string();
    REQUIRE(runner.run({"read", good}).code == 0);  // opens what stays open for good
    const std::vector<BadPhoto> bad = writeBadPhotos(folder);
    for (const BadPhoto& photo : bad)
        arguments.push_back((folder / photo.name).string());
    // A PNG that is called .jpg is no trouble.
    picture_files::write(folder / "mislabelled.jpg", picture_files::png(cv::imread(good)));
    arguments.push_back((folder / "mislabelled.jpg").string());
    arguments.push_back(good);
    const std::ptrdiff_t before = openDescriptors();

    const Ran ran = runner.run(arguments);

    CHECK(openDescriptors() == before);
    CHECK(ran.code == 3);
    const std::vector<std::string> lines = ran.outLines();
    REQUIRE(lines.size() == bad.size() + 2);
    for (std::size_t i = 0; i < bad.size(); ++i) {
        const auto told = nlohmann::json::parse(lines[i]);
        const std::string error = told["error"];
        CHECK_THAT(error, Contains(bad[i].name) && Contains(bad[i].trouble));
        CHECK_THAT(ran.err, Contains(error));
        CHECK(told["stamps"].empty());
    }
    for (std::size_t i = bad.size(); i < lines.size(); ++i) {
        const auto told = nlohmann::json::parse(lines[i]);
        CHECK(told["error"].is_null());
        CHECK(told["stamps"].size() == 1);
    }
}

TEST_CASE("The limit of megapixels is the person's", "[app][read]")
{
    CommandRunner runner;
    const std::string photo = support::writeStampedPhoto(runner.folder, "one.jpg").string();
    const Ran refused = runner.run({"read", photo, "--max-megapixels", "0.01"});
    CHECK(refused.code == 3);
    CHECK_THAT(refused.err,
               Contains("more than the limit of 0.01 megapixels; save a smaller copy"));
    CHECK(runner.run({"read", photo, "--max-megapixels", "300"}).code == 0);
    CHECK(runner.run({"read", photo, "--max-megapixels", "0"}).code == 2);
    CHECK(runner.run({"read", photo, "--max-megapixels", "many"}).code == 2);
}
