#pragma once

#include <QWidget>
#include <functional>
#include <vector>

#include "models/candidates.h"

namespace gui {

// A year written below its bar.
struct YearLabel {
    int year = 0;
    double left = 0, width = 0;  // px
};
// The likeliest year always, the others at regular steps where they have room beside it.
//   middle  where a year's bar has its middle
std::vector<YearLabel> yearLabels(int first, int last, int likeliest, double word_width,
                                  double room_width, const std::function<double(int)>& middle);

// The years that a candidate can mean, as a small histogram: a bar a year, as high as it is
// likely.
class YearBars : public QWidget {
    Q_OBJECT

public:
    explicit YearBars(QWidget* parent = nullptr);

    void showYears(const std::vector<models::YearShare>& years);
    QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    std::vector<models::YearShare> years_;  // in the order of time
};

// A bar as long as the share, 0 to 1, on a thin line as long as the room: a small share looks
// empty.
void paintShare(QPainter& painter, const QRectF& room, double share, const QColor& empty,
                const QColor& full);

// A share told as a name, a number and a bar.
class ShareBar : public QWidget {
    Q_OBJECT

public:
    explicit ShareBar(const QString& name, QWidget* parent = nullptr);

    void showShare(double share);  // 0 to 1; below 0: not known
    QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    QString name_;
    double share_ = -1;
};

}  // namespace gui
