#include "app/gui/letter_keys.h"

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
    {Qt::Key_PageUp, Qt::ShiftModifier, Edit::Surer},
    {Qt::Key_PageDown, Qt::ShiftModifier, Edit::LessSure},
    {Qt::Key_Insert, Qt::NoModifier, Edit::InsertCell},
    {Qt::Key_Space, Qt::ControlModifier, Edit::InsertCell},
    {Qt::Key_Delete, Qt::NoModifier, Edit::DeleteCell},
    {Qt::Key_Backspace, Qt::NoModifier, Edit::DeleteBefore},
    {Qt::Key_Return, Qt::NoModifier, Edit::Accept},
    {Qt::Key_Enter, Qt::NoModifier, Edit::Accept},
    {Qt::Key_Return, Qt::ShiftModifier, Edit::AcceptLine},
    {Qt::Key_Enter, Qt::ShiftModifier, Edit::AcceptLine},
    {Qt::Key_Return, Qt::ControlModifier | Qt::ShiftModifier, Edit::AcceptStamp},
    {Qt::Key_Enter, Qt::ControlModifier | Qt::ShiftModifier, Edit::AcceptStamp},
    {Qt::Key_Return, Qt::ControlModifier, Edit::SplitLine},
    {Qt::Key_Enter, Qt::ControlModifier, Edit::SplitLine},
    {Qt::Key_J, Qt::ControlModifier, Edit::JoinLine},
    {Qt::Key_L, Qt::ControlModifier, Edit::AddLine},
    {Qt::Key_Delete, Qt::ShiftModifier, Edit::RemoveLine},
    {Qt::Key_Delete, Qt::ControlModifier | Qt::ShiftModifier, Edit::RemoveOtherLines},
    {Qt::Key_Up, Qt::AltModifier, Edit::LineUp},
    {Qt::Key_Down, Qt::AltModifier, Edit::LineDown},
    {Qt::Key_Left, Qt::AltModifier, Edit::LeftEnd},
    {Qt::Key_Right, Qt::AltModifier, Edit::RightEnd},
    {Qt::Key_K, Qt::ControlModifier, Edit::SplitCell},
    {Qt::Key_K, Qt::ControlModifier | Qt::ShiftModifier, Edit::JoinCell},
    {Qt::Key_B, Qt::ControlModifier, Edit::PartHere},
    {Qt::Key_0, Qt::AltModifier, Edit::RoleUnknown},
    {Qt::Key_1, Qt::AltModifier, Edit::RoleMaker},
    {Qt::Key_2, Qt::AltModifier, Edit::RoleDate},
    {Qt::Key_3, Qt::AltModifier, Edit::RoleSize},
    {Qt::Key_4, Qt::AltModifier, Edit::RoleContract},
    {Qt::Key_5, Qt::AltModifier, Edit::RoleInspection},
    {Qt::Key_6, Qt::AltModifier, Edit::RolePattern},
    {Qt::Key_7, Qt::AltModifier, Edit::RoleProperty},
    {Qt::Key_8, Qt::AltModifier, Edit::RoleOwner},
    {Qt::Key_9, Qt::AltModifier, Edit::RoleOther},
    {Qt::Key_Down, Qt::ControlModifier, {}, Move::NextWorthALook},
    {Qt::Key_Up, Qt::ControlModifier, {}, Move::LastWorthALook},
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

QString asCapitals(const QString& text)
{
    const QString capitals = text.toUpper();
    return capitals.toLower() == text ? capitals : text;
}

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

}  // namespace gui
