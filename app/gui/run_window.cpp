#include "app/gui/run_window.h"

#include <QApplication>

#include "app/gui/main_window.h"
#include "app/gui/own_icon.h"

namespace gui {

int runWindow(int& argc, char** argv, const WindowOptions& options)
{
    QApplication application(argc, argv);
    QApplication::setApplicationName("weftmark");
    QApplication::setStyle("fusion");
    QApplication::setWindowIcon(programIcon());
    QGuiApplication::setDesktopFileName("weftmark");
    SittingOptions sitting;
    sitting.examiner = examinerOfFlow(options.register_folder, options.archive_folder);
    sitting.archive_folder = options.archive_folder;
    sitting.register_folder = options.register_folder;
    sitting.author = options.author;
    for (const char* name : {"LOGNAME", "USER", "USERNAME"})
        if (sitting.author.empty())
            sitting.author = qEnvironmentVariable(name).toStdString();
    if (sitting.author.empty())
        sitting.author = "unnamed";
    MainWindow window(std::move(sitting));
    window.show();
    window.restoreTable();
    window.openPhotos(options.photos);
    window.offerDrafts();
    return QApplication::exec();
}

}  // namespace gui
