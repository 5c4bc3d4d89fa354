#include <catch2/catch.hpp>
#include <cmath>
#include <random>
#include <string>

#include "models/candidates.h"
#include "models/csv_table.h"
#include "models/date_mark.h"
#include "models/edtf.h"
#include "models/leiden.h"
#include "models/letters.h"
#include "models/merge_readings.h"
#include "models/text_match.h"
#include "models/typed_notation.h"
#include "tests/models/random_reading.h"

namespace {

int upTo(std::mt19937& random, int most)
{
    return std::uniform_int_distribution<int>(0, most)(random);
}

// Text made of the pieces that a parser knows, in any order, and now and then of any bytes.
std::string foreignText(std::mt19937& random, const std::vector<std::string>& pieces)
{
    std::string text;
    for (int i = upTo(random, 14); i > 0; --i) {
        if (upTo(random, 5) == 0)
            text += static_cast<char>(upTo(random, 255));
        else
            text +=
                pieces[static_cast<std::size_t>(upTo(random, static_cast<int>(pieces.size()) - 1))];
    }
    return text;
}

const std::vector<std::string> notation_pieces = {"A",        "?",
                                                  "(",        ")",
                                                  "|",        "0|6",
                                                  "[",        "]",
                                                  ".",        "..",
                                                  "- - -",    "+",
                                                  "+ + +",    "~",
                                                  "5",        "3..5",
                                                  "{arrow}",  "{",
                                                  "}",        " ",
                                                  " / ",      "/",
                                                  "\n",       "\r\n",
                                                  "\\",       "{cut}",
                                                  "{open}",   "999",
                                                  "\xCC\xA3", "\xC3\x89",
                                                  "{guess ",  "{erased}",
                                                  "{over}",   "\xE2\x80\xA6",
                                                  "-"};
const std::vector<std::string> csv_pieces = {"maker_id", ",",  ";",     "\t",          "\"",
                                             "\"\"",     "\n", "\r\n",  "\r",          "a",
                                             "1930",     " ",  "sep=;", "\xEF\xBB\xBF"};
const std::vector<std::string> edtf_pieces = {"1940", "19", "X", "-", "03", "?", "~",  "%", "/",
                                              "..",   "[",  "]", "{", "}",  ",", "29", "0", "31"};

}  // namespace

TEST_CASE("Any text is a reading or a fault, never a crash", "[models][foreign]")
{
    std::mt19937 random(1);
    for (int round = 0; round < 20000; ++round) {
        const std::string text = foreignText(random, notation_pieces);
        CAPTURE(round, text);
        const models::ParsedNotation parsed = models::parseTyped(text);
        if (parsed.fault) {
            CHECK_FALSE(parsed.fault->expected.empty());
            REQUIRE(parsed.fault->position <= models::charactersOf(text).size());
            continue;
        }
        // What was understood is written so that it is understood alike.
        const models::ParsedNotation again = models::parseTyped(models::writeTyped(parsed.lines));
        REQUIRE_FALSE(again.fault);
        REQUIRE(again.lines == parsed.lines);
    }
}

TEST_CASE("Any text is a table or a fault, never a crash", "[models][foreign]")
{
    std::mt19937 random(2);
    for (int round = 0; round < 20000; ++round) {
        const std::string text = foreignText(random, csv_pieces);
        CAPTURE(round, text);
        const models::CsvTable table = models::readCsv(text);
        if (table.header.empty())
            CHECK_FALSE(table.faults.empty());
        for (const models::CsvRow& row : table.rows)
            REQUIRE(row.fields.size() == table.header.size());
    }
}

TEST_CASE("Any text has years in order or none", "[models][foreign]")
{
    std::mt19937 random(3);
    for (int round = 0; round < 20000; ++round) {
        const std::string text = foreignText(random, edtf_pieces);
        CAPTURE(round, text);
        const auto bounds = models::edtfYearBounds(text);
        if (!bounds)
            continue;
        REQUIRE((bounds->first || bounds->last));
        if (bounds->first && bounds->last)
            REQUIRE(*bounds->first <= *bounds->last);
    }
}

TEST_CASE("Any line is matched, dated, printed and merged", "[models][foreign]")
{
    std::mt19937 random(4);
    for (int round = 0; round < 1500; ++round) {
        models::Reading first, second;
        first.lines = randomLines(random);
        second.lines = randomLines(random);
        first.reader = second.reader = "tesseract";
        CAPTURE(round, models::writeTyped(first.lines), models::writeTyped(second.lines));
        for (const models::Line& line : first.lines) {
            const double match = models::logProbability(line, "H. & B.");
            REQUIRE(match <= 0);
            REQUIRE_FALSE(std::isnan(match));
            double certainty = 0;
            for (const models::DateMeaning& meaning : models::readDates(line)) {
                certainty = std::max(certainty, meaning.probability);
                REQUIRE(models::edtfYearBounds(meaning.edtf));
            }
            REQUIRE(certainty <= 1);
            REQUIRE((line.cells.empty() || !models::toLeiden(line).empty()));
        }
        for (const models::Line& line : models::mergeReadings({first, second}).lines)
            for (const models::Cell& cell : line.cells) {
                double sum = 0;
                for (const models::Alternative& alternative : cell.alternatives)
                    sum += alternative.certainty;
                REQUIRE(sum <= 1 + 1e-9);
            }
    }
}

TEST_CASE("Any reading is ranked, and the shares are one", "[models][foreign]")
{
    models::MakerRegister known;
    for (const char* text : {"H. & B.", "K7", "T.H. & CO"}) {
        models::Maker maker;
        maker.maker_id = maker.name = text;
        known.makers.push_back(maker);
        models::Mark mark;
        mark.maker_id = mark.text = text;
        mark.line = models::parseTyped(text).lines.front();
        known.marks.push_back(mark);
    }
    std::mt19937 random(5);
    for (int round = 0; round < 400; ++round) {
        models::Reading reading;
        reading.lines = randomLines(random);
        CAPTURE(round, models::writeTyped(reading.lines));
        const models::CandidateList list = models::rankCandidates({{reading, reading}, ""}, known);
        double sum = list.other_makers + list.unknown_maker;
        for (const models::Candidate& candidate : list.candidates)
            sum += candidate.probability;
        REQUIRE(sum == Approx(1).margin(1e-6));
    }
}
