#pragma once

#include <QKeyEvent>
#include <QString>
#include <optional>

#include "app/gui/reading_editor.h"

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

// A small letter as the capital that a stamp has; any other text, and one that has no capital of
// its own, as it is.
QString asCapitals(const QString& text);

// Empty when the key is not for the letters.
//   as_it_is  the key before was the one that quotes
std::optional<LetterKey> letterKey(const QKeyEvent& event, bool as_it_is);

}  // namespace gui
