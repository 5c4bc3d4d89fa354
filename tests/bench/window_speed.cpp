// How quick the window is, with ten thousand makers of a made-up trade: window_speed [MAKERS]
// [lot]. With `lot` they have names of letters and numbers by lot, so that none of them ends or
// begins as others do, which is harder than any trade. The whole program's engines, on the samples;
// with QT_QPA_PLATFORM as it is, else without a display.
#include <QApplication>
#include <QEventLoop>
#include <QProcess>
#include <QTemporaryDir>
#include <QTimer>
#include <iomanip>
#include <iostream>

#include "app/gui/candidate_list.h"
#include "app/gui/stamp_view.h"
#include "app/gui/tray.h"
#include "tests/bench/gui_watch.h"
#include "tests/bench/made_register.h"
#include "tests/bench/trade_files.h"
#include "tests/gui/window_harness.h"

namespace {

namespace fs = std::filesystem;
using bench::Clock;
using gui_tests::WindowHarness;

void print(const std::string& what, double value, const std::string& unit, double bar)
{
    std::cout << std::left << std::setw(58) << what << std::right << std::fixed
              << std::setprecision(1) << std::setw(9) << value << " " << unit;
    if (bar > 0)
        std::cout << "   bar " << bar;
    std::cout << std::endl;
}

// A letter, a mark of doubt, a step, as one writes; every fourth press one goes back.
void pressSomething(WindowHarness& window, int i)
{
    static const QString letters = "ABCDEHKLMNORST0123456789";
    switch (i % 4) {
        case 0:
            return window.type(letters.mid(i / 4 % letters.size(), 1));
        case 1:
            return window.type("?");
        case 2:
            return window.key(Qt::Key_PageDown);
        default:
            window.key(i % 8 == 3 ? Qt::Key_Home : Qt::Key_Right);
    }
}

// From the key to the painted cells.
std::vector<double> paintTimes(WindowHarness& window, int presses)
{
    bench::PaintWatch watch(window.window().findChild<gui::StampView*>());
    std::vector<double> times;
    for (int i = 0; i < presses; ++i) {
        QTest::qWait(3);
        const int before = watch.painted;
        const auto start = Clock::now();
        pressSomething(window, i);
        while (watch.painted == before && bench::millisecondsSince(start) < 1000)
            QApplication::processEvents();
        QApplication::processEvents();
        if (watch.painted > before)
            times.push_back(bench::millisecondsSince(start));
    }
    return times;
}

// From the key to the candidates that follow from it, in view. The window's own loop waits: one
// that looks every ten milliseconds would add its own.
std::vector<double> candidateTimes(WindowHarness& window, int presses)
{
    std::vector<double> times;
    for (int i = 0; i < presses; ++i) {
        QTest::qWait(10);
        QEventLoop until_there;
        QObject::connect(&window.sitting(), &gui::Sitting::candidatesChanged, &until_there,
                         &QEventLoop::quit);
        QTimer::singleShot(20000, &until_there, &QEventLoop::quit);
        const auto start = Clock::now();
        window.type(i % 2 == 0 ? "E" : "B");
        until_there.exec();
        QApplication::processEvents();
        times.push_back(bench::millisecondsSince(start));
        window.key(Qt::Key_Home);
    }
    return times;
}

// Layers, nearer and farther, trays, another photo, undo: what else is done in an evening.
void doTheRest(WindowHarness& window)
{
    for (int round = 0; round < 6; ++round) {
        for (const Qt::Key layer : {Qt::Key_F3, Qt::Key_F4, Qt::Key_F5, Qt::Key_F6, Qt::Key_F3}) {
            window.key(layer);
            QTest::qWait(15);
        }
        for (const Qt::Key key : {Qt::Key_Plus, Qt::Key_Plus, Qt::Key_0, Qt::Key_G, Qt::Key_G}) {
            window.key(key, Qt::ControlModifier);
            QTest::qWait(15);
        }
        for (const Qt::Key tray : {Qt::Key_F9, Qt::Key_F10, Qt::Key_F11, Qt::Key_F9}) {
            window.key(tray);
            QTest::qWait(30);
        }
        window.key(Qt::Key_Escape);
        window.key(Qt::Key_Z, Qt::ControlModifier, 5);
        window.key(Qt::Key_Y, Qt::ControlModifier, 5);
        window.key(Qt::Key_N, Qt::ControlModifier);
        window.waitFor([&] { return window.sitting().session() != nullptr; }, 120000);
        QTest::qWait(200);
    }
}

// In a process of its own: from its start to a window that has taken a key and painted it.
int startOnce(const fs::path& known)
{
    const std::string began = qEnvironmentVariable("WEFTMARK_BEGAN").toStdString();
    WindowHarness window(gui::examinerOfFlow(known), known, {});
    bench::PaintWatch watch(&window.window());
    window.key(Qt::Key_F10);
    while (watch.painted == 0)
        QApplication::processEvents();
    QApplication::processEvents();
    const auto now =
        std::chrono::duration_cast<std::chrono::microseconds>(Clock::now().time_since_epoch())
            .count();
    std::cout << static_cast<double>(now - std::stoll(began)) / 1000 << "\n";
    return 0;
}

double startTime(const fs::path& program, const fs::path& known)
{
    std::vector<double> times;
    for (int i = 0; i < 6; ++i) {
        QProcess process;
        QProcessEnvironment around = QProcessEnvironment::systemEnvironment();
        const auto now =
            std::chrono::duration_cast<std::chrono::microseconds>(Clock::now().time_since_epoch())
                .count();
        around.insert("WEFTMARK_BEGAN", QString::number(now));
        process.setProcessEnvironment(around);
        process.start(QString::fromStdString(program.string()),
                      {"--start", QString::fromStdString(known.string())});
        process.waitForFinished(60000);
        if (i > 0)  // the first one warms
            times.push_back(process.readAllStandardOutput().trimmed().toDouble());
    }
    return bench::quantile(times, 0.5);
}

}  // namespace

