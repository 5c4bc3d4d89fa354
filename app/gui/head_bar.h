#pragma once

#include <QFrame>
#include <QStringList>

class QHBoxLayout;
class QLabel;
class QProgressBar;
class QPushButton;
class QToolButton;

namespace gui {

// Above the stamp: which photo and stamp this is, the layers with their keys, and how far an
// examination is, with a button to stop it.
class HeadBar : public QFrame {
    Q_OBJECT

public:
    explicit HeadBar(QWidget* parent = nullptr);

    void showPhoto(const QString& name, int number, int count);
    void showStamp(int number, int count, const QString& viewed);
    void showLayers(const QStringList& words, int current);
    void showProgress(const QString& stage, double done);
    void hideProgress();
    void showAhead(const QString& words);  // how far reading ahead is; empty: done

Q_SIGNALS:
    void layerPicked(int layer);
    void stopWanted();

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void fit();
    QString photo_name_, photo_place_;
    QLabel* photo_;
    QLabel* stamp_;
    QWidget* layers_;
    QHBoxLayout* layer_row_;
    QStringList layer_words_;
    int layer_ = 0;
    QLabel* ahead_;
    QLabel* stage_;
    QProgressBar* progress_;
    QPushButton* stop_;
};

// The plain word for a layer's name in records; an empty name is the stamp's own colours.
QString layerWord(const std::string& name);

}  // namespace gui
