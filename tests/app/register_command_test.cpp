#include <catch2/catch.hpp>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "models/maker_register.h"
#include "tests/app/command_runner.h"

using Catch::Contains;
using support::CommandRunner;
using support::Ran;

namespace {

std::filesystem::path registerFile(const CommandRunner& runner, const std::string& name)
{
    return runner.folder.path() / "register" / name;
}

void fillRegister(const CommandRunner& runner)
{
    runner.folder.write("register/makers.csv",
                        "maker_id,name,place,from,to,successor_of,notes,source_id\n"
                        "polglase,Wenna Polglase,Ormscarth,1930,1945,,Wove webbing,ledger\n"
                        "tarrow,Rufus Tarrow,Veldrow,1946,1958,polglase,,\n");
    runner.folder.write("register/codes.csv",
                        "code,stands_for,value,issuer,from,to\n"
                        "K7,maker,polglase,Saltmere Harbour Trust,1941,1945\n");
    runner.folder.write("register/features.csv",
                        "feature_id,type_id,name,from,to,maker_id\n"
                        "rivet,belt,Split rivet,1940,1944,polglase\n");
    runner.folder.write("register/sources.csv",
                        "source_id,citation\nledger,\"Saltmere ledger, 1931 (invented)\"\n");
}

}  // namespace

TEST_CASE("Register check tells faults from remarks, by exit code too", "[app][register]")
{
    CommandRunner runner;
    const Ran clean = runner.run({"register", "check"});
    CHECK(clean.code == 0);
    CHECK_THAT(clean.out, Contains("0 faults, 0 remarks in "));
    CHECK(runner.run({"register", "check", "--json"}).out == "[]\n");

    std::string codes = "code,stands_for,value\nK7,year,1941\nK7,year,1942\n";
    const auto check = [&](const std::vector<std::string>& more) {
        runner.folder.write("register/codes.csv", codes);
        std::vector<std::string> arguments = {"register", "check"};
        arguments.insert(arguments.end(), more.begin(), more.end());
        return runner.run(arguments);
    };
    const Ran remarked = check({});
    CHECK(remarked.code == 0);
    CHECK_THAT(remarked.out, Contains("remark: codes.csv, line 3, column code: ") &&
                                 Contains("0 faults, 1 remark in ") && Contains("as it is"));

    codes += "K8,year,1940s\n";
    const Ran faulty = check({});
    CHECK(faulty.code == 3);
    CHECK_THAT(faulty.out, Contains("fault: codes.csv, line 4, column value: ") &&
                               Contains("write 194X") && Contains("1 fault, 1 remark in "));
    const Ran as_json = check({"--json"});
    CHECK(as_json.code == 3);
    const nlohmann::json json = nlohmann::json::parse(as_json.out);
    REQUIRE(json.size() == 2);
    CHECK(json[0].at("kind") == "remark");
    CHECK(json[1].at("kind") == "fault");
    CHECK(json[1].at("line") == 4);
    CHECK(json[1].at("column") == "value");
}

TEST_CASE("Register check names a folder that is none", "[app][register]")
{
    CommandRunner runner;
    const Ran ran = runner.run({"register", "check", "--register", "no/such/folder"});
    CHECK(ran.code == 3);
    CHECK_THAT(ran.out, Contains("'no/such/folder' is not a folder; name the folder"));
}

TEST_CASE("Register list prints a table of what holds all words", "[app][register]")
{
    CommandRunner runner;
    fillRegister(runner);
    const Ran makers = runner.run({"register", "list"});
    CHECK(makers.code == 0);
    REQUIRE(makers.outLines().size() == 3);
    CHECK_THAT(makers.outLines()[0], Contains("maker_id  name            place"));
    CHECK_THAT(makers.outLines()[1], Contains("polglase  Wenna Polglase  Ormscarth"));

    CHECK(runner.run({"register", "list", "makers", "VELD", "rufus"}).outLines().size() == 2);
    for (const std::string kind : {"marks", "types", "features", "codes", "sources"}) {
        CAPTURE(kind);
        CHECK(runner.run({"register", "list", kind}).code == 0);
    }
    const nlohmann::json json =
        nlohmann::json::parse(runner.run({"register", "list", "marks", "--json", "tarrow"}).out);
    REQUIRE(json.size() == 1);
    CHECK(json[0].at("text") == "R. TARROW");

    const Ran none = runner.run({"register", "list", "marks", "walrus"});
    CHECK(none.code == 1);
    CHECK(none.out.empty());
    CHECK_THAT(none.err, Contains("no mark in "));
}

