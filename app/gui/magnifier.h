#pragma once

#include <QRectF>
#include <QWidget>

#include <opencv2/core.hpp>

namespace gui {

// A part of the stamp, larger, laid over everything else in the window. It takes no mouse and no
// focus.
class Magnifier : public QWidget {
    Q_OBJECT

public:
    // Over what is in this widget.
    explicit Magnifier(QWidget* parent);

    // Shows the letter, or what is around a point, in this part of the parent.
    //   pixels      the layer in view; part is in its pixels
    //   mark_edges  the part is a letter: show where it begins and ends
    void showPart(const cv::Mat& pixels, const QRectF& part, bool mark_edges, const QRect& room);
    const QRectF& part() const { return part_; }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    cv::Mat pixels_;
    QRectF part_;
    bool mark_edges_ = true;
};

}  // namespace gui
