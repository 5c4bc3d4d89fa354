#include <utility>

#include "models/edtf.h"
#include "models/edtf_date_parser.h"
#include "models/edtf_days.h"

namespace models {

namespace {

// What the parts of a date are, for runs: both ends must have the same.
enum class Precision { Year, PartOfYear, Month, Day };

Precision precisionOf(const EdtfDate& date)
{
    if (date.day)
        return Precision::Day;
    if (date.isPartOfYear())
        return Precision::PartOfYear;
    return date.month ? Precision::Month : Precision::Year;
}

class EdtfParser : private EdtfDateParser {
public:
    using EdtfDateParser::EdtfDateParser;

    std::variant<Edtf, EdtfFault> parse()
    {
        Edtf edtf;
        if (!(at('[') || at('{') ? set(edtf) : dateOrInterval(edtf)))
            return std::move(fault_);
        return edtf;
    }

private:
    bool takeDots()
    {
        const bool taken = text_.substr(at_, 2) == "..";
        at_ += taken ? 2 : 0;
        return taken;
    }

    bool dateOrInterval(Edtf& edtf);
    bool intervalEnd(EdtfEnd& end);
    bool set(Edtf& edtf);
    bool setMember(EdtfMember& member, bool first, char closing);
    bool ordered(const EdtfMember& member, std::size_t second_at);
};

bool EdtfParser::dateOrInterval(Edtf& edtf)
{
    EdtfMember& member = edtf.members.emplace_back();
    if (atEnd())
        return fail("a date such as 1940, 194X or 1940-03");
    if (!intervalEnd(member.from))
        return false;
    const bool is_date = member.from.kind == EdtfEnd::Kind::Date;
    if (is_date && at('T') && !time(member.from.date))
        return false;
    if (atEnd() && is_date)
        return true;
    if (member.from.date.time)
        return fail("the end of the text: a time of day stands in no interval");
    if (!take('/'))
        return fail(is_date ? "the end of the date, or '/' and the end of an interval" : "'/'");
    edtf.kind = Edtf::Kind::Interval;
    const std::size_t second_at = at_;
    if (!intervalEnd(member.to.emplace()))
        return false;
    if (!atEnd())
        return fail("the end of the interval");
    const bool both_open =
        member.from.kind == EdtfEnd::Kind::Open && member.to->kind == EdtfEnd::Kind::Open;
    if (!is_date && member.to->kind != EdtfEnd::Kind::Date && !both_open)
        return failAt(second_at, "a date on at least one side of '/'");
    return ordered(member, second_at);
}

bool EdtfParser::intervalEnd(EdtfEnd& end)
{
    if (takeDots()) {
        end.kind = EdtfEnd::Kind::Open;
        return true;
    }
    if (atEnd() || at('/')) {
        end.kind = EdtfEnd::Kind::Unknown;
        return true;
    }
    return date(end.date);
}

bool EdtfParser::set(Edtf& edtf)
{
    edtf.kind = at('[') ? Edtf::Kind::OneOf : Edtf::Kind::AllOf;
    const char closing = at('[') ? ']' : '}';
    ++at_;
    do {
        const bool first = edtf.members.empty();
        if (!setMember(edtf.members.emplace_back(), first, closing))
            return false;
    } while (take(','));
    if (!take(closing))
        return fail(closing == ']' ? "',', '..' or ']'" : "',', '..' or '}'");
    return atEnd() || fail("the end of the text after the set");
}

bool EdtfParser::setMember(EdtfMember& member, bool first, char closing)
{
    if (first && takeDots()) {
        member.from.kind = EdtfEnd::Kind::Open;
        return date(member.to.emplace().date);
    }
    if (!date(member.from.date))
        return false;
    if (!takeDots())
        return true;
    EdtfEnd& to = member.to.emplace();
    if (at(closing)) {
        to.kind = EdtfEnd::Kind::Open;
        return true;
    }
    const std::size_t second_at = at_;
    if (!date(to.date))
        return false;
    if (precisionOf(member.from.date) != precisionOf(to.date))
        return failAt(second_at, "an end as precise as the beginning of the run");
    return ordered(member, second_at);
}

bool EdtfParser::ordered(const EdtfMember& member, std::size_t second_at)
{
    if (member.from.kind != EdtfEnd::Kind::Date || member.to->kind != EdtfEnd::Kind::Date)
        return true;
    return firstDayOf(member.from.date) <= lastDayOf(member.to->date) ||
           failAt(second_at, "an end that is not before the beginning");
}

}  // namespace

std::variant<Edtf, EdtfFault> parseEdtf(std::string_view text)
{
    return EdtfParser(text).parse();
}

std::string EdtfFault::message() const
{
    return "At character " + std::to_string(position + 1) + ": expected " + expected + ".";
}

}  // namespace models
