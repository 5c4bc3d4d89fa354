#include "app/gui/key_list.h"

#include <QCoreApplication>
#include <QStringList>

namespace gui {

namespace {

QString told(const char* words)
{
    return QCoreApplication::translate("gui::Keys", words);
}

using Presses = std::vector<QKeySequence>;
constexpr auto ctrl = Qt::CTRL;
constexpr auto alt = Qt::ALT;
constexpr auto shift = Qt::SHIFT;

KeyHelp help(Presses presses, const char* does, const QString& keys = {})
{
    KeyHelp one{std::move(presses), told(does), keys};
    if (one.keys.isEmpty()) {
        QStringList names;
        for (const QKeySequence& press : one.presses)
            names << keyName(press);
        one.keys = names.join("  ");
    }
    return one;
}

KeyGroup goingThrough()
{
    return {
        told(QT_TRANSLATE_NOOP("gui::Keys", "Going through the letters")),
        KeyPlace::Letters,
        {help({}, QT_TRANSLATE_NOOP("gui::Keys", "write into the cell, small ones as capitals"),
              told(QT_TRANSLATE_NOOP("gui::Keys", "letters, digits"))),
         help({Qt::Key_Return}, QT_TRANSLATE_NOOP("gui::Keys", "right as it is, on to the next")),
         help({shift | Qt::Key_Return},
              QT_TRANSLATE_NOOP("gui::Keys", "the whole line is right: confirm it")),
         help({ctrl | shift | Qt::Key_Return},
              QT_TRANSLATE_NOOP("gui::Keys",
                                "the rest of the stamp is right (leads through what is unsure)")),
         help({ctrl | Qt::Key_Down, ctrl | Qt::Key_Up},
              QT_TRANSLATE_NOOP("gui::Keys", "next, previous cell worth a look")),
         help({Qt::Key_Left, Qt::Key_Right, Qt::Key_Up, Qt::Key_Down, Qt::Key_Home, Qt::Key_End,
               ctrl | Qt::Key_Home, ctrl | Qt::Key_End},
              QT_TRANSLATE_NOOP("gui::Keys", "move; with Ctrl, Home and End: whole stamp"),
              told(QT_TRANSLATE_NOOP("gui::Keys", "arrows, Home, End"))),
         help({Qt::Key_PageDown, Qt::Key_PageUp},
              QT_TRANSLATE_NOOP("gui::Keys", "next, previous alternative; one lost more, fewer")),
         help({shift | Qt::Key_PageUp, shift | Qt::Key_PageDown},
              QT_TRANSLATE_NOOP("gui::Keys", "surer, less sure of the letter in hand"))}};
}

KeyGroup howMuchIsLeft()
{
    return {
        told(QT_TRANSLATE_NOOP("gui::Keys", "How much is left of a letter")),
        KeyPlace::Letters,
        {help({ctrl | Qt::Key_1}, QT_TRANSLATE_NOOP("gui::Keys", "clear")),
         help({Qt::Key_Question, ctrl | Qt::Key_2},
              QT_TRANSLATE_NOOP("gui::Keys", "unsure (after a letter: that letter)")),
         help({Qt::Key_Plus, ctrl | Qt::Key_3},
              QT_TRANSLATE_NOOP("gui::Keys", "faint: traces of one")),
         help({Qt::Key_BracketLeft, ctrl | Qt::Key_4}, QT_TRANSLATE_NOOP("gui::Keys", "lost: one")),
         help({Qt::Key_AsciiTilde, ctrl | Qt::Key_5},
              QT_TRANSLATE_NOOP("gui::Keys", "lost: nobody knows how many")),
         help({Qt::Key_BracketRight, ctrl | Qt::Key_6},
              QT_TRANSLATE_NOOP("gui::Keys", "restored: gone, but known")),
         help({Qt::Key_Bar, ctrl | Qt::Key_7},
              QT_TRANSLATE_NOOP("gui::Keys", "or: the next letter typed may be it too")),
         help(
             {Qt::Key_Backslash},
             QT_TRANSLATE_NOOP("gui::Keys", "the next character as it is: a sign, a small letter")),
         help({Qt::Key_AsciiCircum}, QT_TRANSLATE_NOOP("gui::Keys", "the property arrow"))}};
}

KeyGroup cellsAndLines()
{
    return {
        told(QT_TRANSLATE_NOOP("gui::Keys", "Cells and lines")),
        KeyPlace::Letters,
        {help({Qt::Key_Insert, ctrl | Qt::Key_Space},
              QT_TRANSLATE_NOOP("gui::Keys", "put a cell in")),
         help({Qt::Key_Delete, Qt::Key_Backspace},
              QT_TRANSLATE_NOOP("gui::Keys", "take this cell, the one before, out")),
         help({ctrl | Qt::Key_K, ctrl | shift | Qt::Key_K},
              QT_TRANSLATE_NOOP("gui::Keys", "two letters in this cell; one with the next")),
         help({ctrl | Qt::Key_Return}, QT_TRANSLATE_NOOP("gui::Keys", "split the line here")),
         help({ctrl | Qt::Key_J},
              QT_TRANSLATE_NOOP("gui::Keys", "join with the line below, or what was just split")),
         help({ctrl | Qt::Key_L, shift | Qt::Key_Delete},
              QT_TRANSLATE_NOOP("gui::Keys", "a new line below; take the line out")),
         help({ctrl | shift | Qt::Key_Delete},
              QT_TRANSLATE_NOOP("gui::Keys", "take out the lines with nothing confirmed")),
         help({alt | Qt::Key_Up, alt | Qt::Key_Down},
              QT_TRANSLATE_NOOP("gui::Keys", "move the line up, down")),
         help({alt | Qt::Key_Left, alt | Qt::Key_Right},
              QT_TRANSLATE_NOOP("gui::Keys", "line's end: complete, cut off, not said")),
         help({alt | Qt::Key_1, alt | Qt::Key_2, alt | Qt::Key_3, alt | Qt::Key_4, alt | Qt::Key_5},
              QT_TRANSLATE_NOOP("gui::Keys", "for: maker, date, size, contract, inspected"),
              told(QT_TRANSLATE_NOOP("gui::Keys", "Alt+1 to Alt+5"))),
         help({alt | Qt::Key_6, alt | Qt::Key_7, alt | Qt::Key_8, alt | Qt::Key_9, alt | Qt::Key_0},
              QT_TRANSLATE_NOOP("gui::Keys", "pattern, property, owner, else, not said"),
              told(QT_TRANSLATE_NOOP("gui::Keys", "Alt+6 to Alt+0"))),
         help({ctrl | Qt::Key_B},
              QT_TRANSLATE_NOOP("gui::Keys", "another part of the line begins here, or not"))}};
}

KeyGroup looking()
{
    return {
        told(QT_TRANSLATE_NOOP("gui::Keys", "Looking")),
        KeyPlace::Window,
        {help(
             {Qt::Key_F2, Qt::Key_F3, Qt::Key_F4, Qt::Key_F5, Qt::Key_F6, Qt::Key_F7, Qt::Key_F8},
             QT_TRANSLATE_NOOP("gui::Keys", "its layers, as many as there are; F2 held: the photo"),
             told(QT_TRANSLATE_NOOP("gui::Keys", "F2 to F8"))),
         help({ctrl | Qt::Key_Plus, ctrl | Qt::Key_Equal, ctrl | Qt::Key_Minus},
              QT_TRANSLATE_NOOP("gui::Keys", "nearer, farther (wheel with Ctrl)"),
              told(QT_TRANSLATE_NOOP("gui::Keys", "Ctrl++  Ctrl+-"))),
         help({ctrl | shift | Qt::Key_Up, ctrl | shift | Qt::Key_Down},
              QT_TRANSLATE_NOOP("gui::Keys", "more contrast, less")),
         help({ctrl | shift | Qt::Key_Right, ctrl | shift | Qt::Key_Left},
              QT_TRANSLATE_NOOP("gui::Keys", "lighter, darker middle tones")),
         help({ctrl | Qt::Key_0},
              QT_TRANSLATE_NOOP("gui::Keys", "size, contrast and tones as they were")),
         help({ctrl | Qt::Key_G},
              QT_TRANSLATE_NOOP("gui::Keys", "magnifier over the stamp, or not")),
         help({ctrl | shift | Qt::Key_C},
              QT_TRANSLATE_NOOP("gui::Keys", "small letters: as capitals, or as typed")),
         help({ctrl | Qt::Key_D}, QT_TRANSLATE_NOOP("gui::Keys", "day or dusk")),
         help({Qt::Key_F9}, QT_TRANSLATE_NOOP("gui::Keys", "the photo and its outlines")),
         help({ctrl | Qt::Key_T}, QT_TRANSLATE_NOOP("gui::Keys", "the reading as text, to edit")),
         help({Qt::Key_F12}, QT_TRANSLATE_NOOP("gui::Keys", "find records")),
         help({Qt::Key_Escape},
              QT_TRANSLATE_NOOP("gui::Keys", "stop reading; close the tray; to the letters")),
         help({Qt::Key_F1}, QT_TRANSLATE_NOOP("gui::Keys", "this page"))}};
}

KeyGroup meaning()
{
    return {
        told(QT_TRANSLATE_NOOP("gui::Keys", "What it can mean")),
        KeyPlace::Window,
        {help({Qt::Key_F11}, QT_TRANSLATE_NOOP("gui::Keys", "the list (opened early: recorded)")),
         help({alt | Qt::Key_Return},
              QT_TRANSLATE_NOOP("gui::Keys", "take the maker in hand: the row chosen")),
         help({alt | Qt::Key_Backspace},
              QT_TRANSLATE_NOOP("gui::Keys", "none of the known makers")),
         help({alt | Qt::Key_Delete}, QT_TRANSLATE_NOOP("gui::Keys", "leave the maker open")),
         help({alt | Qt::Key_Insert},
              QT_TRANSLATE_NOOP("gui::Keys", "restore lost letters from its mark")),
         help({ctrl | Qt::Key_S}, QT_TRANSLATE_NOOP("gui::Keys", "the record; once more: file it")),
         help({ctrl | shift | Qt::Key_S},
              QT_TRANSLATE_NOOP("gui::Keys", "all the rest is right: file it, next photo"))}};
}

KeyGroup inTheList()
{
    return {told(QT_TRANSLATE_NOOP("gui::Keys", "In the list of makers")),
            KeyPlace::Meaning,
            {help({Qt::Key_Up, Qt::Key_Down},
                  QT_TRANSLATE_NOOP("gui::Keys", "another row in hand: its years and why it fits")),
             help({}, QT_TRANSLATE_NOOP("gui::Keys", "take the maker in hand; unfold the unlikely"),
                  told(QT_TRANSLATE_NOOP("gui::Keys", "Enter"))),
             help({Qt::Key_Left, Qt::Key_Right},
                  QT_TRANSLATE_NOOP("gui::Keys", "what of the row is out of view"))}};
}

KeyGroup photosAndStamps()
{
    return {
        told(QT_TRANSLATE_NOOP("gui::Keys", "Photos and stamps")),
        KeyPlace::Window,
        {help({ctrl | Qt::Key_O}, QT_TRANSLATE_NOOP("gui::Keys", "open photos (or drop a folder)")),
         help({Qt::Key_F10}, QT_TRANSLATE_NOOP("gui::Keys", "photos on the table")),
         help({ctrl | Qt::Key_N}, QT_TRANSLATE_NOOP("gui::Keys", "next photo that is not filed")),
         help({ctrl | shift | Qt::Key_N},
              QT_TRANSLATE_NOOP("gui::Keys", "set the photo aside, or take it up again")),
         help({ctrl | Qt::Key_W},
              QT_TRANSLATE_NOOP("gui::Keys", "off the table; its file and draft stay")),
         help({ctrl | Qt::Key_PageDown, ctrl | Qt::Key_PageUp},
              QT_TRANSLATE_NOOP("gui::Keys", "next, previous photo")),
         help({ctrl | Qt::Key_I},
              QT_TRANSLATE_NOOP("gui::Keys", "same piece as the photo before, or not")),
         help({ctrl | Qt::Key_E},
              QT_TRANSLATE_NOOP("gui::Keys", "another view of a stamp: of which, of none")),
         help({ctrl | Qt::Key_R}, QT_TRANSLATE_NOOP("gui::Keys", "read a photo that was stopped")),
         help({ctrl | Qt::Key_P}, QT_TRANSLATE_NOOP("gui::Keys", "reading ahead: pause, go on")),
         help({ctrl | Qt::Key_Right, ctrl | Qt::Key_Left},
              QT_TRANSLATE_NOOP("gui::Keys", "next, previous stamp of the photo")),
         help({ctrl | Qt::Key_U, ctrl | shift | Qt::Key_U},
              QT_TRANSLATE_NOOP("gui::Keys", "turn the stamp over, by a quarter")),
         help({ctrl | Qt::Key_M}, QT_TRANSLATE_NOOP("gui::Keys", "a mirror image, or not")),
         help({ctrl | Qt::Key_Delete}, QT_TRANSLATE_NOOP("gui::Keys", "this is no stamp")),
         help({ctrl | shift | Qt::Key_Backspace},
              QT_TRANSLATE_NOOP("gui::Keys", "stamps with nothing confirmed are none")),
         help({ctrl | Qt::Key_Z, ctrl | Qt::Key_Y, ctrl | shift | Qt::Key_Z},
              QT_TRANSLATE_NOOP("gui::Keys", "undo, redo"),
              told(QT_TRANSLATE_NOOP("gui::Keys", "Ctrl+Z  Ctrl+Y"))),
         help({ctrl | Qt::Key_Q}, QT_TRANSLATE_NOOP("gui::Keys", "close; drafts are kept"))}};
}

KeyGroup inThePhoto()
{
    return {told(QT_TRANSLATE_NOOP("gui::Keys", "In the photo")),
            KeyPlace::Photo,
            {help({Qt::Key_Return, Qt::Key_Backspace},
                  QT_TRANSLATE_NOOP("gui::Keys", "next, previous corner; then the whole outline")),
             help({Qt::Key_Left, Qt::Key_Right, Qt::Key_Up, Qt::Key_Down, shift | Qt::Key_Left,
                   shift | Qt::Key_Right, shift | Qt::Key_Up, shift | Qt::Key_Down},
                  QT_TRANSLATE_NOOP("gui::Keys", "move it by a pixel; with Shift by ten"),
                  told(QT_TRANSLATE_NOOP("gui::Keys", "arrows"))),
             help({Qt::Key_Comma, Qt::Key_Period},
                  QT_TRANSLATE_NOOP("gui::Keys", "turn it a degree (Shift and the mouse)")),
             help({Qt::Key_PageDown, Qt::Key_PageUp},
                  QT_TRANSLATE_NOOP("gui::Keys", "next, previous stamp")),
             help({Qt::Key_Insert, Qt::Key_Delete},
                  QT_TRANSLATE_NOOP("gui::Keys", "add an outline, take it out")),
             help({Qt::Key_Plus, Qt::Key_Minus, Qt::Key_0},
                  QT_TRANSLATE_NOOP("gui::Keys", "nearer, farther, whole photo"))}};
}

KeyGroup inTheRecord()
{
    return {
        told(QT_TRANSLATE_NOOP("gui::Keys", "In the record")),
        KeyPlace::Record,
        {help({}, QT_TRANSLATE_NOOP("gui::Keys", "to the field whose letter is underlined"),
              told(QT_TRANSLATE_NOOP("gui::Keys", "Tab  Alt+letter"))),
         help({Qt::Key_Space, shift | Qt::Key_Space},
              QT_TRANSLATE_NOOP("gui::Keys", "next, previous choice (or its first letter)")),
         help({Qt::Key_Return}, QT_TRANSLATE_NOOP("gui::Keys", "write in it; open its choices")),
         help({Qt::Key_Delete, Qt::Key_Backspace},
              QT_TRANSLATE_NOOP("gui::Keys", "take what the row says out"))}};
}

}  // namespace

QString keyName(const QKeySequence& press)
{
    QString name = press.toString(QKeySequence::PortableText);
    name.replace("Return", told(QT_TRANSLATE_NOOP("gui::Keys", "Enter")));
    name.replace("PgDown", "PgDn");
    return name;
}

std::vector<KeyGroup> keyGroups()
{
    return {goingThrough(),    howMuchIsLeft(), cellsAndLines(), inThePhoto(), looking(),
            photosAndStamps(), meaning(),       inTheList(),     inTheRecord()};
}

}  // namespace gui
