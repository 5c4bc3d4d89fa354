#define CATCH_CONFIG_RUNNER
#include <catch2/catch.hpp>

#include <QApplication>

// Without a display the window toolkit ends the program, so that the cases would vanish unseen:
// the platform is settled before the application is made.
int main(int argc, char** argv)
{
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM"))
        qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication application(argc, argv);
    return Catch::Session().run(argc, argv);
}
