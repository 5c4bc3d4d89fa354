#include "tests/support/mark_texts.h"

namespace {

std::string nameText(Dice& dice)
{
    static const std::vector<std::string> first{
        "BRAN", "CUL", "DROS", "FEN", "GAL", "HOB", "KEL", "LUD", "MAR", "NESK", "PENNA", "QUAR",
        "RUTH", "SKE", "TIL",  "ULV", "VOR", "WEX", "YAR", "ZEL", "OST", "IBER", "AXM",   "JUN"};
    static const std::vector<std::string> last{
        "DLOW",  "GRATH", "LEMBY", "NISK", "QUISK",  "ROWENN", "STELSK", "THWENN",
        "VANSK", "WENSK", "YOKE",  "ZOUR", "FORBLE", "PESK",   "MURN",   "HOLSK"};
    return dice.among(first) + dice.among(last);
}

std::string initials(Dice& dice, int count)
{
    static const std::string all = "ABCDEFGHIJKLMNOPQRSTUVWXYZ";
    const std::string after = dice.once_in(3) ? "" : ".";
    std::string text;
    for (int i = 0; i < count; ++i)
        text += all[static_cast<std::size_t>(dice.whole(0, 25))] + after;
    return text;
}

std::string makerText(Dice& dice)
{
    static const std::vector<std::string> ends{" & CO",     " LTD", " & SONS", " BROS",
                                               " & CO LTD", " CO",  ""};
    switch (dice.whole(0, 5)) {
        case 0:
            return initials(dice, dice.whole(2, 3)) + dice.among(ends);
        case 1:
            return initials(dice, 1) + " & " + initials(dice, 1);
        case 2:
            return nameText(dice) + " & " + nameText(dice);
        case 3:
            return initials(dice, 1) + " " + nameText(dice) + dice.among(ends);
        default:
            return nameText(dice) + dice.among(ends);
    }
}

std::string dateText(Dice& dice)
{
    static const std::vector<std::string> months{"JAN",  "FEB", "MAR",  "APR", "MAY", "JUNE",
                                                 "JULY", "AUG", "SEPT", "OCT", "NOV", "DEC"};
    const std::string year = std::to_string(dice.whole(21, 58));
    switch (dice.whole(0, 4)) {
        case 0:
            return std::to_string(dice.whole(1, 12)) + "/" + year;
        case 1:
            return dice.among(months) + " 19" + year;
        default:
            return "19" + year;
    }
}

std::string otherText(Dice& dice)
{
    switch (dice.whole(0, 4)) {
        case 0:
            return "SIZE " + std::to_string(dice.whole(1, 9));
        case 1:
            return "No " + std::to_string(dice.whole(100, 9999));
        case 2:
            return std::to_string(2 * dice.whole(14, 24));  // a length in inches
        case 3:
            return initials(dice, 2) + " " + std::to_string(dice.whole(2, 99));
        default:
            return nameText(dice);
    }
}

}  // namespace

std::vector<std::string> markText(Dice& dice, bool arrow)
{
    std::vector<std::string> lines;
    switch (dice.whole(0, 5)) {
        case 0:
            lines = {makerText(dice)};
            break;
        case 1:
            lines = {makerText(dice) + " " + dateText(dice)};
            break;
        case 2:
            lines = {makerText(dice), otherText(dice), dateText(dice)};
            break;
        case 3:
            lines = {otherText(dice), dateText(dice)};
            break;
        default:
            lines = {makerText(dice), dateText(dice)};
            break;
    }
    if (arrow && dice.once_in(5))
        lines.back() += " \u2191";
    return lines;
}
