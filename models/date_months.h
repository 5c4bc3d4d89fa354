#pragma once

#include <string_view>

#include "models/date_forms.h"

// How months are printed, but for figures.
namespace models {

struct NamedMonth {
    std::string_view text;
    int month;
    MonthForm form;
};

// English names and short forms (MCH is seen on postmarks), and Roman numbers as postmarks and
// coins print them.
constexpr NamedMonth named_months[] = {
    {"JAN", 1, MonthForm::Name},       {"JANUARY", 1, MonthForm::Name},
    {"FEB", 2, MonthForm::Name},       {"FEBRUARY", 2, MonthForm::Name},
    {"MAR", 3, MonthForm::Name},       {"MCH", 3, MonthForm::Name},
    {"MARCH", 3, MonthForm::Name},     {"APR", 4, MonthForm::Name},
    {"APRIL", 4, MonthForm::Name},     {"MAY", 5, MonthForm::Name},
    {"JUN", 6, MonthForm::Name},       {"JUNE", 6, MonthForm::Name},
    {"JUL", 7, MonthForm::Name},       {"JULY", 7, MonthForm::Name},
    {"AUG", 8, MonthForm::Name},       {"AUGUST", 8, MonthForm::Name},
    {"SEP", 9, MonthForm::Name},       {"SEPT", 9, MonthForm::Name},
    {"SEPTEMBER", 9, MonthForm::Name}, {"OCT", 10, MonthForm::Name},
    {"OCTOBER", 10, MonthForm::Name},  {"NOV", 11, MonthForm::Name},
    {"NOVEMBER", 11, MonthForm::Name}, {"DEC", 12, MonthForm::Name},
    {"DECEMBER", 12, MonthForm::Name}, {"I", 1, MonthForm::Roman},
    {"II", 2, MonthForm::Roman},       {"III", 3, MonthForm::Roman},
    {"IV", 4, MonthForm::Roman},       {"IIII", 4, MonthForm::Roman},
    {"V", 5, MonthForm::Roman},        {"VI", 6, MonthForm::Roman},
    {"VII", 7, MonthForm::Roman},      {"VIII", 8, MonthForm::Roman},
    {"IX", 9, MonthForm::Roman},       {"X", 10, MonthForm::Roman},
    {"XI", 11, MonthForm::Roman},      {"XII", 12, MonthForm::Roman},
};

}  // namespace models
