#include "app/gui/typed_pane.h"

#include <QFontDatabase>
#include <QLabel>
#include <QPlainTextEdit>
#include <QTextCursor>
#include <QTextDocument>
#include <QVBoxLayout>
#include <algorithm>

#include "app/gui/window_undo.h"
#include "models/leiden.h"
#include "models/typed_notation.h"

namespace gui {

namespace {

QString typedText(const std::vector<models::Line>& lines)
{
    QStringList texts;
    for (const models::Line& line : lines)
        texts << QString::fromStdString(models::writeTyped(line));
    return texts.join('\n');
}

}  // namespace

TypedPane::TypedPane(QWidget* parent)
    : QFrame(parent), text_(new QPlainTextEdit), below_(new QLabel)
{
    setObjectName("typedPane");
    text_->setObjectName("typedText");
    text_->setAccessibleName(tr("The reading as text"));
    text_->setTabChangesFocus(true);
    leaveUndoToWindow(text_);
    QFont font = QFontDatabase::systemFont(QFontDatabase::FixedFont);
    font.setPointSizeF(this->font().pointSizeF() * 1.3);
    text_->setFont(font);
    below_->setObjectName("typedBelow");
    below_->setTextFormat(Qt::PlainText);
    below_->setWordWrap(true);
    auto layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(text_, 1);
    layout->addWidget(below_);
    setFocusProxy(text_);
    connect(text_->document(), &QTextDocument::contentsChange, this, &TypedPane::countGesture);
    connect(text_, &QPlainTextEdit::textChanged, this, &TypedPane::take);
    tell({});
}

void TypedPane::showLines(const std::vector<models::Line>& lines)
{
    const auto parsed = models::parseTyped(text_->toPlainText().toStdString());
    if (text_->hasFocus() && (parsed.fault || typedText(parsed.lines) == typedText(lines)))
        return;
    const int cursor = text_->textCursor().position();
    filling_ = true;
    text_->setPlainText(typedText(lines));
    filling_ = false;
    QTextCursor back = text_->textCursor();
    back.setPosition(std::min(cursor, text_->document()->characterCount() - 1));
    text_->setTextCursor(back);
    tell(text_->toPlainText().toStdString());
}

void TypedPane::showEvent(QShowEvent* event)
{
    QFrame::showEvent(event);
    ++gesture_;
}

// A new one begins with a word, after a pause, elsewhere in the text, and where what was typed is
// taken out; what is typed in the place of what was taken out belongs to that.
void TypedPane::countGesture(int position, int removed, int added)
{
    if (filling_)
        return;
    constexpr qint64 pause_ms = 1000;
    const QString text = text_->toPlainText().mid(position, added);
    const bool adds = added > removed;
    const bool is_space = adds && !text.isEmpty() && text.back().isSpace();
    const bool goes_on = position + removed == last_position_ && (adds || !added_);
    const bool paused = !since_last_.isValid() || since_last_.elapsed() > pause_ms;
    if (paused || !goes_on || (word_ended_ && adds && !is_space))
        ++gesture_;
    word_ended_ = is_space;
    added_ = adds;
    last_position_ = position + added;
    since_last_.start();
}

void TypedPane::take()
{
    if (filling_)
        return;
    const std::string text = text_->toPlainText().toStdString();
    tell(text);
    const models::ParsedNotation parsed = models::parseTyped(text);
    if (parsed.fault)
        Q_EMIT faulty();
    else
        Q_EMIT written(parsed.lines, gesture_);
}

QString TypedPane::unfinished() const
{
    const QString text = text_->toPlainText();
    return models::parseTyped(text.toStdString()).fault ? text : QString();
}

void TypedPane::takeUp(const QString& unfinished)
{
    filling_ = true;
    text_->setPlainText(unfinished);
    text_->moveCursor(QTextCursor::End);
    filling_ = false;
    tell(unfinished.toStdString());
}

void TypedPane::tell(const std::string& text)
{
    const models::ParsedNotation parsed = models::parseTyped(text);
    if (parsed.fault) {
        below_->setText(QString::fromStdString(parsed.fault->message()) + " " +
                        tr("The cells stay as they were until then."));
        return;
    }
    QStringList lines;
    for (const models::Line& line : parsed.lines)
        lines << QString::fromStdString(models::toLeiden(line));
    below_->setText(lines.isEmpty()
                        ? tr("A? unsure   + faint   [.] lost   [- - -] lost, no number   [AB] "
                             "restored   (0|6) one of these   | at an end: complete")
                        : tr("In print: %1").arg(lines.join(" / ")));
}

}  // namespace gui
