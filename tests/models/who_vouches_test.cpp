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

double match(const std::string& who, const std::string& typed, const std::string& truth)
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
        CHECK(match("line-reader", seen, "HARSKELL") > match("Maud Pell", seen, "HARSKELL") + 0.5);
        CHECK(match("tesseract 5", seen, "HARSKELL") == match("line-reader", seen, "HARSKELL"));
        // Nobody named: somebody typed it.
        CHECK(match("", seen, "HARSKELL") == match("Maud Pell", seen, "HARSKELL"));
    }
    CHECK(match("Maud Pell", "HARSKELL", "HARSKELL") >
          match("line-reader", "HARSKELL", "HARSKELL"));
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
