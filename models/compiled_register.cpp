#include "models/compiled_register.h"

#include <algorithm>
#include <set>

#include "models/edtf.h"
#include "models/letters.h"
#include "models/mark_spellings.h"
#include "models/role_words.h"
#include "models/typed_notation.h"
#include "models/year_product.h"

namespace models {

namespace {

// Of a mark; more would be no mark, and odds of so many letters still fit a double.
constexpr std::size_t most_letters = 60;

// Each mark in all its spellings; a maker with several marks counts as one.
std::vector<SampleText> markSamples(const MakerRegister& known)
{
    std::unordered_map<std::string, double> marks;
    for (const Mark& mark : known.marks)
        marks[mark.maker_id] += 1;
    std::vector<SampleText> samples;
    for (const Mark& mark : known.marks)
        for (const SpelledText& spelling : spellingsOf(plainText(mark.line), known.spellings))
            samples.push_back({spelling.text, spelling.share / marks[mark.maker_id]});
    return samples;
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
    std::set<std::pair<std::string, std::string>> listed;
    for (const Mark& mark : known.marks)
        listed.emplace(mark.maker_id, plainText(mark.line));
    std::vector<Mark> marks;
    for (const Code& code : known.codes) {
        if (code.stands_for != CodeMeaning::Maker || listed.count({code.value, code.code}) > 0)
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

CompiledRegister::CompiledRegister(const MakerRegister& known, const ReadingErrors& reading_errors)
    : errors(reading_errors),
      rates(reading_errors.insert_rate),
      range(yearsOf(known)),
      marks_of_maker(known.makers.size()),
      letter_model(markSamples(known), ids, reading_errors.skip_rate),
      forward({}, TextTrie::Direction::Forward),
      backward({}, TextTrie::Direction::Backward),
      places({}, TextTrie::Direction::Forward),
      other_texts({}, TextTrie::Direction::Forward)
{
    MakerNumbers numbers;
    for (const Maker& maker : known.makers) {
        numbers.emplace(maker.maker_id, years_of_maker.size());
        years_of_maker.push_back(yearShape(maker.from, maker.to));
    }
    for (const Mark& mark : known.marks)
        addMark(known, numbers, mark);
    for (const Mark& mark : codeMarks(known))
        addMark(known, numbers, mark);
    addOtherTexts(known);
    addYearCodes(known);
    forward = TextTrie(texts_, TextTrie::Direction::Forward);
    backward = TextTrie(texts_, TextTrie::Direction::Backward);
    texts_ = {};
}

std::size_t CompiledRegister::yearShape(const std::string& from, const std::string& to)
{
    const auto [found, is_new] = shape_numbers_.emplace(std::pair(from, to), year_shapes.size());
    if (is_new)
        year_shares.push_back(normalised(year_shapes.emplace_back(softYears(from, to, range))));
    return found->second;
}

void CompiledRegister::addMark(const MakerRegister& known, const MakerNumbers& numbers,
                               const Mark& mark)
{
    const auto number = numbers.find(mark.maker_id);
    const std::string text = shortened(plainText(mark.line));
    if (number == numbers.end() || text.empty())
        return;
    const Maker& maker = known.makers[number->second];
    CompiledMark compiled;
    compiled.maker = number->second;
    compiled.text = mark.text;
    compiled.from = mark.from.empty() ? maker.from : mark.from;
    compiled.to = mark.to.empty() ? maker.to : mark.to;
    compiled.years = yearShape(compiled.from, compiled.to);
    compiled.spelling = spellings.size();
    for (const SpelledText& spelling : spellingsOf(text, known.spellings)) {
        texts_.push_back(makeMatchText(shortened(spelling.text), ids, errors.skip_rate));
        spellings.push_back({static_cast<std::uint32_t>(marks.size()),
                             static_cast<std::uint32_t>(years_of_maker[compiled.maker]),
                             spelling.share});
        if (compiled.letters.letters.empty())
            compiled.letters = texts_.back();
    }
    marks_of_maker[compiled.maker].push_back(marks.size());
    marks.push_back(std::move(compiled));
}

void CompiledRegister::addYearCodes(const MakerRegister& known)
{
    for (const Code& code : known.codes) {
        const auto bounds = edtfYearBounds(code.value);
        if (code.stands_for != CodeMeaning::Year || code.code.empty() || !bounds)
            continue;
        CompiledYearCode compiled{makeMatchText(shortened(code.code), ids, errors.skip_rate), {}};
        for (int year = range.first; year <= range.last; ++year)
            compiled.years.push_back(year >= bounds->first.value_or(range.first) &&
                                             year <= bounds->last.value_or(range.last)
                                         ? 1
                                         : 0);
        year_codes.push_back(std::move(compiled));
    }
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
    other_texts = trieOf(texts);
    std::set<std::string> towns;
    for (const Maker& maker : known.makers)
        towns.insert(inCapitals(maker.place));
    places = trieOf(towns);
}

TextTrie CompiledRegister::trieOf(const std::set<std::string>& texts)
{
    std::vector<MatchText> letters;
    for (const std::string& text : texts)
        if (!text.empty())
            letters.push_back(makeMatchText(shortened(text), ids, errors.skip_rate));
    return {letters, TextTrie::Direction::Forward};
}

}  // namespace models
