#include "app/cli/display.h"

#include <filesystem>

#include <xcb/xcb.h>
#include <QLibraryInfo>
#include <QString>

namespace cli {

namespace {

bool canConnectToX(const std::string& display)
{
    xcb_connection_t* connection = xcb_connect(display.c_str(), nullptr);
    const bool connected = xcb_connection_has_error(connection) == 0;
    xcb_disconnect(connection);
    return connected;
}

// The socket is there, and so is the toolkit's part that speaks to it.
bool canUseWayland(const std::filesystem::path& socket)
{
    std::error_code trouble;
    if (!std::filesystem::is_socket(socket, trouble))
        return false;
    const std::filesystem::path plugins =
        QLibraryInfo::path(QLibraryInfo::PluginsPath).toStdString() + "/platforms";
    for (const auto& entry : std::filesystem::directory_iterator(plugins, trouble))
        if (entry.path().filename().string().starts_with("libqwayland"))
            return true;
    return false;
}

}  // namespace

std::optional<std::string> displayTrouble(
    const std::function<std::optional<std::string>(const std::string&)>& environment)
{
    const auto variable = [&](const char* name) { return environment(name).value_or(""); };
    if (!variable("QT_QPA_PLATFORM").empty())
        return std::nullopt;
    const std::string wayland = variable("WAYLAND_DISPLAY");
    if (!wayland.empty() &&
        canUseWayland(std::filesystem::path(variable("XDG_RUNTIME_DIR")) / wayland))
        return std::nullopt;
    const std::string x = variable("DISPLAY");
    if (x.empty())
        return wayland.empty() ? "there is no display to open a window on; log in at a screen, or "
                                 "read at the command line with weftmark read"
                               : "the display that WAYLAND_DISPLAY names (" + wayland +
                                     ") cannot be used; install qt6-wayland, or read at the "
                                     "command line with weftmark read";
    if (canConnectToX(x))
        return std::nullopt;
    return "the display that DISPLAY names (" + x +
           ") cannot be reached; log in at a screen, or read at the command line with weftmark "
           "read";
}

}  // namespace cli
