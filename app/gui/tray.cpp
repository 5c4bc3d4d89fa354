#include "app/gui/tray.h"

#include <QApplication>
#include <QLabel>
#include <QStackedWidget>
#include <QVBoxLayout>

namespace gui {

namespace {

constexpr std::pair<TrayPage, const char*> page_names[] = {
    {TrayPage::Meaning, "meaning"}, {TrayPage::Photo, "photo"},   {TrayPage::ToRead, "to-read"},
    {TrayPage::Archive, "archive"}, {TrayPage::Filing, "filing"}, {TrayPage::Text, "text"}};

}  // namespace

const char* nameOf(TrayPage page)
{
    for (const auto& [known, name] : page_names)
        if (known == page)
            return name;
    return "";
}

std::optional<TrayPage> trayPageNamed(const std::string& name)
{
    for (const auto& [page, known] : page_names)
        if (known == name)
            return page;
    return std::nullopt;
}

Tray::Tray(QWidget* parent) : QFrame(parent), title_(new QLabel), pages_(new QStackedWidget)
{
    setObjectName("tray");
    title_->setObjectName("trayTitle");
    title_->setWordWrap(true);
    auto layout = new QVBoxLayout(this);
    layout->setContentsMargins(12, 6, 12, 8);
    layout->setSpacing(5);
    layout->addWidget(title_);
    layout->addWidget(pages_, 1);
    hide();
}

void Tray::addPage(TrayPage page, const QString& title, QWidget* widget)
{
    known_[page] = {title, widget};
    pages_->addWidget(widget);
}

void Tray::open(TrayPage page, bool take_focus)
{
    const auto& [title, widget] = known_.at(page);
    page_ = page;
    title_->setText(title);
    pages_->setCurrentWidget(widget);
    show();
    if (take_focus)
        widget->setFocus(Qt::OtherFocusReason);
    Q_EMIT changed();
}

void Tray::close()
{
    hide();
    Q_EMIT changed();
}

bool Tray::holdsFocus() const
{
    const QWidget* focus = QApplication::focusWidget();
    return !isHidden() && focus && isAncestorOf(focus);
}

void Tray::setTitle(TrayPage page, const QString& title)
{
    known_.at(page).first = title;
    if (page_ == page)
        title_->setText(title);
}

}  // namespace gui
