#pragma once

#include <QPointF>
#include <QSize>
#include <QString>
#include <optional>
#include <vector>

#include "vision/locate.h"

// What may be done to a stamp's outline by hand, in photo pixels.
namespace gui {

constexpr int whole_outline = 4;  // handles 0 to 3 are the corners

// The outline with one corner, or all of it, moved; kept inside the photo.
//   returns  nothing when it would not be a convex outline of some size any more
std::optional<vision::Quad> movedHandle(const vision::Quad& corners, int handle, QPointF by,
                                        QSize photo);

// The outline turned clockwise about its middle.
//   returns  nothing when a corner would leave the photo
std::optional<vision::Quad> turnedOutline(const vision::Quad& corners, double degrees, QSize photo);

// How far one has turned about the outline's middle from one point to another, clockwise, -180 to
// 180 degrees.
double angleBetween(const vision::Quad& corners, QPointF from, QPointF to);

// The handle within `reach` photo pixels of the point: corners first, then the whole outline when
// the point is inside it.
std::optional<int> handleAt(const vision::Quad& corners, QPointF point, double reach);

// An outline as wide as a quarter of the photo and a third as high, about the point.
vision::Quad newOutline(QPointF middle, QSize photo);

// "top left corner", ..., "whole outline".
QString handleWord(int handle);

}  // namespace gui
