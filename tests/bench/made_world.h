#pragma once

#include <cstddef>
#include <set>
#include <string>
#include <vector>

#include "models/item_dating.h"
#include "models/maker_register.h"
#include "tests/support/dice.h"

// A made-up world of items whose years are known, drawn by rules of its own: not those that the
// dating supposes. Details change by chains (one way of making follows another), what was given up
// is used up for a while, marks fade and lose digits. Into such an item one thing that is wrong can
// be planted.
namespace bench {

struct WorldOptions {
    double old_stock = 0.2;        // details made in a way given up already
    double old_stock_years = 0.4;  // and with each further year this share of them
    double early = 0.05;           // made so a year before the register says
    double other_year = 0.02;      // the stamp's year is one off
    double with_month = 0.12;      // stamps such as MAR 40; the rest has four digits,
    double lone_number = 0.06;     //   or two that are the year's, or as often a size
    double unread_digit = 0.08, doubtful_digit = 0.08, misread_digit = 0.003;
};

enum class Planted { Nothing, MisreadDigit, WrongPart, Repair };

struct MadeItem {
    models::DatedItem item;
    int year = 0;
    Planted planted = Planted::Nothing;
    std::string culprit;   // how the source of the planted piece begins
    int printed_year = 0;  // of a misread digit
    int gap = 0;           // years between what the planted piece says and what all others allow
};

// Makers, item types, and per type four chains of details, one way after another.
models::MakerRegister madeRegister(Dice& dice);

// One item of the register's; its pieces agree but for old stock and its like.
// `planted`: what is wrong with one of them; `gap` is told, and 0 where it turned out that nothing
// contradicts.
MadeItem makeItem(const models::MakerRegister& known, Dice& dice, const WorldOptions& options,
                  Planted planted);

const char* nameOf(Planted planted);

}  // namespace bench
