#pragma once

#include <QFrame>
#include <map>
#include <optional>
#include <string>

class QLabel;
class QStackedWidget;

namespace gui {

enum class TrayPage { Meaning, Photo, ToRead, Archive, Filing, Text };

// A name that stays the same, for what is kept of the window; empty names give nothing.
const char* nameOf(TrayPage page);
std::optional<TrayPage> trayPageNamed(const std::string& name);

// The drawer below the stamp: one page at a time, or closed.
class Tray : public QFrame {
    Q_OBJECT

public:
    explicit Tray(QWidget* parent = nullptr);

    void addPage(TrayPage page, const QString& title, QWidget* widget);
    void open(TrayPage page, bool take_focus);
    void close();
    bool isOpen(TrayPage page) const { return !isHidden() && page_ == page; }
    bool isClosed() const { return isHidden(); }
    bool holdsFocus() const;
    void setTitle(TrayPage page, const QString& title);
    TrayPage page() const { return page_; }

Q_SIGNALS:
    void changed();  // another page, opened or closed

private:
    QLabel* title_;
    QStackedWidget* pages_;
    std::map<TrayPage, std::pair<QString, QWidget*>> known_;
    TrayPage page_ = TrayPage::Meaning;
};

}  // namespace gui
