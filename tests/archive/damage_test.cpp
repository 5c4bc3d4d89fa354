// What an archive does with a file that is harmed, held, foreign or full: a sentence, never a crash
// and never a record that is silently wrong.
#include <csignal>
#include <fstream>
#include <random>

#include <sys/resource.h>

#include <QSqlDatabase>
#include <QSqlQuery>
#include <QString>
#include <QVariant>

#include <catch2/catch.hpp>

#include "models/archive/archive.h"
#include "tests/archive/sample_records.h"

using namespace models;
using Catch::Contains;
using support::TemporaryFolder;

namespace {

// An archive with a few records, as bytes, and what it holds.
struct Sample {
    std::string bytes;
    std::vector<ItemRecord> items;
};

std::vector<ItemRecord> everything(const std::filesystem::path& folder)
{
    const Archive archive = Archive::open(folder, "a reader");
    std::vector<ItemRecord> items;
    for (const FoundItem& found : archive.find({}))
        items.push_back(archive.item(found.id).value());
    return items;
}

Sample sampleIn(const TemporaryFolder& folder)
{
    {
        Archive archive =
            Archive::open(folder.path(), "Ole", [] { return std::string("2024-03-01T08:00:00Z"); });
        archive.addItem(support::fullItem(folder));
        for (int i = 0; i < 12; ++i)
            archive.addItem(support::itemReading("HALLER & CO / 19[.]" + std::to_string(i)));
    }
    return {support::bytesOf(folder.path() / "archive.sqlite"), everything(folder.path())};
}

// Opens an archive in `folder` with these bytes. Either a sentence that names the file, or all
// records as they were.
enum class Outcome { Refused, Whole, SilentlyWrong };

Outcome outcomeOf(const TemporaryFolder& folder, const std::string& bytes, const Sample& sample)
{
    folder.write("archive.sqlite", bytes);
    try {
        return everything(folder.path()) == sample.items ? Outcome::Whole : Outcome::SilentlyWrong;
    } catch (const ArchiveError& error) {
        INFO(error.what());
        CHECK(std::string(error.what()).find("archive.sqlite") != std::string::npos);
        return Outcome::Refused;
    }
}

// A second program at the archive's file.
class OtherProgram {
public:
    explicit OtherProgram(const std::filesystem::path& folder)
    {
        QSqlDatabase connection = QSqlDatabase::addDatabase("QSQLITE", "other program");
        connection.setDatabaseName(QString::fromStdString((folder / "archive.sqlite").string()));
        REQUIRE(connection.open());
    }
    ~OtherProgram() { QSqlDatabase::removeDatabase("other program"); }

    void run(const QString& sql) const
    {
        QSqlQuery query(QSqlDatabase::database("other program"));
        REQUIRE(query.exec(sql));
    }
};

}  // namespace

TEST_CASE("A file that was cut short is refused", "[archive][damage]")
{
    const TemporaryFolder folder;
    const Sample sample = sampleIn(folder);
    std::mt19937 random(1);
    std::uniform_int_distribution<std::size_t> length(0, sample.bytes.size() - 1);
    for (int i = 0; i < 60; ++i) {
        const std::size_t kept = length(random);
        CAPTURE(kept);
        CHECK(outcomeOf(folder, sample.bytes.substr(0, kept), sample) == Outcome::Refused);
    }
    CHECK(outcomeOf(folder, "", sample) == Outcome::Refused);
    CHECK(outcomeOf(folder, sample.bytes, sample) == Outcome::Whole);
}

TEST_CASE("A bit that was turned is noticed, or changes nothing", "[archive][damage]")
{
    const TemporaryFolder folder;
    const Sample sample = sampleIn(folder);
    std::mt19937 random(2);
    std::uniform_int_distribution<std::size_t> place(0, sample.bytes.size() - 1);
    std::uniform_int_distribution<int> bit(0, 7);
    int refused = 0;
    constexpr int tries = 600;
    for (int i = 0; i < tries; ++i) {
        std::string bytes = sample.bytes;
        const std::size_t at = place(random);
        bytes[at] = static_cast<char>(bytes[at] ^ (1 << bit(random)));
        CAPTURE(at);
        const Outcome outcome = outcomeOf(folder, bytes, sample);
        CHECK(outcome != Outcome::SilentlyWrong);
        refused += outcome == Outcome::Refused ? 1 : 0;
    }
    CHECK(refused > tries / 10);  // most of such a small file is empty room between its rows
}

TEST_CASE("A stretch that was overwritten is noticed, or changes nothing", "[archive][damage]")
{
    const TemporaryFolder folder;
    const Sample sample = sampleIn(folder);
    std::mt19937 random(3);
    std::uniform_int_distribution<std::size_t> place(0, sample.bytes.size() - 600);
    std::uniform_int_distribution<int> byte(0, 255);
    for (int i = 0; i < 100; ++i) {
        std::string bytes = sample.bytes;
        const std::size_t at = place(random);
        for (std::size_t k = at; k < at + 512; ++k)
            bytes[k] = static_cast<char>(i % 2 == 0 ? 0 : byte(random));
        CAPTURE(at);
        CHECK(outcomeOf(folder, bytes, sample) != Outcome::SilentlyWrong);
    }
}

