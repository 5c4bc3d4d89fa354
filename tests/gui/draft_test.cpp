#include "app/gui/draft.h"

#include <QDir>
#include <QPushButton>
#include <catch2/catch.hpp>
#include <fstream>

#include "tests/gui/readings.h"
#include "tests/gui/window_harness.h"

using gui_tests::WindowHarness;

namespace {

gui::Draft someDraft()
{
    gui::StampWork stamp;
    stamp.id = "a-stamp";
    stamp.outline.corners = {cv::Point2f(1.25f, 2), {30, 4.5f}, {29, 20}, {2, 18}};
    stamp.outline.up_deg = 12.5;
    stamp.shown = gui_tests::engineReading({"HART", "19"});
    stamp.shown.lines[0].cells[0].by = "Maud Pell";
    stamp.photo_from_rectified = cv::Matx33d(1, 2, 3, 4, 5, 6, 7, 8, 9);
    stamp.seen = {{0, 0}, {0, 1}};
    stamp.looked_ahead = true;
    gui::Draft draft;
    draft.photo =
        "/photos/stra\xC3\x9F"
        "e.jpg";
    draft.photo_sha256 = "ab12";
    draft.saved_at = "1956-03-01T12:00:00Z";
    draft.stamps = {stamp};
    draft.fields.notes = "found in a \"loft\"";
    draft.fields.certainty = models::Certainty::Probable;
    draft.fields.owner = "the Trust";
    draft.fields.condition = "worn";
    draft.fields.place_found = "Saltmere";
    draft.fields.stamps["a-stamp"] = {models::StampPart::Lining, "left",
                                      models::StampMethod::Stencil, "violet", true};
    draft.fields.features["end-tab"] = {models::FeatureSeen::AlteredLater, "sewn anew"};
    draft.fields.measurements = {{"m1", "length", "2 1/4 in", "tape"}};
    draft.fields.events = {{"", models::EventKind::Inspected, "1943", "a-stamp"}};
    draft.fields.replaces = "c1";
    draft.fields.why_changed = "the tape had shrunk";
    return draft;
}

int draftsIn(const WindowHarness& person)
{
    const QDir folder(QString::fromStdString((person.archiveFolder() / "drafts").string()));
    return static_cast<int>(folder.entryList({"*.json"}, QDir::Files).size());
}

}  // namespace

TEST_CASE("A draft written and read back is the same draft", "[app][gui][draft]")
{
    const gui::Draft draft = someDraft();
    const gui::Draft back = gui::draftFromText(gui::draftText(draft));
    CHECK(back.photo == draft.photo);
    CHECK(back.photo_sha256 == draft.photo_sha256);
    CHECK(back.saved_at == draft.saved_at);
    CHECK(back.fields == draft.fields);
    REQUIRE(back.stamps.size() == 1);
    const gui::StampWork &a = draft.stamps[0], &b = back.stamps[0];
    CHECK(b.id == a.id);
    CHECK(b.outline.corners == a.outline.corners);
    CHECK(b.outline.up_deg == a.outline.up_deg);
    CHECK(b.shown == a.shown);
    CHECK(b.photo_from_rectified == a.photo_from_rectified);
    CHECK(b.seen == a.seen);
    CHECK(b.looked_ahead);
    CHECK_FALSE(b.gone_through);
}

TEST_CASE("A damaged draft is a sentence that names it, and the others are read",
          "[app][gui][draft]")
{
    QTemporaryDir folder;
    const std::filesystem::path path = folder.path().toStdString();
    const gui::DraftFolder drafts(path);
    drafts.keep(someDraft());
    const std::string text = gui::draftText(someDraft());
    std::ofstream(path / "torn.json") << text.substr(0, text.size() / 2);
    std::ofstream(path / "newer.json") << R"({"draft_version": 99})";
    const auto found = drafts.readAll();
    CHECK(found.drafts.size() == 1);
    REQUIRE(found.troubles.size() == 2);
    CHECK(found.troubles[0].find("newer.json") != std::string::npos);
    CHECK(found.troubles[1].find("torn.json") != std::string::npos);
    drafts.discard("ab12");
    CHECK(drafts.readAll().drafts.empty());
}

TEST_CASE("A draft that cannot be kept says so", "[app][gui][draft]")
{
    QTemporaryDir folder;
    const std::filesystem::path file = std::filesystem::path(folder.path().toStdString()) / "file";
    std::ofstream(file) << "no folder";
    CHECK_THROWS_AS(gui::DraftFolder(file / "drafts").keep(someDraft()), gui::DraftError);
}

