#pragma once

#include <QKeyEvent>
#include <QString>
#include <optional>
#include <vector>

#include "app/gui/reading_editor.h"

// The keys of the window, in one table: what the letters listen to and what the help shows.
// Letters, digits and all characters but seven always type text; the seven are the signs of the
// typed notation, and `\` types the next character as it is.
namespace gui {

// What a key press asks of the letters in hand.
struct LetterKey {
    std::optional<Edit> edit;
    std::optional<Move> move;
    QString text;           // to be typed
    bool as_it_is = false;  // the next character is typed even if it is a sign
};

// Empty when the key is not for the letters.
//   as_it_is  the key before was the one that quotes
std::optional<LetterKey> letterKey(const QKeyEvent& event, bool as_it_is);

struct KeyHelp {
    QString keys, does;
};

struct KeyGroup {
    QString title;
    std::vector<KeyHelp> keys;
};

// Everything the help shows, in its order.
std::vector<KeyGroup> keyGroups();

}  // namespace gui
