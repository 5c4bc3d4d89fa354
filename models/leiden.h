#pragma once

#include <string>

#include "models/reading.h"

namespace models {

// One line in Leiden signs (Krummrey and Panciera's conventions, in Unicode), for people: lost
// [..], unknown extent [- - -], traces +, doubtful with a dot below (U+0323 after the letter, never
// composed), restored in brackets. No unread stretch ever vanishes. Several readings can print
// alike: use the typed notation or TEI to store one.
std::string toLeiden(const Line& line);

}  // namespace models
