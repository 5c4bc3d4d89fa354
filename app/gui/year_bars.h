#pragma once

#include <QWidget>
#include <vector>

#include "models/candidates.h"

namespace gui {

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
