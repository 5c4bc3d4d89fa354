#include "models/roles.h"

#include <algorithm>
#include <catch2/catch.hpp>

#include "models/typed_notation.h"

// What stands on marks for what: common practice, no source.

namespace {

using models::LineRole;

const models::RoleContext service{{1921, 1958}, {"28", "32", "36"}, {"S.H. 12"}};

std::vector<models::Line> linesTyped(const std::string& typed)
{
    const models::ParsedNotation parsed = models::parseTyped(typed);
    REQUIRE_FALSE(parsed.fault);
    return parsed.lines;
}

std::string partText(const models::Line& line, const models::RoleSpan& span)
{
    models::Line part;
    part.cells.assign(line.cells.begin() + static_cast<long>(span.first_cell),
                      line.cells.begin() + static_cast<long>(span.end_cell));
    return models::plainText(part);
}

// Of the first stretch with this text the probability of the role; 0 when it is not given.
double roleOf(const std::string& typed, const std::string& part, LineRole role,
              const models::RoleContext& context = service)
{
    const std::vector<models::Line> lines = linesTyped(typed);
    const auto roles = models::guessRoles(lines, context);
    REQUIRE(roles.size() == lines.size());
    for (std::size_t i = 0; i < lines.size(); ++i)
        for (const models::RoleSpan& span : roles[i])
            if (partText(lines[i], span) == part && span.role == role)
                return span.probability;
    return 0;
}

}  // namespace

TEST_CASE("A mark's parts are told apart", "[models][roles]")
{
    const std::string mark = "HARSKELL & SONS LTD / SIZE 4 {arrow} / 1941";
    CHECK(roleOf(mark, "HARSKELL & SONS LTD", LineRole::Maker) > 0.9);
    CHECK(roleOf(mark, "SIZE 4", LineRole::Size) > 0.9);
    CHECK(roleOf(mark, "\u2191", LineRole::Property) > 0.9);
    CHECK(roleOf(mark, "1941", LineRole::Date) > 0.9);
    CHECK(roleOf("T.H. & CO 1941", "T.H. & CO", LineRole::Maker) > 0.8);
    CHECK(roleOf("T.H. & CO 1941", "1941", LineRole::Date) > 0.8);
}

TEST_CASE("The word that leads a date says what it is for", "[models][roles]")
{
    // PATTERN 1931 1942: the pattern's year bounds the date made, the other is it.
    CHECK(roleOf("PATTERN 1931 1942", "1931", LineRole::Pattern) > 0.8);
    CHECK(roleOf("PATTERN 1931 1942", "1942", LineRole::Date) > 0.8);
    CHECK(roleOf("INSP. 3/44", "3/44", LineRole::Inspection) > 0.8);
    CHECK(roleOf("CONTRACT 1938", "1938", LineRole::Contract) > 0.8);
    CHECK(roleOf("DATE 1938", "1938", LineRole::Date) > 0.9);
    CHECK(roleOf("S.H. 12", "S.H. 12", LineRole::Inspection) > 0.5);
}

TEST_CASE("What can be a size or a year is both, as the context has it", "[models][roles]")
{
    const double size = roleOf("36", "36", LineRole::Size),
                 date = roleOf("36", "36", LineRole::Date);
    CHECK(size > 0.2);
    CHECK(date > 0.2);
    CHECK(size + date <= 1 + 1e-9);
    const models::RoleContext no_sizes{{1921, 1958}, {}, {}};
    CHECK(roleOf("36", "36", LineRole::Size, no_sizes) < size);
    const models::RoleContext later{{1940, 1958}, {"28", "32", "36"}, {}};
    CHECK(roleOf("36", "36", LineRole::Date, later) < 0.05);  // no such year
    CHECK(roleOf("SIZE 36", "36", LineRole::Size) > 0.9);
}

TEST_CASE("Numbers that are no dates are not made dates", "[models][roles]")
{
    CHECK(roleOf("19407", "19407", LineRole::Date) == 0);
    CHECK(roleOf("19407", "19407", LineRole::Owner) > 0.2);
    CHECK(roleOf("No 7301", "NO 7301", LineRole::Date) == 0);
    CHECK(roleOf("LOT 12", "LOT 12", LineRole::Other) + roleOf("LOT 12", "12", LineRole::Other) >
          0.8);
    CHECK(roleOf("NAME PELLOW", "NAME PELLOW", LineRole::Owner) > 0.8);
}

