#pragma once

#include <QFrame>
#include <string>
#include <vector>

#include "models/reading.h"

class QLabel;
class QPlainTextEdit;

namespace gui {

// The reading as text in the typed notation, a line a line. What is understood goes into the cells
// as it is typed; a fault is told with its place, and the cells stay as they were.
class TypedPane : public QFrame {
    Q_OBJECT

public:
    explicit TypedPane(QWidget* parent = nullptr);

    // Leaves the text alone while it says what the lines say.
    void showLines(const std::vector<models::Line>& lines);
    // What is written where it is not understood yet; empty where it is.
    QString unfinished() const;
    void takeUp(const QString& unfinished);

Q_SIGNALS:
    void written(const std::vector<models::Line>& lines);
    void faulty();  // something was written that is not understood yet

private:
    void take();
    void tell(const std::string& text);

    QPlainTextEdit* text_;
    QLabel* below_;
    bool filling_ = false;
};

}  // namespace gui
