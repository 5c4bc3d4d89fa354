#pragma once

#include <string>
#include <vector>

#include "models/reading.h"

namespace gui_tests {

// What an engine might have read: every character a clear cell of certainty 0.9 by "tesseract",
// 10 px wide from x = 0 on, lines 30 px apart, each with a calibrated certainty.
inline models::Reading engineReading(const std::vector<std::string>& lines)
{
    models::Reading reading;
    reading.reader = "tesseract 5";
    reading.basis = models::Basis::Photo;
    for (std::size_t row = 0; row < lines.size(); ++row) {
        models::Line line;
        double x = 0;
        for (const char letter : lines[row]) {
            models::Cell cell = models::clearCell(std::string(1, letter));
            cell.alternatives.front().certainty = 0.9;
            cell.left_px = x;
            cell.right_px = x + 10;
            cell.by = "tesseract";
            line.cells.push_back(cell);
            x += 10;
        }
        line.box_px = {0, 10 + 30.0 * static_cast<double>(row), x, 20};
        line.certainty = 0.8;
        reading.lines.push_back(line);
    }
    return reading;
}

}  // namespace gui_tests
