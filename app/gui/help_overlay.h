#pragma once

#include <QWidget>

class QPainter;

namespace gui {

// All keys of the window on one page over it, scrolled by keys where the window is small for it;
// any other key or click closes it.
class HelpOverlay : public QWidget {
    Q_OBJECT

public:
    // Covers its parent and follows its size.
    explicit HelpOverlay(QWidget* parent);

    void open();

Q_SIGNALS:
    void closed();

protected:
    bool event(QEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;

private:
    void close();
    QString footWords(const QString& more) const;
    QRectF paintFoot(QPainter& painter, const QString& more) const;
    QRectF footRoom(QPainter& painter, const QString& more) const;

    double scrolled_ = 0, most_scrolled_ = 0, page_step_ = 0;  // pixels, as painted last
};

}  // namespace gui
