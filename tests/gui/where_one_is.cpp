#include "tests/gui/where_one_is.h"

#include <QToolButton>
#include <iostream>
#include <random>

#include "app/gui/tray.h"
#include "models/typed_notation.h"
#include "tests/gui/window_harness.h"

namespace gui_tests {

std::string whereOneIs(gui::MainWindow& window)
{
    gui::Sitting& sitting = window.sitting();
    const gui::WorkSession* session = sitting.session();
    if (!session)
        return "no photo";
    std::string where = gui::nameOf(sitting.queue()->file(sitting.place())).toStdString();
    const gui::CellPlace cell = session->editor().place();
    where += " stamp " + std::to_string(session->current()) + " cell " + std::to_string(cell.line) +
             "," + std::to_string(cell.cell);
    for (const gui::StampWork& stamp : session->stamps())
        where += " | " + models::writeTyped(stamp.shown.lines);
    where += " | number " + session->fields().accession_number;
    QString layer;  // of the newest row of buttons: an older one may be going
    for (const QToolButton* button : window.findChildren<QToolButton*>())
        if (button->objectName().startsWith("layer") && button->isChecked())
            layer = button->objectName();
    where += " " + layer.toStdString();
    const auto tray = window.findChild<gui::Tray*>();
    return where + (tray->isClosed() ? " closed" : std::string(" ") + nameOf(tray->page()));
}

namespace {

void press(WindowHarness& person, std::mt19937& dice)
{
    static const QString letters = "ABCHRT0123?+[";
    const auto pick = dice() % 12;
    if (pick < 5)
        person.type(letters.mid(static_cast<qsizetype>(dice() % 13), 1));
    else if (pick < 7)
        person.key(dice() % 2 ? Qt::Key_Right : Qt::Key_Left);
    else if (pick == 7)
        person.key(Qt::Key_Down);
    else if (pick == 8)
        person.key(Qt::Key_Z, Qt::ControlModifier);
    else if (pick == 9)
        person.key(dice() % 2 ? Qt::Key_F3 : Qt::Key_F4);
    else if (pick == 10)
        person.key(dice() % 2 ? Qt::Key_F10 : Qt::Key_Escape);
    else {
        gui::FilingFields fields;
        fields.accession_number = "SHT." + std::to_string(dice() % 100);
        person.session().setFields(fields);
    }
}

}  // namespace

int sitUntilKilled(const std::string& folder, unsigned seed)
{
    const std::filesystem::path in = folder;
    auto script = std::make_shared<FakeScript>();
    WindowHarness person(script, [&](gui::SittingOptions& options) {
        options.archive_folder = in / "archive";
        options.draft_pause_ms = 300;
    });
    person.window().restoreTable();
    if (person.sitting().queue()->rowCount() == 0)
        person.open({in / "a.png", in / "b.png", in / "c.png"});
    std::mt19937 dice(seed);
    for (;;) {
        if (dice() % 15 == 0) {
            std::cout << "moving" << std::endl;
            person.key(Qt::Key_N, Qt::ControlModifier);
        } else if (person.sitting().session()) {
            press(person, dice);
        }
        person.waitFor([&] { return person.sitting().session() != nullptr; });
        std::cout << "now " << whereOneIs(person.window()) << std::endl;
        QTest::qWait(2);  // the table and the draft are kept
        std::cout << "kept" << std::endl;
    }
}

}  // namespace gui_tests
