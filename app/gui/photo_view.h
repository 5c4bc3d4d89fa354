#pragma once

#include <QPixmap>
#include <QWidget>
#include <optional>
#include <vector>

#include <opencv2/core.hpp>

#include "app/gui/outline_edits.h"

namespace gui {

// The whole photo with the outlines of its stamps. A corner, or the whole outline, is picked by
// mouse or key and moved; the view tells the wish and shows what it is given.
class PhotoView : public QWidget {
    Q_OBJECT

public:
    explicit PhotoView(QWidget* parent = nullptr);

    // CV_8UC3; shared, never changed.
    void showPhoto(const cv::Mat& pixels);
    void showOutlines(const std::vector<vision::Quad>& outlines, int current);
    // 0 to 3: that corner, clockwise from the stamp's top left; 4: the whole outline.
    int handle() const { return handle_; }
    QPointF viewFromPhoto(const QPointF& point) const;
    QPointF photoFromView(const QPointF& point) const;
    QSize sizeHint() const override { return {600, 360}; }

Q_SIGNALS:
    void outlineMoved(int stamp, const vision::Quad& corners, int gesture);
    void outlineAdded(const vision::Quad& corners);
    void outlineDeleted(int stamp);
    void stampPicked(int stamp);
    void couldNot(const QString& sentence);

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

private:
    bool moveByKey(const QKeyEvent& event);
    void holdCorner(const vision::Quad& before, const vision::Quad& after);
    void shift(QPointF by, int gesture);
    void turn(double degrees, int gesture);
    void pickHandle(int handle);
    void zoom(double factor, std::optional<QPointF> about);
    void addOutline();
    void tellAccessible();
    const cv::Mat& overview();
    void paintPhoto(QPainter& painter);
    double fittingScale() const;
    void paintOutline(QPainter& painter, int index) const;
    void paintLoupe(QPainter& painter) const;

    cv::Mat pixels_, overview_;
    QPixmap scaled_;
    QRect scaled_part_;  // of the photo or its reduced copy
    std::vector<vision::Quad> outlines_;
    int current_ = -1;
    int handle_ = 0;
    double zoom_ = 1;                      // times the scale at which the whole photo fits
    QPointF centre_;                       // photo pixels shown in the middle
    int gesture_ = 0;                      // changes of one gesture are undone together
    std::optional<vision::Quad> dragged_;  // while the mouse holds it
    bool turning_ = false;                 // the mouse turns it
    QPointF grip_;                         // where the mouse took it, photo pixels
};

}  // namespace gui
