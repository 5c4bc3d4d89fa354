#include "app/gui/run_window.h"

#include <QApplication>
#include <QMainWindow>

namespace gui {

int runWindow(int& argc, char** argv, const WindowOptions& options)
{
    QApplication application(argc, argv);
    QMainWindow window;
    window.setWindowTitle(QString("Weftmark: %1 photos").arg(options.photos.size()));
    window.show();
    return QApplication::exec();
}

}  // namespace gui
