#include "models/register_append.h"

#include <catch2/catch.hpp>

#include "tests/models/register_folder.h"

using support::RegisterFiles;
using support::RegisterFolder;

namespace {

RegisterFiles twoMakers()
{
    return {{"makers.csv", "maker_id,name,from\nm1,Orrin & Co,1921\n"},
            {"marks.csv", "maker_id,text\nm1,O. & CO\n"}};
}

models::Appended addMaker(const RegisterFolder& folder,
                          const std::map<std::string, std::string>& fields)
{
    return models::appendToRegister(folder.path, models::registerTable("makers.csv"), fields);
}

// The file with a maker added, given what it held.
std::string grown(const std::string& makers, const std::string& name)
{
    RegisterFiles files = twoMakers();
    files["makers.csv"] = makers;
    const RegisterFolder folder(files);
    const models::Appended appended = addMaker(folder, {{"maker_id", "m2"}, {"name", name}});
    CHECK(appended.refused.empty());
    CHECK(models::loadRegister(folder.path).makers.back().name == name);
    CHECK(models::loadRegister(folder.path).makers.back().file_line == appended.line);
    CHECK(std::distance(std::filesystem::directory_iterator(folder.path), {}) == 2);
    return folder.bytes("makers.csv");
}

}  // namespace

TEST_CASE("A row is added in the manner of its file", "[models][register_append]")
{
    CHECK(grown("maker_id,name\nm1,A\n", "Pelk") == "maker_id,name\nm1,A\nm2,Pelk\n");
    CHECK(grown("maker_id,name\nm1,A", "Pelk") == "maker_id,name\nm1,A\nm2,Pelk\n");
    CHECK(grown("name;maker_id;shelf\r\nA;m1;4\r\n", "Pelk") ==
          "name;maker_id;shelf\r\nA;m1;4\r\nPelk;m2;\r\n");
    CHECK(grown("sep=;\nmaker_id;name\nm1;A\n", "P;k") ==
          "sep=;\nmaker_id;name\nm1;A\nm2;\"P;k\"\n");
    CHECK(grown("\xEF\xBB\xBFmaker_id\tname\rm1\tA\r", "Pelk") ==
          "\xEF\xBB\xBFmaker_id\tname\rm1\tA\rm2\tPelk\r");
    CHECK(grown("\"maker_id\",\"name\"\n\"m1\",\"A\"\n", "Say \"so\"") ==
          "\"maker_id\",\"name\"\n\"m1\",\"A\"\n\"m2\",\"Say \"\"so\"\"\"\n");
    CHECK(grown("Maker_ID,NAME\nm1,A\n\n", "two\nlines") ==
          "Maker_ID,NAME\nm1,A\n\nm2,\"two\nlines\"\n");
}

TEST_CASE("A row that would be a fault is refused and nothing is written",
          "[models][register_append]")
{
    const RegisterFolder folder(twoMakers());
    const auto refused = [&](const std::map<std::string, std::string>& fields,
                             const std::string& part) {
        const models::Appended appended = addMaker(folder, fields);
        REQUIRE(appended.refused.size() == 1);
        CAPTURE(appended.refused[0].message());
        CHECK(appended.refused[0].message().find(part) != std::string::npos);
        CHECK(appended.line == 0);
        CHECK(folder.bytes("makers.csv") == twoMakers()["makers.csv"]);
    };
    refused({{"maker_id", "m1"}, {"name", "Pelk"}}, "twice");
    refused({{"maker_id", "m2"}}, "empty");
    refused({{"maker_id", "m2"}, {"name", "ORRIN & CO"}}, "line 2 already");
    refused({{"maker_id", "m2"}, {"name", "Pelk"}, {"from", "1930s"}}, "193X");
    refused({{"maker_id", "c c"}, {"name", "Pelk"}}, "an id is short and without blanks");
    refused({{"maker_id", "m2"}, {"name", "Pelk"}, {"place", "Saltmere"}}, "no such column");
    refused({{"maker_id", "m2"}, {"name", "caf\xE9"}}, "not UTF-8");
}

TEST_CASE("A register with faults elsewhere can grow, a file that cannot be read does not",
          "[models][register_append]")
{
    RegisterFiles files = twoMakers();
    files["marks.csv"] += "m9,X\n";
    const RegisterFolder folder(files);
    CHECK(addMaker(folder, {{"maker_id", "m2"}, {"name", "Pelk"}}).line == 3);

    files["makers.csv"] = "maker_id,name\nm1,\"A\n";
    const RegisterFolder torn(files);
    CHECK_FALSE(addMaker(torn, {{"maker_id", "m2"}, {"name", "Pelk"}}).refused.empty());
    CHECK(torn.bytes("makers.csv") == files["makers.csv"]);

    const RegisterFolder empty({});
    CHECK(addMaker(empty, {{"maker_id", "m2"}, {"name", "Pelk"}}).refused.size() == 1);
    CHECK_FALSE(std::filesystem::exists(empty.path / "makers.csv"));
    CHECK_FALSE(models::appendToRegister("no/such", models::registerTable("makers.csv"), {})
                    .refused.empty());
}

TEST_CASE("A missing file is made with its header, and what looks wrong is remarked",
          "[models][register_append]")
{
    RegisterFiles files = twoMakers();
    files["makers.csv"] += "m2,Pelk,1930\n";
    const RegisterFolder folder(files);
    const models::Appended code =
        models::appendToRegister(folder.path, models::registerTable("codes.csv"),
                                 {{"code", "O & CO"}, {"stands_for", "maker"}, {"value", "m2"}});
    CHECK(code.refused.empty());
    CHECK(code.line == 2);
    CHECK(folder.bytes("codes.csv") ==
          "code,stands_for,value,issuer,from,to,notes,source_id\nO & CO,maker,m2,,,,,\n");
    REQUIRE(code.remarks.size() == 1);
    CHECK(code.remarks[0].problem.find("is the same as 'O. & CO' of 'm1'") != std::string::npos);
}
