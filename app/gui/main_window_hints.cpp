// The line of keys at the foot of the window.
#include <QLabel>

#include "app/gui/main_window.h"

namespace gui {

// Keys of letters are told where there are letters.
QString MainWindow::lettersHints() const
{
    const WorkSession* session = sitting_->session();
    if (sitting_->place() < 0)
        return tr("Ctrl+O open photos    F12 find records    Ctrl+D day or dusk    ");
    if (session && session->stamps().empty())
        return tr(
            "F9 the photo, to outline a stamp    Ctrl+N next not filed    Ctrl+W off the "
            "table    F10 photos on the table    ");
    if (!session && !sitting_->isBusy())
        return tr(
            "Ctrl+R read it    Ctrl+N next not filed    Ctrl+Shift+N set aside    Ctrl+W "
            "off the table    F10 photos on the table    ");
    return tr(
        "Enter letter is right    Shift+Enter line is    Ctrl+Shift+Enter all the rest is    "
        "? unsure    + faint    [ lost    ~ lost, no number    ] restored    "
        "PgDn alternatives    Ctrl+S record    ");
}

void MainWindow::showHints()
{
    QString hints = lettersHints();
    if (tray_->holdsFocus()) {
        switch (tray_->page()) {
            case TrayPage::Photo:
                hints =
                    tr("Enter next corner    arrows move it    Shift ten    Ins add    Del "
                       "take out    + nearer    F9 close    ");
                break;
            case TrayPage::ToRead:
                hints =
                    tr("arrows choose    Enter open    Ctrl+N next not filed    Ctrl+Shift+N set "
                       "aside    "
                       "Ctrl+W off the table    F10 close    ");
                break;
            case TrayPage::Meaning:
                hints =
                    tr("Enter take this    Alt+Backspace none of them    Alt+Del leave open    "
                       "Alt+Ins restore lost letters    Esc back to the letters    ");
                break;
            case TrayPage::Text:
                hints =
                    tr("what you write goes into the cells    Ctrl+T close    Esc back to the "
                       "letters    ");
                break;
            case TrayPage::Archive:
                hints = tr("type to find    Down to the records    Enter open    F12 close    ");
                break;
            case TrayPage::Filing:
                hints =
                    tr("Tab next field    Alt+letter leads to one    Space or a letter chooses    "
                       "Del takes out    Ctrl+S file    Ctrl+Shift+S file, next photo    Esc back "
                       "to the letters    ");
                break;
        }
    }
    // As many as there is room for, each whole.
    QStringList whole = (tr("F1 all keys    ") + hints).split("    ", Qt::SkipEmptyParts);
    hints_->setAccessibleName(whole.join("    "));
    while (whole.size() > 1 &&
           hints_->fontMetrics().horizontalAdvance(whole.join("    ")) > hints_->width())
        whole.removeLast();
    hints_->setText(whole.join("    "));
}

}  // namespace gui
