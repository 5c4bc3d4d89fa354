// Several who work with one archive at once.
#include <atomic>
#include <functional>
#include <string>
#include <thread>

#include <catch2/catch.hpp>

#include "models/archive/archive.h"
#include "tests/archive/sample_records.h"

using namespace models;
using support::TemporaryFolder;

namespace {

// Looks at an archive again and again: what must not be, and how often there was something to see.
struct Looks {
    int torn = 0, times = 0;
    std::size_t last = 0;
    std::string trouble;

    void look(const Archive& archive)
    {
        const std::vector<FoundItem> found = archive.find({});
        torn += found.size() < last ? 1 : 0;
        last = found.size();
        for (const FoundItem& item : found)
            torn += item.text == "HALLER / 1941" ? 0 : 1;
        ++times;
    }
};

}  // namespace

TEST_CASE("One writes while two read, and each sees whole records only", "[archive][damage]")
{
    const TemporaryFolder folder;
    Archive::open(folder.path(), "Ole");
    constexpr int records = 40, readers = 2;
    std::atomic<bool> done = false;
    std::atomic<int> looking = 0;
    std::string not_written;
    const auto write = [&] {
        try {
            Archive archive = Archive::open(folder.path(), "writer");
            // However late a busy machine starts the readers, they look while this writes.
            for (int i = 0; i < records; ++i) {
                archive.addItem(support::itemReading("HALLER / 1941"));
                while (i == 0 && looking < readers)
                    std::this_thread::yield();
            }
        } catch (const ArchiveError& error) {
            not_written = error.what();
        }
        done = true;
    };
    const auto read = [&](Looks& looks) {
        try {
            const Archive archive = Archive::open(folder.path(), "reader");
            looks.look(archive);
            ++looking;
            while (!done)
                looks.look(archive);
            looks.look(archive);
        } catch (const ArchiveError& error) {
            looks.trouble = error.what();
            ++looking;
        }
    };
    Looks one, two;
    std::thread writer(write), first(read, std::ref(one)), second(read, std::ref(two));
    writer.join();
    first.join();
    second.join();
    CHECK(not_written.empty());
    for (const Looks* looks : {&one, &two}) {
        CHECK(looks->trouble.empty());
        CHECK(looks->torn == 0);
        CHECK(looks->times > 1);
        CHECK(looks->last == records);
    }
}