int main(int argc, char** argv)
{
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM"))
        qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication application(argc, argv);
    if (argc > 2 && std::string(argv[1]) == "--start")
        return startOnce(argv[2]);
    const int makers = argc > 1 ? std::atoi(argv[1]) : 10000;
    QTemporaryDir folder;
    const fs::path known = folder.path().toStdString();
    const bool by_lot = argc > 2 && std::string(argv[2]) == "lot";
    if (by_lot)
        bench::writeMadeRegister(known, makers);
    else
        writeTrade(known, simulateTrade(static_cast<std::size_t>(makers), 0, 1));
    const double start = startTime(QApplication::applicationFilePath().toStdString(), known);

    WindowHarness window(gui::examinerOfFlow(known), known, [](gui::SittingOptions& options) {
        const gui::SittingOptions usual;
        options.read_ahead = true;
        options.draft_pause_ms = usual.draft_pause_ms;
        options.rank_pause_ms = usual.rank_pause_ms;
        options.outline_pause_ms = usual.outline_pause_ms;
    });
    std::cout << makers << (by_lot ? " makers with names by lot; " : " made makers; ")
              << QApplication::platformName().toStdString() << "; load " << std::flush;
    std::system("cut -d' ' -f1-3 /proc/loadavg");
    const bench::Heartbeat heartbeat(&window.window());
    const fs::path samples = fs::path(WEFTMARK_SOURCE_DIR) / "sample_images";
    window.window().openPhotos({samples / "easy", samples / "medium"});
    window.waitFor([&] { return window.sitting().session() != nullptr; }, 300000);
    const auto painted = paintTimes(window, 400);
    print("cell painted, median of " + std::to_string(painted.size()),
          bench::quantile(painted, 0.5), "ms", 16);
    print("cell painted, 95th percentile", bench::quantile(painted, 0.95), "ms", 0);
    window.key(Qt::Key_F11);
    window.key(Qt::Key_Escape);
    window.key(Qt::Key_F11);
    window.window().findChild<gui::StampView*>()->setFocus();
    const auto candidates = candidateTimes(window, 120);
    print("candidates, 95th percentile of " + std::to_string(candidates.size()),
          bench::quantile(candidates, 0.95), "ms", 60);
    print("candidates, median", bench::quantile(candidates, 0.5), "ms", 0);
    doTheRest(window);
    const auto waited = heartbeat.milliseconds();
    print("window's thread blocked, 99.9th percentile of " + std::to_string(waited.size()),
          bench::quantile(waited, 0.999), "ms", 50);
    print("window's thread blocked, longest", bench::quantile(waited, 1), "ms", 0);
    print("from the start of the program to a usable window", start, "ms", 800);
}
