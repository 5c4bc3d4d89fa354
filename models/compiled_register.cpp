#include "models/compiled_register.h"

#include <algorithm>
#include <set>

#include "models/edtf.h"
#include "models/letters.h"
#include "models/mark_spellings.h"
#include "models/role_words.h"
#include "models/typed_notation.h"

namespace models {

namespace {

constexpr double skip_rate = 0.02;           // as MatchOptions has it
constexpr double skip_of_any_letter = 0.06;  // among letters, full stops and spaces
constexpr double any_length = 0.3;           // of unknown marks, those of whatever length
constexpr std::size_t longest_unknown = 30;
constexpr std::size_t most_letters = 100;  // of a mark; more would be no mark

std::vector<std::string> markTexts(const MakerRegister& known)
{
    std::vector<std::string> texts;
    for (const Mark& mark : known.marks)
        texts.push_back(plainText(mark.line));
    return texts;
}

std::string shortened(const std::string& text)
{
    const std::vector<std::string> characters = charactersOf(text);
    std::string kept;
    for (std::size_t i = 0; i < characters.size() && i < most_letters; ++i)
        kept += characters[i];
    return kept;
}

std::string inCapitals(const std::string& text)
{
    std::string capitals;
    for (const std::string& character : charactersOf(text))
        capitals += capitalOf(character);
    return capitals;
}

// A code that means a maker is a mark like any other.
std::vector<Mark> codeMarks(const MakerRegister& known)
{
    std::vector<Mark> marks;
    for (const Code& code : known.codes) {
        const bool listed =
            std::any_of(known.marks.begin(), known.marks.end(), [&](const Mark& mark) {
                return mark.maker_id == code.value && plainText(mark.line) == code.code;
            });
        if (code.stands_for != CodeMeaning::Maker || listed)
            continue;
        Mark mark;
        mark.maker_id = code.value;
        for (const std::string& character : charactersOf(code.code))
            mark.line.cells.push_back(clearCell(normalForm(character)));
        mark.text = writeTyped(mark.line);
        mark.kind = MarkKind::Code;
        mark.from = code.from;
        mark.to = code.to;
        marks.push_back(std::move(mark));
    }
    return marks;
}

}  // namespace

CompiledRegister::CompiledRegister(const MakerRegister& known)
    : range(yearsOf(known)),
      marks_of_maker(known.makers.size()),
      letter_model(markTexts(known), ids)
{
    for (const Mark& mark : known.marks)
        addMark(known, mark.maker_id, mark);
    for (const Mark& mark : codeMarks(known))
        addMark(known, mark.maker_id, mark);
    addOtherTexts(known);
    addYearCodes(known);
    countLengths();
}

void CompiledRegister::addMark(const MakerRegister& known, const std::string& maker_id,
                               const Mark& mark)
{
    const Maker* maker = known.maker(maker_id);
    const std::string text = shortened(plainText(mark.line));
    if (!maker || text.empty())
        return;
    CompiledMark compiled;
    compiled.maker = static_cast<std::size_t>(maker - known.makers.data());
    compiled.text = mark.text;
    compiled.from = mark.from.empty() ? maker->from : mark.from;
    compiled.to = mark.to.empty() ? maker->to : mark.to;
    compiled.years = softYears(compiled.from, compiled.to, range);
    for (const SpelledText& spelling : spellingsOf(text, known.spellings))
        compiled.spellings.push_back(
            {makeMatchText(spelling.text, ids, skip_rate), spelling.share});
    marks_of_maker[compiled.maker].push_back(marks.size());
    marks.push_back(std::move(compiled));
}

void CompiledRegister::addYearCodes(const MakerRegister& known)
{
    for (const Code& code : known.codes) {
        const auto bounds = edtfYearBounds(code.value);
        if (code.stands_for != CodeMeaning::Year || code.code.empty() || !bounds)
            continue;
        CompiledYearCode compiled{makeMatchText(shortened(code.code), ids, skip_rate), {}};
        for (int year = range.first; year <= range.last; ++year)
            compiled.years.push_back(year >= bounds->first.value_or(range.first) &&
                                             year <= bounds->last.value_or(range.last)
                                         ? 1
                                         : 0);
        year_codes.push_back(std::move(compiled));
    }
}

// The register's own lengths, smoothed, since a maker that it does not know may sign otherwise.
void CompiledRegister::countLengths()
{
    std::vector<double> shares(longest_unknown + 1, 0);
    for (std::size_t length = 1; length <= longest_unknown; ++length)
        shares[length] = any_length / static_cast<double>(longest_unknown);
    for (const CompiledMark& mark : marks) {
        const std::size_t length = mark.spellings.front().text.letters.size();
        shares[std::min(length, longest_unknown)] +=
            (1 - any_length) / static_cast<double>(marks.size());
    }
    const std::size_t any_letter = ids.idOf("\xEF\xBF\xBD");  // U+FFFD
    for (std::size_t length = 1; length <= longest_unknown; ++length)
        lengths.push_back({{std::vector<std::size_t>(length, any_letter),
                            std::vector<double>(length, skip_of_any_letter)},
                           shares[length]});
}

void CompiledRegister::addOtherTexts(const MakerRegister& known)
{
    std::set<std::string> texts;
    for (const Code& code : known.codes)
        if (code.stands_for == CodeMeaning::Inspector || code.stands_for == CodeMeaning::Quarter)
            texts.insert(code.code);
    for (const ItemType& type : known.item_types) {
        texts.insert(inCapitals(type.name));
        texts.insert(inCapitals(type.pattern));
        texts.insert(type.sizes.begin(), type.sizes.end());
    }
    for (const std::string& word : leadWords())
        texts.insert(word);
    for (const std::string& text : texts)
        if (!text.empty())
            other_texts.push_back(makeMatchText(shortened(text), ids, skip_rate));
}

}  // namespace models
