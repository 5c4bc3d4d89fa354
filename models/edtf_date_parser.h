#pragma once

#include <string_view>
#include <utility>

#include "models/edtf.h"

namespace models {

// Reads the dates of an EDTF text one after the other, from `at_` on. Every function that reads
// takes what it understands and answers whether it did; after a false, `fault_` says why.
class EdtfDateParser {
public:
    explicit EdtfDateParser(std::string_view text) : text_(text) {}

protected:
    // A date without its time of day; what follows it is left.
    bool date(EdtfDate& date);
    // A time from its T on, for a date that may have one.
    bool time(EdtfDate& date);

    bool atEnd() const { return at_ == text_.size(); }
    char here() const { return at_ < text_.size() ? text_[at_] : '\0'; }
    bool at(char c) const { return at_ < text_.size() && text_[at_] == c; }

    bool take(char c)
    {
        const bool taken = at(c);
        at_ += taken ? 1 : 0;
        return taken;
    }

    bool fail(const char* expected) { return failAt(at_, expected); }

    bool failAt(std::size_t position, const char* expected)
    {
        fault_ = {position, expected};
        return false;
    }

    std::string_view text_;
    std::size_t at_ = 0;
    EdtfFault fault_;

private:
    bool year(EdtfYear& year);
    bool longYear(EdtfYear& year);
    bool exponent(EdtfYear& year);
    bool significant(EdtfYear& year);
    bool month(EdtfDate& date);
    bool day(EdtfDate& date);
    bool shift(EdtfTime& time);
    // Month or day, with a qualifier on one side.
    bool part(EdtfDigits& digits, const char* expected);
    bool masked(EdtfDigits& digits, int length, const char* expected);
    void doubt(EdtfDigits& digits, bool left);
    bool twoDigits(int& number, int most, const char* expected);
};

}  // namespace models