TEST_CASE("A row that was changed by hand is noticed", "[archive][damage]")
{
    const TemporaryFolder folder;
    sampleIn(folder);
    OtherProgram(folder.path()).run("UPDATE reading SET typed = 'X' WHERE ordinal = 1");
    const Archive archive = Archive::open(folder.path(), "Ole");
    CHECK_THROWS_WITH(archive.find({}), Contains("damaged") && Contains("backup"));
}

TEST_CASE("What is no archive, or a newer one, is left as it is", "[archive][damage]")
{
    const TemporaryFolder folder;
    const auto refusal = [&] {
        try {
            Archive::open(folder.path(), "Ole");
            return std::string();
        } catch (const ArchiveError& error) {
            return std::string(error.what());
        }
    };
    SECTION("a text file")
    {
        folder.write("archive.sqlite", std::string(5000, 'x'));
        CHECK_THAT(refusal(), Contains("not a Weftmark archive"));
        CHECK(support::bytesOf(folder.path() / "archive.sqlite") == std::string(5000, 'x'));
    }
    SECTION("another program's database")
    {
        OtherProgram(folder.path()).run("CREATE TABLE song (title TEXT)");
        const std::string before = support::bytesOf(folder.path() / "archive.sqlite");
        CHECK_THAT(refusal(), Contains("not a Weftmark archive"));
        CHECK(support::bytesOf(folder.path() / "archive.sqlite") == before);
    }
    SECTION("a newer version")
    {
        sampleIn(folder);
        OtherProgram(folder.path()).run("PRAGMA user_version = 999");
        const std::string before = support::bytesOf(folder.path() / "archive.sqlite");
        CHECK_THAT(refusal(), Contains("newer") && Contains("999") && Contains("update"));
        CHECK(support::bytesOf(folder.path() / "archive.sqlite") == before);
    }
    SECTION("tables that were changed")
    {
        sampleIn(folder);
        OtherProgram(folder.path()).run("ALTER TABLE item ADD COLUMN colour TEXT");
        CHECK_THAT(refusal(), Contains("tables have changed"));
    }
    SECTION("a folder in the place of the file")
    {
        std::filesystem::create_directory(folder.path() / "archive.sqlite");
        CHECK_THAT(refusal(), Contains("archive.sqlite"));
    }
}

TEST_CASE("A folder that cannot be used is named", "[archive][damage]")
{
    const TemporaryFolder folder;
    const std::filesystem::path file = folder.write("a file", "");
    CHECK_THROWS_WITH(Archive::open(file, "Ole"), Contains("a file"));
    CHECK_THROWS_WITH(Archive::open(file / "below", "Ole"), Contains("below"));
    CHECK_THROWS_AS(Archive::open("/proc/weftmark", "Ole"), ArchiveError);
    CHECK_THROWS_WITH(Archive::open(folder.path() / "\xFF", "Ole"), Contains("UTF-8"));
}

TEST_CASE("Opening again changes nothing", "[archive][damage]")
{
    const TemporaryFolder folder;
    const Sample sample = sampleIn(folder);
    for (int i = 0; i < 2; ++i) {
        Archive::open(folder.path(), "Ole");
        CHECK(support::bytesOf(folder.path() / "archive.sqlite") == sample.bytes);
    }
}

TEST_CASE("An archive that another program holds is told so after a while", "[archive][damage]")
{
    const TemporaryFolder folder;
    sampleIn(folder);
    Archive archive = Archive::open(folder.path(), "Ole");
    const OtherProgram other(folder.path());
    other.run("BEGIN IMMEDIATE");
    CHECK(archive.find({}).size() == 13);  // reading goes on beside a writer
    CHECK_THROWS_WITH(archive.addItem(support::itemReading("A")),
                      Contains("in use by another program"));
    other.run("ROLLBACK");
    archive.addItem(support::itemReading("A"));
    CHECK(archive.find({}).size() == 14);
}

TEST_CASE("A full disk loses nothing that was there", "[archive][damage]")
{
    const TemporaryFolder folder;
    const Sample sample = sampleIn(folder);
    Archive archive = Archive::open(folder.path(), "Ole");
    ItemRecord large = support::itemReading("A");
    large.notes = std::string(4'000'000, 'n');

    // As if the disk ended at a size that the file has already nearly reached.
    struct rlimit before {};
    REQUIRE(getrlimit(RLIMIT_FSIZE, &before) == 0);
    struct rlimit tight = before;
    tight.rlim_cur = sample.bytes.size() + 4096;
    const auto handler = std::signal(SIGXFSZ, SIG_IGN);
    REQUIRE(setrlimit(RLIMIT_FSIZE, &tight) == 0);
    std::string told;
    try {
        archive.addItem(large);
    } catch (const ArchiveError& error) {
        told = error.what();
    }
    REQUIRE(setrlimit(RLIMIT_FSIZE, &before) == 0);
    std::signal(SIGXFSZ, handler);
    CHECK_THAT(told, Contains("the disk may be full") && Contains("nothing was stored"));
    CHECK(everything(folder.path()) == sample.items);
    archive.addItem(large);  // once there is room
    CHECK(archive.find({}).size() == sample.items.size() + 1);
}
