#include "models/settling_cell.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "models/date_forms.h"
#include "models/typed_notation.h"

namespace models {

namespace {

constexpr std::size_t most_letters_told = 4;
constexpr double least_contender = 1e-3, least_bits = 0.01, least_told = 0.02;
constexpr double least_change = 0.1;  // of the likeliest maker's probability, by some letter

using Letters = std::vector<double>;  // P(letter), by number

// A line of the reading that holds letters, by its number among them all.
struct EvidentLine {
    const Line* line = nullptr;
    std::size_t number = 0;
};

struct UnreadCell {
    std::size_t stamp = 0, line = 0, cell = 0;   // the line by its number among those with letters
    std::array<std::vector<double>, 10> digits;  // [digit][year]: P(digit | a date of this year)
};

// One who may have made it, with what the unread cells would show then.
struct Contender {
    std::string maker_id, maker;
    double probability = 0;
    std::vector<Letters> cells;  // by unread cell
};

std::vector<EvidentLine> linesOf(const Reading& reading)
{
    std::vector<EvidentLine> lines;
    for (std::size_t l = 0; l < reading.lines.size(); ++l)
        if (!reading.lines[l].cells.empty())
            lines.push_back({&reading.lines[l], l});
    return lines;
}

class SettlingSearch {
public:
    SettlingSearch(const ItemEvidence& evidence, const std::vector<StampEvidence>& stamps,
                   const MakerWeigher& weigher, const MakerRegister& known,
                   const CompiledRegister& compiled);

    void addMaker(const MakerPosterior& maker);
    void addUnknown(double probability);
    std::optional<SettlingCell> best() const;

private:
    bool settles(const SettlingCell& settling) const;
    void findUnread();
    std::array<std::vector<double>, 10> digitsAt(const Line& line, std::size_t cell) const;
    std::vector<Letters> lettersOf(const std::vector<StampLetters>& stamps,
                                   const std::vector<double>& years) const;
    Letters beside(const UnreadCell& cell, const std::vector<double>& years) const;
    double bitsOf(std::size_t cell) const;
    Letters mean(std::size_t cell) const;
    LetterMeaning meaningOf(std::size_t cell, std::size_t letter, double probability) const;

