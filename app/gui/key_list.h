#pragma once

#include <QKeySequence>
#include <QString>
#include <vector>

// Every key of the window, told once: the help page shows this list, and a test walks it.
namespace gui {

// Where a key is listened to.
enum class KeyPlace {
    Letters,  // the stamp and its cells
    Window,   // everywhere
    Photo,    // the photo with its outlines
    ToRead,   // the photos on the table
    Meaning,  // what it can mean
    Record    // what is seen on the piece, in its record
};

struct KeyHelp {
    std::vector<QKeySequence> presses;  // each does it; empty: any letter or digit
    QString does;
    QString keys;  // as they are told; presses joined where nothing shorter is given
};

struct KeyGroup {
    QString title;
    KeyPlace place;
    std::vector<KeyHelp> keys;
};

// Everything the help shows, in its order.
std::vector<KeyGroup> keyGroups();

// "Ctrl+PgDn", "Enter", "?": as a key is told on the screen.
QString keyName(const QKeySequence& press);

}  // namespace gui
