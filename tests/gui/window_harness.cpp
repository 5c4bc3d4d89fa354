#include "tests/gui/window_harness.h"

#include <QApplication>
#include <QLabel>
#include <stdexcept>

#include "app/gui/message_bar.h"

namespace gui_tests {

WindowHarness::WindowHarness(std::shared_ptr<FakeScript> script)
    : script_(script), examiner_(fakeExaminer(script))
{
    start();
}

WindowHarness::WindowHarness(gui::MakeExaminer examiner,
                             const std::filesystem::path& register_folder)
    : script_(std::make_shared<FakeScript>()),
      examiner_(std::move(examiner)),
      register_folder_(register_folder)
{
    start();
}

WindowHarness::WindowHarness(std::shared_ptr<FakeScript> script, Adjust adjust)
    : script_(script), examiner_(fakeExaminer(script)), adjust_(std::move(adjust))
{
    start();
}

WindowHarness::WindowHarness(gui::MakeExaminer examiner,
                             const std::filesystem::path& register_folder, Adjust adjust)
    : script_(std::make_shared<FakeScript>()),
      examiner_(std::move(examiner)),
      register_folder_(register_folder),
      adjust_(std::move(adjust))
{
    start();
}

void WindowHarness::start()
{
    gui::SittingOptions options;
    options.examiner = examiner_;
    options.archive_folder = archiveFolder();
    options.register_folder = register_folder_;
    options.author = "Maud Pell";
    options.clock = [] { return std::string("1956-03-01T12:00:00Z"); };
    options.draft_pause_ms = 20;
    options.rank_pause_ms = 5;
    options.outline_pause_ms = 20;
    options.read_ahead = false;
    if (adjust_)
        adjust_(options);
    window_ = std::make_unique<gui::MainWindow>(std::move(options));
    window_->resize(1000, 700);
    window_->show();
    window_->activateWindow();
    if (!QTest::qWaitForWindowActive(window_.get()))
        throw std::runtime_error("the window did not become active");
}

void WindowHarness::restart()
{
    window_.reset();
    start();
}

void WindowHarness::open(const std::vector<std::filesystem::path>& files)
{
    window_->openPhotos(files);
    waitFor([&] { return sitting().session() || !sitting().isBusy(); });
}

void WindowHarness::openDrawn()
{
    open({drawPhoto(folder(), "strap.png", script_->stamps)});
}

QWidget* WindowHarness::focus() const
{
    return QApplication::focusWidget() ? QApplication::focusWidget() : window_.get();
}

void WindowHarness::key(Qt::Key key, Qt::KeyboardModifiers with, int times)
{
    for (int i = 0; i < times; ++i)
        QTest::keyClick(focus(), key, with);
}

void WindowHarness::type(const QString& text)
{
    for (const QChar letter : text)
        QTest::keyClicks(focus(), letter);
}

QString WindowHarness::message() const
{
    return window_->findChild<gui::MessageBar*>("messageBar")->sentence();
}

bool WindowHarness::waitFor(const std::function<bool()>& condition, int milliseconds)
{
    return QTest::qWaitFor(condition, milliseconds);
}

std::string WindowHarness::text(int line)
{
    return models::plainText(session().stamp()->shown.lines.at(static_cast<std::size_t>(line)));
}

}  // namespace gui_tests
