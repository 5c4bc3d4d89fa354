#include <catch2/catch.hpp>

#include "models/register_check.h"
#include "tests/models/register_folder.h"

// What is one thing in a register and what is two.

namespace {

std::vector<models::RegisterFinding> found(const std::string& makers, const std::string& marks)
{
    const support::RegisterFolder folder({{"makers.csv", makers}, {"marks.csv", marks}});
    return models::checkRegister(folder.path);
}

std::vector<models::RegisterFinding> foundInMarks(const std::string& marks)
{
    return found("maker_id,name\nm1,Orrin & Co\nm2,Pelk Ltd\n", marks);
}

}  // namespace

TEST_CASE("Marks that differ by frame or kind are several marks", "[models][register_check]")
{
    CHECK(foundInMarks("maker_id,text,frame\nm1,A.A.,box\nm1,A.A.,oval\n").empty());
    CHECK(foundInMarks("maker_id,text,kind\nm1,K7,code\nm1,K7,device\n").empty());
    const auto alike = foundInMarks("maker_id,text,kind\nm1,K7,code\nm2,K7,device\n");
    REQUIRE(alike.size() == 1);
    CHECK_FALSE(alike[0].is_fault);
    CHECK(alike[0].what.problem.find("only what they are tells them apart (device, code)") !=
          std::string::npos);
    // The same twice is a fault and told once.
    const auto repeated = foundInMarks("maker_id,text,kind,frame\nm1,A,,\nm1,A,text,none\n");
    REQUIRE(repeated.size() == 1);
    CHECK(repeated[0].is_fault);
    CHECK(repeated[0].what.line == 3);
}

TEST_CASE("Makers of one name are two where their places differ", "[models][register_check]")
{
    const std::string head = "maker_id,name,place\n", marks = "maker_id,text\nm1,A\n";
    const auto apart = found(head + "m1,Orrin,Saltmere\nm2,ORRIN,Thrennel\n", marks);
    REQUIRE(apart.size() == 1);
    CHECK_FALSE(apart[0].is_fault);
    CHECK(apart[0].what.line == 3);
    CHECK(apart[0].what.problem.find("of another place") != std::string::npos);
    const auto same = found(head + "m1,Orrin,Saltmere\nm2,ORRIN,saltmere\n", marks);
    REQUIRE(same.size() == 1);
    CHECK(same[0].is_fault);
}