TEST_CASE("Work that was not filed outlives a crash and is offered again", "[app][gui][draft]")
{
    WindowHarness person;
    person.openDrawn();
    person.type("BE");
    REQUIRE(person.waitFor([&] { return draftsIn(person) == 1; }));

    person.restart();  // as after a crash: nothing was closed or asked
    person.window().offerDrafts();
    CHECK(person.message().contains("strap.png"));
    REQUIRE(person.focus()->objectName() == "answer1");
    person.key(Qt::Key_Space);
    REQUIRE(person.waitFor([&] { return person.sitting().session() != nullptr; }));
    CHECK(person.text() == "BERT LTD");
    CHECK(person.session().stamp()->shown.lines[0].cells[0].by == "Maud Pell");
    CHECK(person.sitting().unfiled().size() == 1);

    person.sitting().fileRecord({});
    CHECK(draftsIn(person) == 0);
}

TEST_CASE("A draft that was filed just before a crash is put away, and nothing is filed twice",
          "[app][gui][draft]")
{
    namespace fs = std::filesystem;
    WindowHarness person;
    person.openDrawn();
    person.type("B");
    REQUIRE(person.waitFor([&] { return draftsIn(person) == 1; }));
    QTest::qWait(20);
    // What lies on the disk when the program ends after the record is stored, but no later.
    const fs::path before = person.folder() / "before";
    fs::create_directories(before);
    for (const char* kept : {"drafts", "table.json"})
        fs::copy(person.archiveFolder() / kept, before / kept, fs::copy_options::recursive);
    person.sitting().fileRecord({});
    person.restart();
    for (const char* kept : {"drafts", "table.json"})
        fs::copy(before / kept, person.archiveFolder() / kept,
                 fs::copy_options::recursive | fs::copy_options::overwrite_existing);

    person.window().restoreTable();
    CHECK(person.message().contains("strap.png was filed as"));
    person.window().offerDrafts();
    CHECK_FALSE(person.message().contains("begun"));
    REQUIRE(person.waitFor([&] { return person.sitting().session() != nullptr; }));
    CHECK(person.text() == "BART LTD");
    CHECK(person.sitting().record() != nullptr);
    CHECK(person.sitting().unfiled().empty());
    CHECK(draftsIn(person) == 0);
    CHECK(person.sitting().find({}).size() == 1);
}

TEST_CASE("A photo opened again takes its draft up without being asked", "[app][gui][draft]")
{
    WindowHarness person;
    const auto photo = gui_tests::drawPhoto(person.folder(), "strap.png");
    person.open({photo});
    person.type("BE");
    REQUIRE(person.waitFor([&] { return draftsIn(person) == 1; }));
    person.restart();
    person.open({photo});
    person.window().offerDrafts();
    CHECK(person.message().contains("taken up"));
    CHECK(person.text() == "BERT LTD");
}

TEST_CASE("Undoing everything leaves no draft behind", "[app][gui][draft]")
{
    WindowHarness person;
    person.openDrawn();
    person.type("B");
    REQUIRE(person.waitFor([&] { return draftsIn(person) == 1; }));
    person.key(Qt::Key_Z, Qt::ControlModifier);
    REQUIRE(person.waitFor([&] { return draftsIn(person) == 0; }));
}

TEST_CASE("Closing with unfiled work asks within the window", "[app][gui][draft]")
{
    WindowHarness person;
    person.openDrawn();
    person.type("B");
    person.key(Qt::Key_Q, Qt::ControlModifier);
    REQUIRE(person.window().isVisible());
    CHECK(person.message().contains("not filed"));
    person.key(Qt::Key_Tab);
    person.key(Qt::Key_Space);  // stay
    CHECK(person.window().isVisible());
    CHECK(person.focus()->objectName() == "stampView");
    person.key(Qt::Key_Q, Qt::ControlModifier);
    person.key(Qt::Key_Space);  // close, the draft is kept
    CHECK_FALSE(person.window().isVisible());
    CHECK(draftsIn(person) == 1);
}

TEST_CASE("Going to another photo and back loses nothing", "[app][gui][draft]")
{
    WindowHarness person;
    std::vector<std::filesystem::path> photos;
    for (int i = 0; i < 5; ++i)
        photos.push_back(gui_tests::drawPhoto(person.folder(), "photo" + std::to_string(i) + ".png",
                                              {{"HART LTD", "193" + std::to_string(i)}}));
    person.open(photos);
    person.type("B");
    for (int i = 1; i < 5; ++i) {
        person.key(Qt::Key_PageDown, Qt::ControlModifier);
        REQUIRE(person.waitFor([&] { return person.sitting().session() != nullptr; }));
    }
    person.sitting().goTo(0);
    REQUIRE(person.waitFor([&] { return person.sitting().session() != nullptr; }));
    CHECK(person.text() == "BART LTD");
    person.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(person.text() == "HART LTD");
}
