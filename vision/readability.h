#pragma once

#include "models/reading.h"

namespace vision {

// How well the letters of a reading can be told: the mean log odds of their best alternatives, a
// letter that cannot be told counting as hardly possible. Of a stamp that lies wrongly a few
// letters may read as others, most do not. For choosing between readings of the same ink.
double readability(const models::Reading& reading);

// How many letters are told, each by its log odds: of two looks at one line that may each have
// missed a part of it the better is the one of more.
double toldLetters(const models::Reading& reading);

}  // namespace vision
