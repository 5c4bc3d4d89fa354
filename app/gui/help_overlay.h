#pragma once

#include <QWidget>

namespace gui {

// All keys of the window on one page over it; any key or click closes it.
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

private:
    void close();
};

}  // namespace gui
