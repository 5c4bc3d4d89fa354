#pragma once

#include <QFrame>
#include <functional>
#include <optional>
#include <vector>

class QHBoxLayout;
class QLabel;

namespace gui {

enum class Tone { Note, Trouble };

struct Answer {
    QString label;
    std::function<void()> then;
};

// Sentences for the person, inside the window: one at a time, with buttons where there is
// something to decide. Never takes the focus unless something must be decided.
class MessageBar : public QFrame {
    Q_OBJECT

public:
    explicit MessageBar(QWidget* parent = nullptr);

    // While there is something to decide, the sentence waits until that is done.
    void say(Tone tone, const QString& sentence);
    // The first answer gets the focus; any answer closes the bar.
    void ask(const QString& sentence, std::vector<Answer> answers);
    QString sentence() const;
    bool isAsking() const { return asking_; }
    void dismiss();

Q_SIGNALS:
    void dismissed();

private:
    void clearAnswers();
    void show(Tone tone, const QString& sentence);

    QLabel* sign_;
    QLabel* text_;
    QHBoxLayout* answers_;
    bool asking_ = false;
    std::optional<std::pair<Tone, QString>> waiting_;
};

}  // namespace gui
