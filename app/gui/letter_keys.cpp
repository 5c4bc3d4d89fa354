#include "app/gui/letter_keys.h"

#include <QObject>

namespace gui {

namespace {

struct SignKey {
    const char* sign;
    Edit edit;
};

constexpr SignKey sign_keys[] = {
    {"?", Edit::MarkUnsure},      {"+", Edit::MarkFaint},    {"[", Edit::MarkLost},
    {"~", Edit::MarkLostUnknown}, {"]", Edit::MarkRestored}, {"|", Edit::OrElse},
};

struct PlainKey {
    int key;
    Qt::KeyboardModifiers with;
    std::optional<Edit> edit;
    std::optional<Move> move = std::nullopt;
};

// Control and a digit is a ladder: how much of the letter is left.
const PlainKey plain_keys[] = {
    {Qt::Key_1, Qt::ControlModifier, Edit::MarkClear},
    {Qt::Key_2, Qt::ControlModifier, Edit::MarkUnsure},
    {Qt::Key_3, Qt::ControlModifier, Edit::MarkFaint},
    {Qt::Key_4, Qt::ControlModifier, Edit::MarkLost},
    {Qt::Key_5, Qt::ControlModifier, Edit::MarkLostUnknown},
    {Qt::Key_6, Qt::ControlModifier, Edit::MarkRestored},
    {Qt::Key_7, Qt::ControlModifier, Edit::OrElse},
    {Qt::Key_PageDown, Qt::NoModifier, Edit::NextAlternative},
    {Qt::Key_PageUp, Qt::NoModifier, Edit::PreviousAlternative},
    {Qt::Key_Insert, Qt::NoModifier, Edit::InsertCell},
    {Qt::Key_Space, Qt::ControlModifier, Edit::InsertCell},
    {Qt::Key_Delete, Qt::NoModifier, Edit::DeleteCell},
    {Qt::Key_Backspace, Qt::NoModifier, Edit::DeleteBefore},
    {Qt::Key_Return, Qt::NoModifier, Edit::Accept},
    {Qt::Key_Enter, Qt::NoModifier, Edit::Accept},
    {Qt::Key_Return, Qt::ShiftModifier, Edit::AcceptLine},
    {Qt::Key_Enter, Qt::ShiftModifier, Edit::AcceptLine},
    {Qt::Key_Return, Qt::ControlModifier, Edit::SplitLine},
    {Qt::Key_Enter, Qt::ControlModifier, Edit::SplitLine},
    {Qt::Key_J, Qt::ControlModifier, Edit::JoinLine},
    {Qt::Key_L, Qt::ControlModifier, Edit::AddLine},
    {Qt::Key_Left, Qt::AltModifier, Edit::LeftEnd},
    {Qt::Key_Right, Qt::AltModifier, Edit::RightEnd},
    {Qt::Key_Left, Qt::NoModifier, {}, Move::Left},
    {Qt::Key_Right, Qt::NoModifier, {}, Move::Right},
    {Qt::Key_Up, Qt::NoModifier, {}, Move::Up},
    {Qt::Key_Down, Qt::NoModifier, {}, Move::Down},
    {Qt::Key_Home, Qt::NoModifier, {}, Move::LineStart},
    {Qt::Key_End, Qt::NoModifier, {}, Move::LineEnd},
    {Qt::Key_Home, Qt::ControlModifier, {}, Move::First},
    {Qt::Key_End, Qt::ControlModifier, {}, Move::Last},
};

bool isText(const QKeyEvent& event)
{
    // Where the keyboard's third level is used, Control and Alt arrive together with a character.
    const Qt::KeyboardModifiers with = event.modifiers();
    const bool command = with.testFlag(Qt::ControlModifier) != with.testFlag(Qt::AltModifier);
    return !command && !event.text().isEmpty() && event.text().at(0).isPrint();
}

LetterKey typed(const QString& text)
{
    LetterKey key;
    key.text = text;
    return key;
}

}  // namespace

std::optional<LetterKey> letterKey(const QKeyEvent& event, bool as_it_is)
{
    if (isText(event)) {
        const QString text = event.text();
        if (as_it_is)
            return typed(text);
        if (text == "\\")
            return LetterKey{{}, {}, {}, true};
        if (text == "^")
            return typed(QString(QChar(0x2191)));
        for (const SignKey& sign : sign_keys)
            if (text == sign.sign)
                return LetterKey{sign.edit, {}, {}, false};
        return typed(text);
    }
    const Qt::KeyboardModifiers with = event.modifiers() & ~Qt::KeypadModifier;
    for (const PlainKey& plain : plain_keys)
        if (plain.key == event.key() && plain.with == with)
            return LetterKey{plain.edit, plain.move, {}, false};
    return std::nullopt;
}

std::vector<KeyGroup> keyGroups()
{
    const auto tr = [](const char* text) { return QObject::tr(text); };
    return {
        {tr("Going through the letters"),
         {{tr("letters, digits"), tr("write into the cell")},
          {tr("Enter"), tr("right as it is, on to the next")},
          {tr("Shift+Enter"), tr("the rest of the line is right")},
          {tr("arrows, Home, End"), tr("move; with Ctrl, Home and End: whole stamp")},
          {tr("PgDn  PgUp"), tr("next, last alternative; one lost more, fewer")},
          {tr("Ctrl+Z  Ctrl+Y"), tr("undo, redo")}}},
        {tr("How much is left of a letter"),
         {{tr("Ctrl+1"), tr("clear")},
          {tr("?  or  Ctrl+2"), tr("unsure (after a letter: that letter)")},
          {tr("+  or  Ctrl+3"), tr("faint: traces of one")},
          {tr("[  or  Ctrl+4"), tr("lost: one")},
          {tr("~  or  Ctrl+5"), tr("lost: nobody knows how many")},
          {tr("]  or  Ctrl+6"), tr("restored: gone, but known")},
          {tr("|  or  Ctrl+7"), tr("or: the next letter typed may be it too")},
          {tr("\\"), tr("the next sign is a character of the stamp")},
          {tr("^"), tr("the property arrow")}}},
        {tr("Cells and lines"),
         {{tr("Ins  or  Ctrl+Space"), tr("put a cell in")},
          {tr("Del  Backspace"), tr("take this cell, the one before, out")},
          {tr("Ctrl+Enter"), tr("split the line here")},
          {tr("Ctrl+J"), tr("join with the line below")},
          {tr("Ctrl+L"), tr("a new line below")},
          {tr("Alt+Left  Alt+Right"), tr("line's end: complete, cut off, not said")}}},
        {tr("Looking"),
         {{tr("F2 to F8"), tr("layers of the stamp, in place")},
          {tr("F9"), tr("the photo and its outlines")},
          {tr("F10"), tr("photos still to read")},
          {tr("F11"), tr("what it can mean")},
          {tr("F12"), tr("find records")},
          {tr("Ctrl+D"), tr("day or dusk")},
          {tr("Esc"), tr("stop reading; close the tray; back to the letters")}}},
        {tr("In the photo"),
         {{tr("Enter  Backspace"), tr("next, last corner; then the whole outline")},
          {tr("arrows"), tr("move it by a pixel; with Shift by ten")},
          {tr("PgDn  PgUp"), tr("next, last stamp")},
          {tr("Ins  Del"), tr("add an outline, take it out")},
          {tr("+  -  0"), tr("nearer, farther, whole photo")}}},
        {tr("Photos and records"),
         {{tr("Ctrl+O"), tr("open photos (or drop them)")},
          {tr("Ctrl+PgDn  Ctrl+PgUp"), tr("next, last photo")},
          {tr("Ctrl+R"), tr("read a photo that was stopped")},
          {tr("Ctrl+Right  Ctrl+Left"), tr("next, last stamp of the photo")},
          {tr("Ctrl+M"), tr("a mirror image: turn it left to right, or back")},
          {tr("Ctrl+Del"), tr("this is no stamp: take its outline out")},
          {tr("Ctrl+S"), tr("file the record")},
          {tr("Ctrl+Q"), tr("close")},
          {tr("F1"), tr("this page")}}},
    };
}

}  // namespace gui
