#include "app/gui/head_bar.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QToolButton>
#include <algorithm>
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
    photo_name_ = name;
    photo_place_ = count > 0 ? tr("%1 of %2").arg(number).arg(count) : QString();
    photo_->setToolTip(name);
    fit();
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
    fit();
}

void HeadBar::showLayers(const QStringList& words, int current)
{
    layer_words_ = words;
    layer_ = current;
    while (QLayoutItem* item = layer_row_->takeAt(0)) {
        item->widget()->deleteLater();
        delete item;
    }
    for (int i = 0; i < words.size(); ++i) {
        auto button = new QToolButton;
        button->setObjectName(QString("layer%1").arg(i));
        button->setToolTip(words[i]);
        button->setAccessibleName(tr("Layer: %1").arg(words[i]));
        button->setCheckable(true);
        button->setChecked(i == current);
        button->setFocusPolicy(Qt::NoFocus);
        connect(button, &QToolButton::clicked, this, [this, i] { Q_EMIT layerPicked(i); });
        layer_row_->addWidget(button);
    }
    fit();
}

// Every key of a layer stays whole: where there is little room the words of the layers go first,
// of all but the one in view, then the middle of the photo's name.
void HeadBar::fit()
{
    enum { AllTold, OneTold, NoneTold };
    const auto isTold = [this](int told, int i) {
        return told == AllTold || (told == OneTold && i == layer_);
    };
    constexpr int least_name = 90, widest_name = 260;
    int room = width() - 24;
    for (QWidget* widget : {static_cast<QWidget*>(stamp_), static_cast<QWidget*>(ahead_),
                            static_cast<QWidget*>(stage_), static_cast<QWidget*>(progress_),
                            static_cast<QWidget*>(stop_)})
        if (!widget->isHidden())
            room -= widget->sizeHint().width() + layout()->spacing();
    const QFontMetrics bold(photo_->font());
    const QString place = photo_place_.isEmpty() ? QString() : "   " + photo_place_;
    room -= bold.horizontalAdvance(place) + 2 * layout()->spacing();
    int layers = 0;
    for (const int told : {int{AllTold}, int{OneTold}, int{NoneTold}}) {
        layers = 0;
        for (int i = 0; i < layer_row_->count(); ++i) {
            auto button = static_cast<QToolButton*>(layer_row_->itemAt(i)->widget());
            button->setText(isTold(told, i) ? QString("F%1  %2").arg(i + 2).arg(layer_words_[i])
                                            : QString("F%1").arg(i + 2));
            button->setMinimumWidth(button->sizeHint().width());
            layers += button->minimumWidth() + layer_row_->spacing();
        }
        if (layers + least_name <= room)
            break;
    }
    const int name_room = std::clamp(room - layers, least_name, widest_name);
    photo_->setText(bold.elidedText(photo_name_, Qt::ElideMiddle, name_room) + place);
}

void HeadBar::resizeEvent(QResizeEvent* event)
{
    QFrame::resizeEvent(event);
    fit();
}

void HeadBar::showProgress(const QString& stage, double done)
{
    stage_->setText(stage);
    progress_->setValue(static_cast<int>(std::lround(done * 100)));
    for (QWidget* widget : {static_cast<QWidget*>(stage_), static_cast<QWidget*>(progress_),
                            static_cast<QWidget*>(stop_)})
        widget->show();
    fit();
}

void HeadBar::showAhead(const QString& words)
{
    ahead_->setText(words);
    fit();
}

void HeadBar::hideProgress()
{
    for (QWidget* widget : {static_cast<QWidget*>(stage_), static_cast<QWidget*>(progress_),
                            static_cast<QWidget*>(stop_)})
        widget->hide();
    fit();
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
