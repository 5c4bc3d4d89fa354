#define CATCH_CONFIG_RUNNER
#include <catch2/catch.hpp>

#include <QApplication>
#include <string>

#include "tests/gui/where_one_is.h"

// Without a display the window toolkit ends the program, so that the cases would vanish unseen:
// the platform is settled before the application is made.
int main(int argc, char** argv)
{
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM"))
        qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication application(argc, argv);
    // A process of its own for the test that kills one.
    if (argc == 4 && std::string(argv[1]) == "--sit-until-killed")
        return gui_tests::sitUntilKilled(argv[2], static_cast<unsigned>(std::stoul(argv[3])));
    return Catch::Session().run(argc, argv);
}
