#pragma once

#include <QRectF>
#include <QWidget>
#include <optional>
#include <string>
#include <vector>

#include "app/gui/line_roles.h"
#include "models/reading.h"

namespace gui {

// What is told beside the letters of a line.
struct LineBeside {
    models::Reading proposal;      // of the engines; shown where the person's letters differ
    std::vector<ShownRole> roles;  // what the parts of the line are for
};

// The cells of one line, each under its letter: the sign, a bar (thick once the person has
// confirmed the cell), the engine's letter where it differs, and below runs of cells the plain word
// for their state and what the part of the line is for.
class CellStrip : public QWidget {
    Q_OBJECT

public:
    explicit CellStrip(QWidget* parent = nullptr);

    // Cells' rectangles are in the strip's own coordinates; one a cell of the line.
    void showLine(const models::Line& line, const std::vector<QRectF>& rects,
                  const std::string& person, const LineBeside& beside = {});
    // The cell in hand; the number of cells means the place behind the last; none: another line's.
    void setInHand(std::optional<std::size_t> cell, bool has_focus);

    const std::vector<QRectF>& cellRects() const { return rects_; }
    // `letter_size` is how many times the window's font the letters are.
    void setLetterSize(double letter_size);
    static double heightFor(const QFont& font, double letter_size);
    static double leastCellFor(const QFont& font, double letter_size);

Q_SIGNALS:
    void cellClicked(std::size_t cell);

protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;

private:
    void paintCell(QPainter& painter, std::size_t index) const;
    void paintWords(QPainter& painter) const;
    void paintEnds(QPainter& painter) const;
    void paintRoles(QPainter& painter) const;
    void paintPartEdges(QPainter& painter) const;
    void paintProposed(QPainter& painter, std::size_t index) const;
    QRectF placeInHand() const;

    models::Line line_;
    std::vector<QRectF> rects_;
    std::vector<ShownRole> roles_;
    std::vector<QString> proposed_;  // the engine's sign for each cell where it differs, or empty
    std::string person_;
    std::optional<std::size_t> in_hand_;
    bool has_focus_ = false;
    double letter_size_ = 1.7;
};

}  // namespace gui
