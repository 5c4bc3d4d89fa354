#include "models/experience.h"

#include <catch2/catch.hpp>

#include "models/archive/archive.h"
#include "tests/archive/sample_records.h"
#include "tests/support/temporary_folder.h"

using namespace models;
using support::TemporaryFolder;

namespace {

const std::vector<TaughtLetter> nothing;

// As typed throughout by this reader, an engine or a person, before any maker was in view.
ReadingRecord readBy(const std::string& reader, const std::string& typed)
{
    ReadingRecord record;
    record.reading = support::typedReading(reader, typed);
    record.reading.candidates_were_shown = false;
    for (Line& line : record.reading.lines)
        for (Cell& cell : line.cells)
            cell.by = reader;
    return record;
}

// What an archive learns from one stamp that was read so, less what was seen rightly.
std::vector<TaughtLetter> misreadOf(const std::vector<ReadingRecord>& readings)
{
    const TemporaryFolder folder;
    StampRecord stamp;
    stamp.readings = readings;
    ItemRecord item;
    item.stamps = {stamp};
    Archive archive = Archive::open(folder.path() / "archive", "Ines Körber");
    archive.addItem(item);
    std::vector<TaughtLetter> misread;
    for (const TaughtLetter& letter : archive.taughtLetters())
        if (letter.truth != letter.seen)
            misread.push_back(letter);
    return misread;
}

}  // namespace

TEST_CASE("What a person had read earlier is no engine's error", "[archive][confusion]")
{
    const ReadingRecord engine = readBy("line-reader", "P.H. & CO"),
                        first = readBy("Ada Quell", "B.H. & CO"),
                        second = readBy("Ines Körber", "R.H. & CO");
    CHECK(misreadOf({first, second}) == nothing);
    CHECK(misreadOf({second, engine}) == nothing);
    CHECK(misreadOf({engine, second}) == std::vector<TaughtLetter>{{"R", "P"}});
    CHECK(misreadOf({engine, first, second}) == std::vector<TaughtLetter>{{"B", "P"}, {"R", "P"}});
}

TEST_CASE("The last engine's reading is what a person saw, one engine teaches another nothing",
          "[archive][confusion]")
{
    const ReadingRecord engine = readBy("line-reader", "P.H. & CO"),
                        other = readBy("tesseract 5.3 eng", "B.H. & CO"),
                        person = readBy("Ines Körber", "R.H. & CO");
    CHECK(misreadOf({engine, other}) == nothing);
    CHECK(misreadOf({engine, other, person}) == std::vector<TaughtLetter>{{"R", "B"}});
}
