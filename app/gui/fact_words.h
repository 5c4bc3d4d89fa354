#pragma once

#include <QStringList>

#include "models/item_words.h"

namespace gui {

// The words for what is seen on a piece, in the order in which a person chooses from them; the
// first says that nobody has said it.
QStringList partWords();
QStringList methodWords();
QStringList seenWords();   // after the first, in the order of models::FeatureSeen
QStringList eventWords();  // in the order of models::EventKind

int placeOfPart(models::StampPart part);
int placeOfMethod(models::StampMethod method);
models::StampPart partAt(int choice);
models::StampMethod methodAt(int choice);

}  // namespace gui
