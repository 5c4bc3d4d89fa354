#pragma once

#include <QElapsedTimer>
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
    // gesture  another number for what is to be undone apart: a word, or what follows a pause
    void written(const std::vector<models::Line>& lines, int gesture);
    void faulty();  // something was written that is not understood yet

protected:
    void showEvent(QShowEvent* event) override;

private:
    void take();
    void countGesture(int position, int removed, int added);
    void tell(const std::string& text);

    QPlainTextEdit* text_;
    QLabel* below_;
    bool filling_ = false;
    int gesture_ = 0;
    int last_position_ = 0;  // where the change before ended
    bool word_ended_ = false, added_ = false;
    QElapsedTimer since_last_;
};

}  // namespace gui