TEST_CASE("Spans keep to their line and sum to one at most", "[models][roles]")
{
    const auto lines = linesTyped("[- - -] 19[.]1 / +++ / A / [....] & CO {arrow} 40?");
    const auto roles = models::guessRoles(lines, service);
    for (std::size_t i = 0; i < lines.size(); ++i)
        for (const models::RoleSpan& span : roles[i]) {
            CHECK(span.first_cell < span.end_cell);
            CHECK(span.end_cell <= lines[i].cells.size());
            double sum = 0;
            for (const models::RoleSpan& other : roles[i])
                sum += other.first_cell == span.first_cell ? other.probability : 0;
            CHECK(sum <= 1 + 1e-9);
        }
    CHECK(models::guessRoles({}).empty());
    CHECK(models::guessRoles({models::Line{}}).front().empty());
}

TEST_CASE("What a date of a role bounds", "[models][roles]")
{
    CHECK(models::boundOf(LineRole::Date) == models::DateBound::Exact);
    CHECK(models::boundOf(LineRole::Pattern) == models::DateBound::NotBefore);
    CHECK(models::boundOf(LineRole::Contract) == models::DateBound::NotBefore);
    CHECK(models::boundOf(LineRole::Inspection) == models::DateBound::NotAfter);
    CHECK(models::boundOf(LineRole::Owner) == models::DateBound::None);
}

TEST_CASE("The item type's years bound its dates", "[models][roles]")
{
    models::MakerRegister known;
    models::ItemType early, late, endless;
    early.type_id = "early";
    early.introduced = "1850";
    early.withdrawn = "1870";
    late.type_id = "late";
    late.introduced = "1937";
    late.withdrawn = "1958";
    endless.type_id = "endless";
    known.item_types = {early, late, endless};
    const auto years = [&](const std::string& type) {
        const models::DateContext dates = models::roleContextOf(known, type).dates;
        return std::pair(dates.earliest_year, dates.latest_year);
    };
    // Five years beyond its own: pattern before, old stock after.
    CHECK(years("late") == std::pair(1932, 1963));
    CHECK(years("early") == std::pair(1845, 1875));
    CHECK(years("endless") == years(""));
    CHECK(roleOf("62", "62", LineRole::Date, models::roleContextOf(known, "early")) > 0.2);
    CHECK(models::readDates(linesTyped("62")[0], models::roleContextOf(known, "early").dates)
              .at(0)
              .edtf == "1862");
}

TEST_CASE("A code that the register lists for a year is a date", "[models][roles]")
{
    models::MakerRegister known;
    known.codes = {{"YA", models::CodeMeaning::Year, "1941", "", "", "", "", "", 0}};
    CHECK(roleOf("YA", "YA", LineRole::Date, models::roleContextOf(known, "")) > 0.1);
    CHECK(roleOf("YA", "YA", LineRole::Date, models::roleContextOf({}, "")) == 0);
}

TEST_CASE("A number's sign leads to no date", "[models][roles]")
{
    for (const char* typed : {"NO. 1940", "NO 1940", "No. 1940", "NO.1940", "SER NO 1940"}) {
        CAPTURE(typed);
        CHECK(roleOf(typed, "1940", LineRole::Date) < 0.1);
        CHECK(roleOf(typed, "1940", LineRole::Owner) + roleOf(typed, "1940", LineRole::Other) +
                  roleOf(typed, "1940", LineRole::Contract) >
              0.9);
    }
    CHECK(roleOf("NO. 40", "40", LineRole::Date) < 0.1);
    // The number has used the word up; the date behind it is one.
    for (const char* typed : {"NO 7301 1941", "LOT 12 1941", "SIZE 4 1941", "MK 2 1941"})
        CHECK(roleOf(typed, "1941", LineRole::Date) > 0.8);
    CHECK(roleOf("CONTRACT NO. 1938", "1938", LineRole::Contract) > 0.8);
}

TEST_CASE("Words of property, repair and making lead", "[models][roles]")
{
    CHECK(roleOf("PROPERTY 40", "40", LineRole::Property) > 0.8);
    CHECK(roleOf("PROP. 1940", "1940", LineRole::Property) > 0.8);
    CHECK(roleOf("PROPERTY OF PELLOW", "PROPERTY OF PELLOW", LineRole::Property) > 0.8);
    CHECK(roleOf("REPAIRED 1944", "1944", LineRole::Inspection) > 0.8);
    CHECK(roleOf("REP. 1944", "1944", LineRole::Inspection) > 0.8);
    CHECK(roleOf("MADE 1941", "1941", LineRole::Date) > 0.8);
    CHECK(roleOf("ISSUED 3 MAR 1941", "3 MAR 1941", LineRole::Inspection) > 0.8);
    CHECK(roleOf("MADE BY PELLOW", "MADE BY PELLOW", LineRole::Maker) > 0.8);
}
