#include "app/gui/head_bar.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QToolButton>
#include <cmath>

namespace gui {

HeadBar::HeadBar(QWidget* parent)
    : QFrame(parent),
      photo_(new QLabel),
      stamp_(new QLabel),
      layers_(new QWidget),
      layer_row_(new QHBoxLayout(layers_)),
      ahead_(new QLabel),
      stage_(new QLabel),
      progress_(new QProgressBar),
      stop_(new QPushButton(tr("Stop  Esc")))
{
    setObjectName("headBar");
    photo_->setObjectName("photoName");
    stamp_->setObjectName("stampNumber");
    ahead_->setObjectName("ahead");
    stage_->setObjectName("stage");
    stop_->setObjectName("stopButton");
    stop_->setAccessibleName(tr("Stop reading"));
    progress_->setObjectName("progress");
    progress_->setAccessibleName(tr("How far the reading is"));
    progress_->setRange(0, 100);
    progress_->setTextVisible(false);
    progress_->setFixedSize(110, 10);
    QFont bold = font();
    bold.setBold(true);
    photo_->setFont(bold);
    layer_row_->setContentsMargins(0, 0, 0, 0);
    layer_row_->setSpacing(2);
    auto layout = new QHBoxLayout(this);
    layout->setContentsMargins(12, 5, 12, 5);
    layout->setSpacing(12);
    layout->addWidget(photo_);
    layout->addWidget(stamp_);
    layout->addWidget(ahead_);
    layout->addStretch(1);
    layout->addWidget(stage_);
    layout->addWidget(progress_);
    layout->addWidget(stop_);
    layout->addWidget(layers_);
    connect(stop_, &QPushButton::clicked, this, &HeadBar::stopWanted);
    hideProgress();
}

void HeadBar::showPhoto(const QString& name, int number, int count)
{
    const QString elided = photo_->fontMetrics().elidedText(name, Qt::ElideMiddle, 260);
    photo_->setText(count > 0 ? tr("%1   %2 of %3").arg(elided).arg(number).arg(count) : name);
    photo_->setToolTip(name);
}

void HeadBar::showStamp(int number, int count, const QString& viewed)
{
    constexpr int most_px = 320;
    const QString which = count < 1    ? QString()
                          : count == 1 ? tr("one stamp")
                                       : tr("stamp %1 of %2").arg(number).arg(count);
    const QString words = viewed.isEmpty() ? which : tr("%1, a view of %2").arg(which, viewed);
    stamp_->setText(stamp_->fontMetrics().elidedText(words, Qt::ElideMiddle, most_px));
    stamp_->setAccessibleName(words);
    stamp_->setToolTip(viewed.isEmpty() ? QString() : words);
}

void HeadBar::showLayers(const QStringList& words, int current)
{
    while (QLayoutItem* item = layer_row_->takeAt(0)) {
        item->widget()->deleteLater();
        delete item;
    }
    const bool all = fontMetrics().horizontalAdvance(words.join("  F0    ")) < width() * 0.55;
    for (int i = 0; i < words.size(); ++i) {
        auto button = new QToolButton;
        button->setObjectName(QString("layer%1").arg(i));
        button->setText(i == current || all ? QString("F%1  %2").arg(i + 2).arg(words[i])
                                            : QString("F%1").arg(i + 2));
        button->setToolTip(words[i]);
        button->setAccessibleName(tr("Layer: %1").arg(words[i]));
        button->setCheckable(true);
        button->setChecked(i == current);
        button->setFocusPolicy(Qt::NoFocus);
        connect(button, &QToolButton::clicked, this, [this, i] { Q_EMIT layerPicked(i); });
        layer_row_->addWidget(button);
    }
}

void HeadBar::showProgress(const QString& stage, double done)
{
    stage_->setText(stage);
    progress_->setValue(static_cast<int>(std::lround(done * 100)));
    for (QWidget* widget : {static_cast<QWidget*>(stage_), static_cast<QWidget*>(progress_),
                            static_cast<QWidget*>(stop_)})
        widget->show();
}

void HeadBar::showAhead(const QString& words)
{
    ahead_->setText(words);
}

void HeadBar::hideProgress()
{
    for (QWidget* widget : {static_cast<QWidget*>(stage_), static_cast<QWidget*>(progress_),
                            static_cast<QWidget*>(stop_)})
        widget->hide();
}

QString layerWord(const std::string& name)
{
    if (name.empty())
        return QObject::tr("as photographed");
    if (name == "flat")
        return QObject::tr("even light");
    if (name == "grey")
        return QObject::tr("grey");
    if (name == "contrast")
        return QObject::tr("contrast");
    if (name == "ink")
        return QObject::tr("ink");
    return QString::fromStdString(name);
}

}  // namespace gui
