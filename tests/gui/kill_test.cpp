#include <QCoreApplication>
#include <QProcess>
#include <catch2/catch.hpp>
#include <random>

#include "tests/gui/where_one_is.h"
#include "tests/gui/window_harness.h"

using gui_tests::WindowHarness;

namespace {

// What is told by then: where one was last, before it was kept and once it was.
struct Told {
    QString kept;   // the last place that was surely kept
    QString later;  // one that may have been kept; empty: none
    bool moving = false;
};

Told toldBy(const QByteArray& output)
{
    Told told;
    const QList<QByteArray> lines = output.split('\n');
    for (qsizetype i = 0; i + 1 < lines.size(); ++i) {  // the last one may be torn
        const QString line = QString::fromUtf8(lines[i]);
        if (line.startsWith("now ")) {
            told.later = line.mid(4);
        } else if (line == "kept") {
            told.kept = std::exchange(told.later, {});
            told.moving = false;
        } else if (line == "moving") {
            told.moving = true;
        }
    }
    return told;
}

QByteArray sitAndKill(const QString& folder, unsigned seed, int after_ms)
{
    QProcess process;
    process.start(QCoreApplication::applicationFilePath(),
                  {"--sit-until-killed", folder, QString::number(seed)});
    REQUIRE(process.waitForStarted());
    QByteArray output;
    while (!output.contains("kept")) {
        REQUIRE(process.waitForReadyRead(60000));
        output += process.readAllStandardOutput();
    }
    process.waitForReadyRead(0);
    QElapsedTimer since;
    since.start();
    while (since.elapsed() < after_ms) {
        process.waitForReadyRead(std::max<int>(1, after_ms - static_cast<int>(since.elapsed())));
        output += process.readAllStandardOutput();
    }
    process.kill();
    process.waitForFinished();
    return output + process.readAllStandardOutput();
}

}  // namespace

// SIGKILL at twenty random moments of one long sitting: what a crash or a flat battery does.
TEST_CASE("Killed at any moment, the window opens where one was", "[app][gui][kill]")
{
    QTemporaryDir folder;
    for (const char* name : {"a.png", "b.png", "c.png"})
        gui_tests::drawPhoto(folder.path().toStdString(), name);
    std::mt19937 dice(1956);
    int same_photo = 0;
    for (unsigned kill = 0; kill < 20; ++kill) {
        const Told told = toldBy(sitAndKill(folder.path(), kill, static_cast<int>(dice() % 400)));
        CAPTURE(kill, told.kept.toStdString(), told.later.toStdString(), told.moving);
        REQUIRE_FALSE(told.kept.isEmpty());
        WindowHarness person(std::make_shared<gui_tests::FakeScript>(),
                             [&](gui::SittingOptions& options) {
                                 options.archive_folder =
                                     std::filesystem::path(folder.path().toStdString()) / "archive";
                             });
        person.window().restoreTable();
        REQUIRE(person.waitFor([&] { return person.sitting().session() != nullptr; }));
        const QString now = QString::fromStdString(gui_tests::whereOneIs(person.window()));
        CAPTURE(now.toStdString());
        if (told.moving && now != told.kept && now != told.later) {
            // On the way elsewhere: the tray closes, and another photo is gone to.
            const bool elsewhere = now.section(' ', 0, 0) != told.kept.section(' ', 0, 0);
            CHECK((elsewhere || now.section(' ', 0, -2) == told.kept.section(' ', 0, -2)));
            continue;
        }
        ++same_photo;
        CHECK((now == told.kept || now == told.later));
    }
    CHECK(same_photo >= 10);  // else hardly anything was compared
}
