#include "app/gui/tray_buttons.h"

#include <QHBoxLayout>
#include <QToolButton>

#include "app/gui/own_icon.h"

namespace gui {

TrayButtons::TrayButtons(QWidget* parent) : QWidget(parent)
{
    auto layout = new QHBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(2);
    const std::tuple<TrayPage, QString, QString> pages[] = {
        {TrayPage::Photo, "F9", tr("The photo and its outlines")},
        {TrayPage::ToRead, "F10", tr("Photos on the table")},
        {TrayPage::Meaning, "F11", tr("What it can mean")},
        {TrayPage::Archive, "F12", tr("Find records")},
        {TrayPage::Text, "Ctrl+T", tr("The reading as text")},
        {TrayPage::Filing, "Ctrl+S", tr("File the record")}};
    for (const auto& [page, key, words] : pages) {
        auto button = new QToolButton;
        button->setObjectName(QString("open-") + nameOf(page));
        button->setAccessibleName(words);
        button->setToolTip(words + "  " + key);
        button->setCheckable(true);
        button->setFocusPolicy(Qt::NoFocus);  // by key it is reached by its own
        const int side = fontMetrics().height() + 2;
        button->setIconSize({side, side});
        connect(button, &QToolButton::clicked, this,
                [this, wanted_page = page] { Q_EMIT wanted(wanted_page); });
        layout->addWidget(button);
        buttons_[page] = button;
    }
}

void TrayButtons::setColours(const Colours& colours)
{
    for (const auto& [page, button] : buttons_)
        button->setIcon(ownIcon(nameOf(page), colours.ink));
}

void TrayButtons::showOpen(std::optional<TrayPage> page)
{
    for (const auto& [known, button] : buttons_)
        button->setChecked(page == known);
}

}  // namespace gui