TEST_CASE("Register show tells all of a maker or a type", "[app][register]")
{
    CommandRunner runner;
    fillRegister(runner);
    const Ran maker = runner.run({"register", "show", "polglase"});
    CHECK(maker.code == 0);
    CHECK_THAT(maker.out, Contains("Wenna Polglase [polglase]\n  1930 to 1945, Ormscarth; Wove "
                                   "webbing (ledger)\n") &&
                              Contains("succeeded by Rufus Tarrow [tarrow]") &&
                              Contains("W. POLGLASE  text, no frame, 1930 to 1945") &&
                              Contains("K7  1941 to 1945, given by Saltmere Harbour Trust") &&
                              Contains("Split rivet [rivet]  1940 to 1944, on belt") &&
                              Contains("ledger  Saltmere ledger, 1931 (invented)"));
    CHECK_THAT(runner.run({"register", "show", "tarrow"}).out,
               Contains("took over from Wenna Polglase [polglase]"));
    CHECK_THAT(runner.run({"register", "show", "belt"}).out,
               Contains("Body belt [belt]") && Contains("parts: body") &&
                   Contains("by Wenna Polglase [polglase]"));

    const Ran none = runner.run({"register", "show", "walrus"});
    CHECK(none.code == 1);
    CHECK_THAT(none.err, Contains("'walrus'"));
}

TEST_CASE("Register show ends where makers succeed each other in a circle", "[app][register]")
{
    CommandRunner runner;
    runner.folder.write("register/makers.csv",
                        "maker_id,name,successor_of\npolglase,Wenna Polglase,tarrow\n"
                        "tarrow,Rufus Tarrow,polglase\n");
    CHECK(runner.run({"register", "show", "tarrow"}).code == 0);
}

TEST_CASE("Register add writes a line that is read again", "[app][register]")
{
    CommandRunner runner;
    const Ran maker = runner.run({"register", "add", "maker", "--maker_id", "quill", "--name",
                                  "Quill, Sons & Co", "--from", "1931~"});
    CHECK(maker.code == 0);
    CHECK_THAT(maker.out, Contains("makers.csv, line 4"));
    CHECK(
        runner.run({"register", "add", "mark", "--maker_id", "quill", "--text", "[Q]UILL"}).code ==
        0);
    const models::MakerRegister known =
        models::loadRegister(registerFile(runner, "makers.csv").parent_path());
    REQUIRE(known.maker("quill"));
    CHECK(known.maker("quill")->name == "Quill, Sons & Co");
    CHECK(known.marks.back().text == "[Q]UILL");

    const Ran alike =
        runner.run({"register", "add", "mark", "--maker_id", "quill", "--text", "W. P0LGLASE"});
    CHECK(alike.code == 0);
    CHECK_THAT(alike.err,
               Contains("remark: marks.csv, line 5, column text: ") && Contains("look alike"));
    CHECK(runner.run({"register", "add", "type", "--type_id", "strap", "--name", "Strap"}).code ==
          0);
    CHECK(runner
              .run({"register", "add", "feature", "--feature_id", "tab", "--type_id", "strap",
                    "--name", "Leather tab"})
              .code == 0);
    CHECK(runner
              .run({"register", "add", "code", "--code", "YA", "--stands_for", "year", "--value",
                    "1941"})
              .code == 0);
    CHECK(runner
              .run({"register", "add", "source", "--source_id", "ledger", "--citation",
                    "A ledger (invented)"})
              .code == 0);
    CHECK(runner.run({"register", "check"}).code == 0);
}

TEST_CASE("Register add takes text in brackets whole", "[app][register]")
{
    CommandRunner runner;
    CHECK(runner.run({"register", "add", "mark", "--maker_id", "tarrow", "--text", "[TARROW]"})
              .code == 0);
    CHECK_THAT(support::bytesOf(registerFile(runner, "marks.csv")), Contains("tarrow,[TARROW],"));
}

TEST_CASE("Register add refuses a fault before writing", "[app][register]")
{
    CommandRunner runner;
    const std::string before = support::bytesOf(registerFile(runner, "makers.csv"));
    const Ran twice =
        runner.run({"register", "add", "maker", "--maker_id", "tarrow", "--name", "Tarrow"});
    CHECK(twice.code == 3);
    CHECK_THAT(twice.err, Contains("nothing was added. makers.csv, line 4, column maker_id: "
                                   "'tarrow' stands there twice"));
    CHECK(runner.run({"register", "add", "mark", "--maker_id", "walrus", "--text", "W"}).code == 3);
    CHECK(support::bytesOf(registerFile(runner, "makers.csv")) == before);
    CHECK(runner.run({"register", "add", "maker", "--name", "Nobody"}).code == 2);
    CHECK_THAT(runner.run({"register", "add"}).err, Contains("behind add; write one of maker, "));
    CHECK_THAT(runner.run({"register"}).err, Contains("behind register; write one of check, "));
    CHECK_THAT(runner.run({"register", "chekc"}).err, Contains("not expected: chekc"));
    CHECK(runner.run({"register"}).code == 2);
    CHECK(runner.run({"register", "add", "maker", "--colour", "red"}).code == 2);

    runner.environment.erase("WEFTMARK_REGISTER");
    const Ran unsaid = runner.run({"register", "add", "maker", "--maker_id", "a", "--name", "B"});
    CHECK(unsaid.code == 2);
    CHECK_THAT(unsaid.err, Contains("--register"));
}

TEST_CASE("Register help carries examples", "[app][register]")
{
    CommandRunner runner;
    const Ran help = runner.run({"register", "--help"});
    CHECK(help.code == 0);
    CHECK_THAT(help.out, Contains("weftmark register check --register"));
    CHECK_THAT(runner.run({"register", "add", "mark", "--help"}).out, Contains("--maker_id"));
}
