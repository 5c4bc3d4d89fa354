#include "app/gui/typed_pane.h"

#include <QFontDatabase>
#include <QLabel>
#include <QPlainTextEdit>
#include <QVBoxLayout>

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
    connect(text_, &QPlainTextEdit::textChanged, this, &TypedPane::take);
    tell({});
}

void TypedPane::showLines(const std::vector<models::Line>& lines)
{
    const auto parsed = models::parseTyped(text_->toPlainText().toStdString());
    if (text_->hasFocus() && (parsed.fault || typedText(parsed.lines) == typedText(lines)))
        return;
    filling_ = true;
    text_->setPlainText(typedText(lines));
    filling_ = false;
    tell(text_->toPlainText().toStdString());
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
        Q_EMIT written(parsed.lines);
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
