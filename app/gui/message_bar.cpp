#include "app/gui/message_bar.h"

#include <QAccessible>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <utility>

namespace gui {

MessageBar::MessageBar(QWidget* parent)
    : QFrame(parent), sign_(new QLabel), text_(new QLabel), answers_(new QHBoxLayout)
{
    setObjectName("messageBar");
    text_->setObjectName("messageText");
    text_->setAccessibleName(tr("Message"));
    text_->setWordWrap(true);
    text_->setTextFormat(Qt::PlainText);
    text_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    sign_->setAlignment(Qt::AlignCenter);
    sign_->setMinimumWidth(fontMetrics().height() * 2);
    auto layout = new QHBoxLayout(this);
    layout->setContentsMargins(10, 6, 10, 6);
    layout->addWidget(sign_);
    layout->addWidget(text_, 1);
    layout->addLayout(answers_);
    hide();
}

QString MessageBar::sentence() const
{
    return isHidden() ? QString() : text_->text();
}

void MessageBar::clearAnswers()
{
    while (QLayoutItem* item = answers_->takeAt(0)) {
        item->widget()->hide();
        item->widget()->deleteLater();
        delete item;
    }
}

void MessageBar::show(const Said& said)
{
    clearAnswers();
    until_ = said.until;
    const Tone tone = said.tone;
    const QString& sentence = said.sentence;
    sign_->setText(tone == Tone::Trouble ? "!" : "i");
    QFont bold = font();
    bold.setBold(true);
    bold.setPointSizeF(font().pointSizeF() * 1.3);
    sign_->setFont(bold);
    QPalette colours = palette();
    if (tone == Tone::Trouble)
        colours.setColor(QPalette::WindowText, palette().color(QPalette::BrightText));
    sign_->setPalette(colours);
    text_->setText(sentence);
    setAccessibleName(sentence);
    setVisible(true);
    QAccessibleEvent alert(this, QAccessible::Alert);
    QAccessible::updateAccessibility(&alert);
}

void MessageBar::say(Tone tone, const QString& sentence, Until until)
{
    fresh_ = true;
    if (asking_)
        waiting_ = {tone, sentence, until};
    else
        show({tone, sentence, until});
}

void MessageBar::pass(Until what)
{
    const auto is_over = [&](Until until) { return until <= what; };
    if (fresh_ || isHidden())
        return;
    if (asking_ && waiting_ && is_over(waiting_->until))
        waiting_.reset();
    else if (!asking_ && is_over(until_))
        dismiss();
}

void MessageBar::ask(const QString& sentence, std::vector<Answer> answers)
{
    asking_ = true;
    show({Tone::Note, sentence, Until::NextPhoto});
    for (const Answer& answer : answers) {
        auto button = new QPushButton(answer.label);
        button->setAutoDefault(true);
        connect(button, &QPushButton::clicked, this, [this, then = answer.then] {
            dismiss();
            then();
        });
        const bool first = answers_->count() == 0;
        button->setObjectName(QString("answer%1").arg(answers_->count() + 1));
        answers_->addWidget(button);
        button->show();  // the focus is for what is seen
        if (first)
            button->setFocus(Qt::OtherFocusReason);
    }
}

void MessageBar::dismiss()
{
    asking_ = false;
    const auto next = std::exchange(waiting_, std::nullopt);
    if (next)
        show(*next);
    else
        hide();
    Q_EMIT dismissed();
}

}  // namespace gui
