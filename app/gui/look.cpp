#include "app/gui/look.h"

#include <algorithm>
#include <cmath>

namespace gui {

Colours coloursOf(Light light)
{
    if (light == Light::Day)
        return {QColor("#e7ecea"), QColor("#fafcfb"), QColor("#cfd8d6"), QColor("#14262b"),
                QColor("#49606a"), QColor("#b3c2c1"), QColor("#0e5c66"), QColor("#ffffff"),
                QColor("#a84800"), QColor("#9c1f2e")};
    return {QColor("#10191c"), QColor("#18252a"), QColor("#0a1012"), QColor("#e3ecec"),
            QColor("#9db3b7"), QColor("#36494f"), QColor("#7cc8c4"), QColor("#0b1c1e"),
            QColor("#f2a65a"), QColor("#ff9aa0")};
}

QPalette paletteOf(const Colours& colours)
{
    QPalette palette(colours.ground);
    palette.setColor(QPalette::Window, colours.ground);
    palette.setColor(QPalette::Base, colours.sheet);
    palette.setColor(QPalette::AlternateBase, colours.ground);
    palette.setColor(QPalette::Button, colours.sheet);
    palette.setColor(QPalette::Dark, colours.table);
    palette.setColor(QPalette::Mid, colours.rule);
    palette.setColor(QPalette::Highlight, colours.mark);
    palette.setColor(QPalette::HighlightedText, colours.on_mark);
    palette.setColor(QPalette::Link, colours.hand);
    palette.setColor(QPalette::BrightText, colours.alarm);
    palette.setColor(QPalette::ToolTipBase, colours.sheet);
    palette.setColor(QPalette::ToolTipText, colours.ink);
    palette.setColor(QPalette::PlaceholderText, colours.quiet);
    for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
        palette.setColor(role, colours.ink);
    for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
        palette.setColor(QPalette::Disabled, role, colours.quiet);
    return palette;
}

Colours coloursIn(const QPalette& palette)
{
    return {palette.color(QPalette::Window),
            palette.color(QPalette::Base),
            palette.color(QPalette::Dark),
            palette.color(QPalette::Active, QPalette::Text),
            palette.color(QPalette::PlaceholderText),
            palette.color(QPalette::Mid),
            palette.color(QPalette::Highlight),
            palette.color(QPalette::HighlightedText),
            palette.color(QPalette::Link),
            palette.color(QPalette::BrightText)};
}

QString styleSheetOf(const Colours& colours)
{
    QString sheet = R"(
        QToolTip { border: 1px solid RULE; padding: 4px; }
        QFrame#tray { background: SHEET; border-top: 2px solid MARK; }
        QScrollArea#recordScroll, QWidget#recordFields { background: SHEET; }
        QFrame#messageBar { background: SHEET; border-bottom: 1px solid RULE; }
        QLabel#trayTitle { font-weight: 600; }
        QLabel#cellLine { background: SHEET; }
        QLabel#letterCase { background: SHEET; color: QUIET; }
        QMainWindow { background: GROUND; }
        QFrame#headBar { background: GROUND; border-bottom: 1px solid RULE; }
        QFrame#headBar QLabel { color: INK; }
        QLabel#hints { background: GROUND; color: QUIET; }
        QTableView::item { padding: 0 5px; }
        QPushButton#fold { background: GROUND; color: QUIET; border: none; border-radius: 0;
            border-top: 2px solid MARK; padding: 6px 12px; text-align: left; }
        QToolButton { background: transparent; color: QUIET; border: 1px solid transparent;
            border-radius: 3px; padding: 2px 7px; }
        QToolButton:checked { background: SHEET; color: INK; border: 1px solid MARK; }
        QLineEdit, QPlainTextEdit, QComboBox {
            background: SHEET; border: 1px solid RULE; border-radius: 3px; padding: 3px 6px; selection-background-color: MARK; selection-color: ONMARK; }
        QLineEdit:focus, QPlainTextEdit:focus, QComboBox:focus { border: 2px solid HAND; padding: 2px 5px; }
        QComboBox::drop-down { border: none; width: 20px; }
        QComboBox::down-arrow { width: 0; height: 0; margin-right: 6px;
            border-left: 5px solid SHEET; border-right: 5px solid SHEET; border-top: 6px solid INK; }
        QPushButton { background: SHEET; color: INK; border: 1px solid RULE; border-radius: 3px;
            padding: 4px 12px; }
        QPushButton:default { border: 1px solid MARK; }
        QPushButton:focus { border: 2px solid HAND; padding: 3px 11px; }
        QPushButton:disabled { color: QUIET; }
        QTableView, QListView { background: SHEET; border: 1px solid RULE;
            selection-background-color: MARK; selection-color: ONMARK; gridline-color: RULE; }
        QTableView:focus, QListView:focus { border: 2px solid HAND; }
        QHeaderView::section { background: SHEET; color: QUIET; border: none;
            border-bottom: 1px solid RULE; padding: 3px 6px; }
        QSplitter::handle { background: GROUND; }
        QProgressBar { border: 1px solid RULE; border-radius: 3px; background: GROUND; }
        QProgressBar::chunk { background: MARK; }
    )";
    const std::pair<const char*, QColor> names[] = {
        {"ONMARK", colours.on_mark}, {"GROUND", colours.ground}, {"SHEET", colours.sheet},
        {"QUIET", colours.quiet},    {"RULE", colours.rule},     {"MARK", colours.mark},
        {"HAND", colours.hand},      {"INK", colours.ink}};
    for (const auto& [name, colour] : names)
        sheet.replace(name, colour.name());
    return sheet;
}

Light lightOfDesktop(const QPalette& palette)
{
    return palette.color(QPalette::Window).lightness() < 128 ? Light::Dusk : Light::Day;
}

double contrast(const QColor& a, const QColor& b)
{
    const auto linear = [](double part) {
        return part <= 0.03928 ? part / 12.92 : std::pow((part + 0.055) / 1.055, 2.4);
    };
    const auto luminance = [&](const QColor& colour) {
        return 0.2126 * linear(colour.redF()) + 0.7152 * linear(colour.greenF()) +
               0.0722 * linear(colour.blueF());
    };
    const double one = luminance(a), other = luminance(b);
    return (std::max(one, other) + 0.05) / (std::min(one, other) + 0.05);
}

}  // namespace gui
