#pragma once

#include <QPixmap>
#include <QScrollArea>
#include <string>
#include <vector>

#include <opencv2/core.hpp>

#include "app/gui/reading_editor.h"
#include "app/gui/sheet_layout.h"

namespace gui {

class CellStrip;

// The stamp at the window's full width, cut between its lines, the cells of each directly below
// it. Takes the keys of the letters and tells what they ask for; changes nothing itself.
class StampView : public QScrollArea {
    Q_OBJECT

public:
    explicit StampView(QWidget* parent = nullptr);

    // A layer of the stamp, or its colours: CV_8UC1 or CV_8UC3; empty shows `empty_words`.
    void showPicture(const cv::Mat& pixels);
    void showLines(const std::vector<models::Line>& lines, const std::string& person);
    void setPlace(CellPlace place);
    void setEmptyWords(const QString& words);

    const SheetLayout& sheet() const { return layout_; }
    const std::vector<CellStrip*>& strips() const { return strips_; }

Q_SIGNALS:
    void typed(const QString& text);
    void edited(Edit edit);
    void moved(Move move);
    void placed(CellPlace place);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void inputMethodEvent(QInputMethodEvent* event) override;
    QVariant inputMethodQuery(Qt::InputMethodQuery query) const override;
    void resizeEvent(QResizeEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    void layOut();
    SheetRoom room() const;
    double letterSize() const;
    void layOutStrips();
    void showPlace();
    void paintSheet(QWidget* sheet);
    void paintInHand(QPainter& painter) const;
    const models::Cell* cellInHand() const;
    QRectF letterInHand() const;  // in the rectified stamp; empty when it has no place there
    void clickSheet(const QPointF& position);

    QWidget* sheet_;
    cv::Mat pixels_;
    QPixmap scaled_;
    std::vector<models::Line> lines_;
    std::string person_;
    CellPlace place_;
    SheetLayout layout_;
    std::vector<CellStrip*> strips_;
    QString empty_words_;
    bool as_it_is_ = false;
};

}  // namespace gui
