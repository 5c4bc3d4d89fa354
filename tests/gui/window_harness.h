#pragma once

#include <QTemporaryDir>
#include <QTest>
#include <functional>
#include <memory>

#include "app/gui/main_window.h"
#include "tests/gui/fake_examiner.h"

namespace gui_tests {

// Photos that are not in hand are read too, as in the program.
inline void readAhead(gui::SittingOptions& options)
{
    options.read_ahead = true;
}

// A window on a fake examiner with an archive of its own, driven as a person would: by keys.
class WindowHarness {
public:
    explicit WindowHarness(std::shared_ptr<FakeScript> script = std::make_shared<FakeScript>());
    // The same, but with the engines of the program.
    explicit WindowHarness(gui::MakeExaminer examiner,
                           const std::filesystem::path& register_folder = {});
    // With everything as the caller wants it; the archive's folder is the harness's.
    using Adjust = std::function<void(gui::SittingOptions&)>;
    WindowHarness(std::shared_ptr<FakeScript> script, Adjust adjust);
    WindowHarness(gui::MakeExaminer examiner, const std::filesystem::path& register_folder,
                  Adjust adjust);

    gui::MainWindow& window() { return *window_; }
    gui::Sitting& sitting() { return window_->sitting(); }
    gui::WorkSession& session() { return *sitting().session(); }
    FakeScript& script() { return *script_; }
    std::filesystem::path folder() const { return folder_.path().toStdString(); }
    std::filesystem::path archiveFolder() const { return folder() / "archive"; }

    // Opens photos and waits until the first is read.
    void open(const std::vector<std::filesystem::path>& files);
    // Opens one drawn photo.
    void openDrawn();
    // Keys go to whatever has the focus, as from a keyboard.
    void key(Qt::Key key, Qt::KeyboardModifiers with = Qt::NoModifier, int times = 1);
    void type(const QString& text);
    QWidget* focus() const;
    QString message() const;
    bool waitFor(const std::function<bool()>& condition, int milliseconds = 20000);
    // Closes the window, drafts kept, and opens another on the same archive.
    void restart();

    std::string text(int line = 0);  // the current stamp's, plain

private:
    void start();

    QTemporaryDir folder_;
    std::shared_ptr<FakeScript> script_;
    gui::MakeExaminer examiner_;
    std::filesystem::path register_folder_;
    Adjust adjust_;
    std::unique_ptr<gui::MainWindow> window_;
};

}  // namespace gui_tests