    const std::vector<StampEvidence>& stamps_;
    const MakerWeigher& weigher_;
    const MakerRegister& known_;
    const CompiledRegister& compiled_;
    std::vector<std::vector<EvidentLine>> lines_;  // by stamp
    std::vector<UnreadCell> unread_;
    Letters other_text_;
    std::array<std::size_t, 10> digit_{};  // letter numbers
    std::vector<Contender> contenders_;
};

SettlingSearch::SettlingSearch(const ItemEvidence& evidence,
                               const std::vector<StampEvidence>& stamps,
                               const MakerWeigher& weigher, const MakerRegister& known,
                               const CompiledRegister& compiled)
    : stamps_(stamps), weigher_(weigher), known_(known), compiled_(compiled)
{
    for (const Reading& reading : evidence.stamps)
        lines_.push_back(linesOf(reading));
    double sum = 0;
    for (std::size_t id = 0; id < compiled.ids.size(); ++id) {
        const std::string& letter = compiled.ids.letter(id);
        sum += other_text_.emplace_back(otherTextShare(letter));
        if (letter.size() == 1 && letter[0] >= '0' && letter[0] <= '9')
            digit_[static_cast<std::size_t>(letter[0] - '0')] = id;
    }
    for (double& share : other_text_)
        share /= sum;
    findUnread();
}

void SettlingSearch::findUnread()
{
    for (std::size_t s = 0; s < stamps_.size(); ++s)
        for (std::size_t l = 0; l < stamps_[s].lines().size(); ++l) {
            const LineEvidence& line = stamps_[s].lines()[l];
            const std::vector<double> any_year(compiled_.range.size(),
                                               1 / static_cast<double>(compiled_.range.size()));
            for (std::size_t c = 0; c < line.cellCount(); ++c) {
                if (!line.isUnread(c))
                    continue;
                unread_.push_back({s, l, c, {}});
                if (line.dateShare(c, any_year) > 0)
                    unread_.back().digits = digitsAt(*lines_[s][l].line, c);
            }
        }
}

// The dates that the line can hold if this digit stands there, weighed against those with others.
std::array<std::vector<double>, 10> SettlingSearch::digitsAt(const Line& line,
                                                             std::size_t cell) const
{
    std::array<std::vector<double>, 10> digits;
    std::vector<double> sum(compiled_.range.size(), 0);
    for (std::size_t d = 0; d < digits.size(); ++d) {
        digits[d].assign(sum.size(), 0);
        Line read = line;
        read.cells[cell] = clearCell(std::to_string(d));
        for (const DateInstance& date : findDates(read))
            for (std::size_t y = 0;
                 date.first_cell <= cell && cell < date.end_cell && y < sum.size(); ++y) {
                const double odds = date.odds(compiled_.range.first + static_cast<int>(y));
                digits[d][y] += odds;
                sum[y] += odds;
            }
    }
    for (std::vector<double>& digit : digits)
        for (std::size_t y = 0; y < sum.size(); ++y)
            digit[y] = sum[y] > 0 ? digit[y] / sum[y] : 0.1;
    return digits;
}

// What a cell shows that is not part of a mark: a date's digit, or whatever other text holds.
Letters SettlingSearch::beside(const UnreadCell& cell, const std::vector<double>& years) const
{
    const double in_date = cell.digits[0].empty()
                               ? 0
                               : stamps_[cell.stamp].lines()[cell.line].dateShare(cell.cell, years);
    Letters letters = other_text_;
    for (double& share : letters)
        share *= 1 - in_date;
    if (in_date > 0)
        for (std::size_t d = 0; d < cell.digits.size(); ++d)
            for (std::size_t y = 0; y < years.size(); ++y)
                letters[digit_[d]] += in_date * years[y] * cell.digits[d][y];
    return letters;
}

std::vector<Letters> SettlingSearch::lettersOf(const std::vector<StampLetters>& stamps,
                                               const std::vector<double>& years) const
{
    std::vector<Letters> cells;
    for (const UnreadCell& cell : unread_) {
        const StampLetters& stamp = stamps[cell.stamp];
        Letters of_mark = stamp.of_letters[cell.line][cell.cell];
        of_mark.resize(other_text_.size(), 0);
        double rest = 1;
        for (double& share : of_mark)
            rest -= share /= stamp.weight;
        const Letters other = beside(cell, years);
        for (std::size_t letter = 0; letter < other.size(); ++letter)
            of_mark[letter] += std::max(rest, 0.0) * other[letter];
        cells.push_back(std::move(of_mark));
    }
    return cells;
}

void SettlingSearch::addMaker(const MakerPosterior& maker)
{
    const std::vector<double> years = weigher_.yearsOf(maker.maker);
    std::vector<StampLetters> letters;
    for (const StampEvidence& stamp : stamps_)
        letters.push_back(maker.has_marks
                              ? stamp.lettersWithMarks(compiled_.marks_of_maker[maker.maker], years)
                              : stamp.lettersWithUnknownMark(years));
    const Maker& registered = known_.makers[maker.maker];
    contenders_.push_back(
        {registered.maker_id, registered.name, maker.probability, lettersOf(letters, years)});
}

void SettlingSearch::addUnknown(double probability)
{
    const std::vector<double> years = weigher_.yearsOfUnknown();
    std::vector<StampLetters> letters;
    for (const StampEvidence& stamp : stamps_)
        letters.push_back(stamp.lettersWithUnknownMark(years));
    contenders_.push_back({"", "", probability, lettersOf(letters, years)});
}

Letters SettlingSearch::mean(std::size_t cell) const
{
    Letters all(other_text_.size(), 0);
    double sum = 0;
    for (const Contender& contender : contenders_) {
        sum += contender.probability;
        for (std::size_t letter = 0; letter < all.size(); ++letter)
            all[letter] += contender.probability * contender.cells[cell][letter];
    }
    for (double& share : all)
        share /= sum;
    return all;
}

double SettlingSearch::bitsOf(std::size_t cell) const
{
    const Letters all = mean(cell);
    double bits = 0, sum = 0;
    for (const Contender& contender : contenders_) {
        sum += contender.probability;
        for (std::size_t letter = 0; letter < all.size(); ++letter)
            if (const double share = contender.cells[cell][letter]; share > 0)
                bits += contender.probability * share * std::log2(share / all[letter]);
    }
    return bits / sum;
}

LetterMeaning SettlingSearch::meaningOf(std::size_t cell, std::size_t letter,
                                        double probability) const
{
    LetterMeaning meaning;
    meaning.letter = compiled_.ids.letter(letter);
    meaning.probability = probability;
    double sum = 0;
    for (const Contender& contender : contenders_)
        sum += contender.probability * contender.cells[cell][letter];
    for (const Contender& contender : contenders_) {
        const double then = contender.probability * contender.cells[cell][letter] / sum;
        if (then <= meaning.maker_probability)
            continue;
        meaning.maker_id = contender.maker_id;
        meaning.maker = contender.maker;
        meaning.maker_probability = then;
    }
    return meaning;
}

std::optional<SettlingCell> SettlingSearch::best() const
{
    std::size_t best = 0;
    double most = 0;
    for (std::size_t cell = 0; cell < unread_.size(); ++cell)
        if (const double bits = bitsOf(cell); bits > most) {
            most = bits;
            best = cell;
        }
    if (most < least_bits)
        return std::nullopt;
    const UnreadCell& where = unread_[best];
    const EvidentLine& line = lines_[where.stamp][where.line];
    SettlingCell settling{where.stamp, line.number, where.cell, writeTyped(*line.line), most, {}};
    const Letters shares = mean(best);
    for (std::size_t letter = 0; letter < shares.size(); ++letter)
        if (shares[letter] >= least_told)
            settling.letters.push_back(meaningOf(best, letter, shares[letter]));
    std::stable_sort(settling.letters.begin(), settling.letters.end(),
                     [](const auto& a, const auto& b) { return a.probability > b.probability; });
    if (settling.letters.size() > most_letters_told)
        settling.letters.resize(most_letters_told);
    return settles(settling) ? std::optional(settling) : std::nullopt;
}

// Would one of its letters lead to another maker, or make the likeliest much surer?
bool SettlingSearch::settles(const SettlingCell& settling) const
{
    const auto now = std::max_element(
        contenders_.begin(), contenders_.end(),
        [](const Contender& a, const Contender& b) { return a.probability < b.probability; });
    return std::any_of(settling.letters.begin(), settling.letters.end(), [&](const auto& letter) {
        return letter.maker_id != now->maker_id ||
               std::abs(letter.maker_probability - now->probability) >= least_change;
    });
}

}  // namespace

std::optional<SettlingCell> settlingCell(const ItemEvidence& evidence,
                                         const std::vector<StampEvidence>& stamps,
                                         const MakerWeigher& weigher, const Posterior& posterior,
                                         const std::vector<const MakerPosterior*>& ranked,
                                         const MakerRegister& known,
                                         const CompiledRegister& compiled)
{
    SettlingSearch search(evidence, stamps, weigher, known, compiled);
    for (std::size_t i = 0; i < std::min(ranked.size(), settling_contenders); ++i)
        if (ranked[i]->probability >= least_contender)
            search.addMaker(*ranked[i]);
    search.addUnknown(posterior.unknown_maker);
    return search.best();
}

}  // namespace models
