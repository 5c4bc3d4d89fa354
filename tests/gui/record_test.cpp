#include <catch2/catch.hpp>

#include "app/gui/record_page.h"
#include "tests/gui/window_harness.h"

using gui_tests::WindowHarness;

namespace {

gui::FilingFields numbered(const std::string& accession_number, const std::string& date = {})
{
    gui::FilingFields fields;
    fields.accession_number = accession_number;
    fields.date_edtf = date;
    return fields;
}

}  // namespace

TEST_CASE("Outlines nobody went through are left out of the record unless they are likely marks",
          "[app][gui][record]")
{
    gui::StampWork stamp;
    stamp.outline.score = 0.3;
    CHECK_FALSE(gui::isWorthFiling(stamp, "Maud Pell"));
    stamp.outline.score = 0.9;
    CHECK_FALSE(gui::isWorthFiling(stamp, "Maud Pell"));  // not a letter of it read
    stamp.shown.lines.emplace_back();
    stamp.shown.lines[0].cells = {models::clearCell("A")};
    auto examined = std::make_shared<flow::StampExamination>();
    examined->proposal = stamp.shown;
    stamp.examined = examined;
    CHECK(gui::isWorthFiling(stamp, "Maud Pell"));
    stamp.outline.score = 0.3;
    CHECK_FALSE(gui::isWorthFiling(stamp, "Maud Pell"));
    stamp.gone_through = true;
    CHECK(gui::isWorthFiling(stamp, "Maud Pell"));
    stamp.gone_through = false;
    stamp.shown.lines[0].cells[0].by = "Maud Pell";
    CHECK(gui::isWorthFiling(stamp, "Maud Pell"));
}

TEST_CASE("A record keeps its outlines and takes another stamp", "[app][gui][record]")
{
    WindowHarness person;
    person.openDrawn();
    person.type("B");
    person.session().setFields(numbered("SHT.3"));
    person.sitting().fileRecord({});
    const vision::Quad filed = person.session().stamp()->outline.corners;

    person.key(Qt::Key_F9);
    person.key(Qt::Key_Right);
    CHECK(person.session().stamp()->outline.corners == filed);
    CHECK(person.message().contains("stays as it was filed"));
    person.key(Qt::Key_Delete);
    CHECK(person.session().stamps().size() == 1);
    person.key(Qt::Key_Insert);
    REQUIRE(person.waitFor(
        [&] { return person.script().stamps_examined == 1 && !person.sitting().isBusy(); }));
    person.window().findChild<QWidget*>("stampView")->setFocus();
    person.type("Q");
    CHECK(person.sitting().unfiled().size() == 1);
    person.sitting().fileRecord({});

    auto record = person.sitting().look("SHT.3");
    REQUIRE(record->stamps.size() == 2);
    CHECK(person.sitting().unfiled().empty());
    // What was added is tied to the record: it is corrected, not added again.
    person.key(Qt::Key_Home);
    person.type("R");
    person.sitting().fileRecord({});
    record = person.sitting().look("SHT.3");
    REQUIRE(record->stamps.size() == 2);
    const bool there =
        std::any_of(record->stamps.begin(), record->stamps.end(), [](const auto& stamp) {
            const auto& readings = stamp.views.at(0).readings;
            return std::any_of(readings.begin(), readings.end(), [](const auto& reading) {
                return models::plainText(reading.reading.lines.at(0)) == "RART LTD";
            });
        });
    CHECK(there);
}

TEST_CASE("An archive that cannot be used is a sentence, and the work stays", "[app][gui][record]")
{
    WindowHarness person;
    person.openDrawn();
    person.type("B");
    person.session().setFields(numbered("SHT.4"));
    person.sitting().fileRecord({});
    person.open({gui_tests::drawPhoto(person.folder(), "second.png", {{"HART LTD", "1939"}})});
    person.type("C");
    person.key(Qt::Key_S, Qt::ControlModifier);
    person.type("SHT.4");  // used already
    person.key(Qt::Key_S, Qt::ControlModifier);
    CHECK(person.message().contains("SHT.4"));
    CHECK(person.sitting().record() == nullptr);
    CHECK(person.text() == "CART LTD");
    CHECK(person.sitting().find({}).size() == 1);
}

TEST_CASE("A record is told with every reading under its reader's name", "[app][gui][record]")
{
    WindowHarness person;
    person.openDrawn();
    person.type("B");
    person.session().setFields(numbered("SHT<5>", "1938?"));
    person.sitting().fileRecord({});
    const QString page = gui::recordPage(*person.sitting().look("SHT<5>"));
    CHECK(page.contains("SHT&lt;5&gt;"));
    CHECK(page.contains("Maud Pell"));
    CHECK(page.contains("fake-reader 1"));
    CHECK(page.contains("BART LTD"));
    CHECK(page.contains("HART LTD"));
    CHECK(page.contains("1938?"));
    CHECK(page.contains("makers not in view"));
}
