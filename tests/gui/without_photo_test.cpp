// Records without a photo, or whose photo is gone, in the window.
#include <QTextBrowser>
#include <catch2/catch.hpp>

#include "app/gui/stamp_view.h"
#include "models/typed_notation.h"
#include "tests/gui/window_harness.h"

using gui_tests::WindowHarness;

namespace {

// As `weftmark item --stamp` files it: read on the object, nobody took a picture.
models::ItemRecord recordOf(const std::string& number, const std::vector<std::string>& stamps)
{
    models::ItemRecord item;
    item.accession_number = number;
    item.type_id = "belt-1937";
    for (const std::string& typed : stamps) {
        models::ReadingRecord reading;
        reading.reading.reader = "Maud Pell";
        reading.reading.basis = models::Basis::ObjectInHand;
        reading.reading.lines = models::parseTyped(typed).lines;
        for (models::Line& line : reading.reading.lines)
            for (models::Cell& cell : line.cells)
                cell.by = "Maud Pell";
        item.stamps.emplace_back().readings = {reading};
    }
    return item;
}

void fileRecord(const WindowHarness& person, const models::ItemRecord& item)
{
    models::Archive::open(person.archiveFolder(), "Maud Pell").addItem(item);
}

// From the list of records, by key.
void openFromList(WindowHarness& person)
{
    person.key(Qt::Key_F12);
    person.key(Qt::Key_Down);
    person.key(Qt::Key_Return);
    REQUIRE(person.waitFor([&] { return person.sitting().session() != nullptr; }));
}

}  // namespace

TEST_CASE("A piece without a photo is opened from the list, and corrected", "[app][gui][record]")
{
    WindowHarness person;
    fileRecord(person, recordOf("SHT.21", {"HART LTD / 1938"}));
    openFromList(person);
    CHECK(person.message().contains("no photo"));
    CHECK(person.text() == "HART LTD");
    auto view = person.window().findChild<gui::StampView*>();
    REQUIRE(view->strips().size() == 2);
    CHECK(view->strips()[0]->isVisible());
    CHECK(person.sitting().unfiled().empty());

    person.type("B");
    CHECK(person.sitting().unfiled() == QStringList{"SHT.21"});
    person.key(Qt::Key_S, Qt::ControlModifier);
    person.window().findChild<QWidget*>("owner")->setFocus();
    person.type("the Trust");
    REQUIRE(person.waitFor([&] {
        return person.window().findChild<QTextBrowser*>("evidence")->toPlainText().contains("1938");
    }));
    person.key(Qt::Key_S, Qt::ControlModifier);
    const auto record = person.sitting().look("SHT.21");
    REQUIRE(record);
    CHECK(record->owner == "the Trust");
    REQUIRE(record->stamps.size() == 1);
    REQUIRE(record->stamps[0].readings.size() == 2);
    const models::ReadingRecord& last = record->stamps[0].readings[1];
    CHECK(models::plainText(last.reading.lines.at(0)) == "BART LTD");
    CHECK(last.reading.basis == models::Basis::ObjectInHand);
    CHECK(last.supersedes == record->stamps[0].readings[0].id);
    CHECK(record->photos.empty());
    CHECK(person.sitting().unfiled().empty());
}

TEST_CASE("A piece of which nothing was read opens too, and shows what its evidence gives",
          "[app][gui][record]")
{
    WindowHarness person;
    fileRecord(person, recordOf("SHT.22", {}));
    openFromList(person);
    person.key(Qt::Key_S, Qt::ControlModifier);
    REQUIRE(person.waitFor([&] {
        const auto page = person.window().findChild<QTextBrowser*>("evidence");
        return page->toPlainText().contains("the item");
    }));
    person.window().findChild<QWidget*>("condition")->setFocus();
    person.type("worn");
    person.key(Qt::Key_S, Qt::ControlModifier);
    CHECK(person.sitting().look("SHT.22")->condition == "worn");
    // What needs a picture says so.
    person.key(Qt::Key_F9);
    person.key(Qt::Key_Insert);
    CHECK(person.message().contains("no photo"));
    person.key(Qt::Key_M, Qt::ControlModifier);
    CHECK(person.message().contains("no stamp"));
}

TEST_CASE("Changes of a record without a photo survive the end of the program",
          "[app][gui][record][draft]")
{
    WindowHarness person;
    fileRecord(person, recordOf("SHT.23", {"HART LTD / 1938"}));
    openFromList(person);
    person.type("B");
    QTest::qWait(60);
    person.restart();
    person.window().restoreTable();
    REQUIRE(person.sitting().session());
    CHECK(person.text() == "BART LTD");
    CHECK(person.message().contains("left it"));
    person.sitting().fileRecord({});
    CHECK(person.sitting().look("SHT.23")->stamps[0].readings.size() == 2);
    person.restart();
    person.window().offerDrafts();
    CHECK(person.message().isEmpty());
}

TEST_CASE("A record whose photo is gone opens with its letters, and the file is named",
          "[app][gui][record]")
{
    WindowHarness person;
    person.openDrawn();
    person.type("B");
    gui::FilingFields fields;
    fields.accession_number = "SHT.24";
    person.session().setFields(fields);
    person.sitting().fileRecord({});
    const auto record = person.sitting().look("SHT.24");
    std::filesystem::remove(record->photos.at(0).file);
    person.restart();
    openFromList(person);
    CHECK(person.message().contains(QString::fromStdString(record->photos[0].file.string())));
    CHECK(person.message().contains("without its picture"));
    CHECK(person.text() == "BART LTD");
    person.type("C");
    person.sitting().fileRecord({});
    const auto corrected = person.sitting().look("SHT.24");
    REQUIRE(corrected->stamps.size() == 1);
    CHECK(corrected->stamps[0].views.at(0).readings.size() ==
          record->stamps[0].views.at(0).readings.size() + 1);
}
