#pragma once

#include <QFrame>
#include <functional>
#include <optional>
#include <vector>

class QHBoxLayout;
class QLabel;

namespace gui {

enum class Tone { Note, Trouble };

// When a sentence is over by itself.
enum class Until {
    NextAction,  // the next thing that is done
    NextPhoto    // another photo is gone to, which also ends what the next action would
};

struct Answer {
    QString label;
    std::function<void()> then;
};

// Sentences for the person, inside the window: one at a time, with buttons where there is
// something to decide. Never takes the focus unless something must be decided. A sentence goes when
// what it is about is over.
class MessageBar : public QFrame {
    Q_OBJECT

public:
    explicit MessageBar(QWidget* parent = nullptr);

    // While there is something to decide, the sentence waits until that is done.
    void say(Tone tone, const QString& sentence, Until until = Until::NextAction);
    // A key or the mouse is pressed: what was said so far is not of what comes of that.
    void age() { fresh_ = false; }
    // This has happened. What was said since the last press is left, being of it.
    void pass(Until what);
    // The first answer gets the focus; any answer closes the bar.
    void ask(const QString& sentence, std::vector<Answer> answers);
    QString sentence() const;
    bool isAsking() const { return asking_; }
    void dismiss();

Q_SIGNALS:
    void dismissed();

private:
    void clearAnswers();
    struct Said {
        Tone tone;
        QString sentence;
        Until until;
    };
    void show(const Said& said);

    QLabel* sign_;
    QLabel* text_;
    QHBoxLayout* answers_;
    bool asking_ = false;
    bool fresh_ = false;
    Until until_ = Until::NextAction;
    std::optional<Said> waiting_;
};

}  // namespace gui
