// How far a letter is believed goes by who vouches for it: a person who typed it, or an engine.
#include <catch2/catch.hpp>

#include "models/text_match.h"
#include "tests/models/demo_ranking.h"

namespace {

models::Reading readingBy(const std::string& who, const std::string& typed)
{
    models::Reading reading = readingOf(typed);
    for (models::Line& line : reading.lines)
        for (models::Cell& cell : line.cells)
            cell.by = who;
    return reading;
}

double logMatch(const std::string& who, const std::string& typed, const std::string& truth)
{
    return models::logProbability(readingBy(who, typed).lines.at(0), truth);
}

double unknownShare(const std::string& who, const std::string& typed)
{
    return models::rankCandidates({{readingBy(who, typed)}, ""}, demoRegister()).unknown_maker;
}

}  // namespace

TEST_CASE("A wholly wrong letter costs less where an engine told it", "[models][match]")
{
    for (const char* seen : {"HARQKELL", "XARSKELL", "HARSKE4L", "HARS(U|D)ELL"}) {
        CAPTURE(seen);
        CHECK(logMatch("line-reader", seen, "HARSKELL") >
              logMatch("Maud Pell", seen, "HARSKELL") + 0.5);
        CHECK(logMatch("tesseract 5", seen, "HARSKELL") ==
              logMatch("line-reader", seen, "HARSKELL"));
        // Nobody named: somebody typed it.
        CHECK(logMatch("", seen, "HARSKELL") == logMatch("Maud Pell", seen, "HARSKELL"));
    }
    CHECK(logMatch("Maud Pell", "HARSKELL", "HARSKELL") >
          logMatch("line-reader", "HARSKELL", "HARSKELL"));
}

TEST_CASE("A clear text of no registered maker stays unknown where a person typed it",
          "[models][candidates]")
{
    for (const char* typed : {"Y.Y. & CO", "K.W. & CO", "GRIMSVOLD & TARNE LTD"}) {
        CAPTURE(typed);
        CHECK(unknownShare("Maud Pell", typed) > 0.6);
        CHECK(unknownShare("Maud Pell", typed) >= unknownShare("line-reader", typed));
    }
    CHECK(unknownShare("line-reader", "GRIMSVOLD & TARNE LTD") > 0.6);
}

TEST_CASE("Another firm's initials before a common ending are no registered maker's",
          "[models][candidates]")
{
    // F.H. & CO LTD is the register's only mark with this ending.
    CHECK(unknownShare("Maud Pell", "J.R. & CO LTD / 1938") > 0.7);
    CHECK(unknownShare("line-reader", "J.R. & CO LTD / 1938") > 0.2);
    CHECK(unknownShare("Maud Pell", "F.H. & CO LTD / 1938") < 0.01);
}
