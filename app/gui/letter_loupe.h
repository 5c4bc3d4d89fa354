#pragma once

#include <QPainter>
#include <QRectF>
#include <opencv2/core.hpp>

#include "app/gui/look.h"

namespace gui {

// Paints one letter with half of each neighbour, as large as the room allows (six times at most),
// as near below `middle_x` as it fits. Paints nothing where there is too little room to be of use.
//   mark_edges  shows where the letter begins and ends
//   pixels  the layer in view; letter and the result of scaling it are in its pixels
void paintLoupe(QPainter& painter, const cv::Mat& pixels, const QRectF& letter, const QRectF& room,
                double middle_x, const Colours& colours, bool mark_edges = true);

}  // namespace gui
