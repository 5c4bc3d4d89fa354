#pragma once

#include <QPixmap>
#include <QPointer>
#include <QScrollArea>
#include <optional>
#include <string>
#include <vector>

#include <opencv2/core.hpp>

#include "app/gui/line_roles.h"
#include "app/gui/reading_editor.h"
#include "app/gui/sheet_layout.h"
#include "app/gui/tones.h"

namespace gui {

class CellStrip;
class Magnifier;

// The stamp at the window's full width, cut between its lines, the cells of each directly below
// it. Takes the keys of the letters and tells what they ask for; changes nothing itself.
class StampView : public QScrollArea {
    Q_OBJECT

public:
    explicit StampView(QWidget* parent = nullptr);
    ~StampView() override;

    // A layer of the stamp, or its colours: CV_8UC1 or CV_8UC3; empty shows `empty_words`.
    void showPicture(const cv::Mat& pixels);
    void showLines(const std::vector<models::Line>& lines, const std::string& person);
    // What the engines proposed, shown beside the person's letters where they differ, and what the
    // parts of the lines are for.
    void showBeside(const models::Reading& proposal,
                    const std::vector<std::vector<ShownRole>>& roles);
    void setPlace(CellPlace place);
    void setEmptyWords(const QString& words);
    // Nearer or farther about the point, which is the cell in hand where none is given; 0: as it
    // fits.
    void zoom(double factor, std::optional<QPointF> about = std::nullopt);
    double zoomed() const { return zoom_; }
    void setTones(const Tones& tones);
    const Tones& tones() const { return tones_; }
    // The letter in hand, or what is under the mouse, larger, over everything else.
    void setMagnifier(bool on);
    bool hasMagnifier() const { return magnifier_on_; }
    // Letters typed small are told as capitals unless they are to be as typed.
    void setAsTyped(bool as_typed) { as_typed_ = as_typed; }

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
    void wheelEvent(QWheelEvent* event) override;

private:
    void layOut();
    void scalePicture();
    void followMouse(QEvent* event);
    void showMagnifier();
    QRectF letterAt(CellPlace place) const;  // in the rectified stamp; empty: has no place there
    QRectF letterUnder(const QPointF& on_sheet) const;
    QString asWritten(const QString& text) const;
    void dragSheet(QMouseEvent* event);
    QPointF pointInHand() const;
    SheetRoom room() const;
    double letterSize() const;
    void layOutStrips();
    void showPlace();
    void paintSheet(QWidget* sheet);
    void paintInHand(QPainter& painter) const;
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
    models::Reading proposal_;
    std::vector<std::vector<ShownRole>> roles_;
    Tones tones_;
    double zoom_ = 1;
    bool magnifier_on_ = false;
    QPointer<Magnifier> magnifier_;    // the window's
    std::optional<QPointF> mouse_at_;  // on the sheet, until a key leads elsewhere
    bool as_typed_ = false;
    std::optional<QPoint> dragged_from_;  // the middle button pulls the sheet
    bool as_it_is_ = false;
};

}  // namespace gui
