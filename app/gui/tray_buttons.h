#pragma once

#include <QWidget>
#include <map>
#include <optional>

#include "app/gui/look.h"
#include "app/gui/tray.h"

class QToolButton;

namespace gui {

// A button for each page of the tray, with its key, for those who reach for the mouse.
class TrayButtons : public QWidget {
    Q_OBJECT

public:
    explicit TrayButtons(QWidget* parent = nullptr);

    void setColours(const Colours& colours);
    void showOpen(std::optional<TrayPage> page);

Q_SIGNALS:
    void wanted(TrayPage page);

private:
    std::map<TrayPage, QToolButton*> buttons_;
};

}  // namespace gui
