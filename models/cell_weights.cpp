#include "models/cell_weights.h"

#include <algorithm>

#include "models/letters.h"

namespace models {

namespace {

// How many letters one can be of which nothing is known.
constexpr double any_letters = 40;
constexpr double case_share = 0.05;  // h written for H, or set in another case

const std::vector<std::string>& markLetters()
{
    static const std::vector<std::string> letters =
        charactersOf("ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789&/.,'-()+abcdefghijklmnopqrstuvwxyz ");
    return letters;
}

// P(seen | truth) with few slips, given what the table has for them.
double clearProbability(const std::string& truth, const std::string& seen, double slip,
                        double by_table)
{
    double same = 0;
    if (truth == seen)
        same = 1 - case_share;
    else if (sameButCase(truth, seen))
        same = case_share;
    return (1 - slip) * same + slip * by_table;
}

// How often a letter is seen for any other.
double takenForOthers(const std::string& seen, const ConfusionTable& confusions)
{
    const std::vector<double> shares = confusions.probabilities(markLetters(), seen);
    double sum = 0;
    for (std::size_t i = 0; i < shares.size(); ++i)
        sum += markLetters()[i] == seen ? 0 : shares[i];
    return sum;
}

// Adds what one alternative says of each letter.
//   rest  of the certainty that all leave over, what goes to this one's look-alikes
void addAlternative(const Cell& cell, const std::string& seen, double certainty, double rest,
                    const LetterIds& ids, const ReadingErrors& errors, double clear_slip,
                    std::vector<double>& weights)
{
    const std::vector<double> by_table = errors.confusions.probabilities(ids.letters(), seen);
    const double others = rest > 0 ? takenForOthers(seen, errors.confusions) : 0;
    for (std::size_t id = 0; id < ids.size(); ++id) {
        const std::string& truth = ids.letter(id);
        weights[id] += certainty * (cell.state == CellState::Clear
                                        ? clearProbability(truth, seen, clear_slip, by_table[id])
                                        : by_table[id]);
        if (others > 0 && truth != seen)
            weights[id] += rest * by_table[id] / others;
    }
}

std::vector<double> letterWeights(const Cell& cell, const LetterIds& ids,
                                  const ReadingErrors& errors)
{
    const LetterErrors& rates = isEngine(cell.by) ? errors.engine : errors.person;
    std::vector<double> weights(ids.size(), 0);
    double named = 0;
    for (const Alternative& alternative : cell.alternatives)
        named += std::clamp(alternative.certainty, 0.0, 1.0);
    const double left_over = std::max(0.0, 1 - named), shrink = named > 1 ? 1 / named : 1;
    for (const Alternative& alternative : cell.alternatives) {
        const double certainty = std::clamp(alternative.certainty, 0.0, 1.0) * shrink;
        const double part = named > 0 ? certainty / std::min(named, 1.0) : 0;
        addAlternative(cell, normalForm(alternative.text), certainty,
                       left_over * part * rates.look_alike_share, ids, errors, rates.clear_slip,
                       weights);
    }
    const double spread = named > 0 ? left_over * (1 - rates.look_alike_share) : left_over;
    const bool on_marks = std::all_of(cell.alternatives.begin(), cell.alternatives.end(),
                                      [](const auto& seen) { return isOnMarks(seen.text); });
    const double any = rates.any_letter, of_any = (on_marks ? any : any * seldom_on_marks);
    for (double& weight : weights)
        weight = (1 - any) * (weight + spread / any_letters) + of_any / any_letters;
    return weights;
}

bool saysNoLetter(const Cell& cell)
{
    return cell.alternatives.empty() || cell.state == CellState::Lost ||
           cell.state == CellState::Traces || cell.state == CellState::Restored;
}

// The weights that no text's letters decide: the other text's is a sum over all that may stand
// there.
void weighCommonLetters(CellWeights& weights, const Cell& cell, const ReadingErrors& errors)
{
    static const LetterIds letters = [] {
        LetterIds ids;
        for (const std::string& letter : markLetters())
            ids.idOf(letter);
        return ids;
    }();
    const std::vector<double> of_letter = letterWeights(cell, letters, errors);
    double sum = 0;
    for (std::size_t id = 0; id < of_letter.size(); ++id) {
        const std::string& letter = letters.letter(id);
        sum += otherTextShare(letter) * of_letter[id];
        if (letter == ".")
            weights.dot = of_letter[id];
        if (letter == " ")
            weights.space = of_letter[id];
    }
    for (const Alternative& seen : cell.alternatives)  // a letter of another script
        if (!letters.contains(normalForm(seen.text)))
            sum += otherTextShare(seen.text) * std::clamp(seen.certainty, 0.0, 1.0);
    weights.other = std::max(sum, 1e-6);
}

}  // namespace

std::size_t LetterIds::idOf(const std::string& letter)
{
    const auto [found, is_new] = ids_.emplace(letter, letters_.size());
    if (is_new)
        letters_.push_back(letter);
    return found->second;
}

std::vector<std::size_t> LetterIds::idsOf(const std::string& text)
{
    std::vector<std::size_t> ids;
    for (const std::string& character : charactersOf(text))
        ids.push_back(idOf(normalForm(character)));
    return ids;
}

std::vector<CellWeights> weighCells(const std::vector<Cell>& cells, const LetterIds& ids,
                                    const ReadingErrors& errors)
{
    std::vector<CellWeights> all;
    all.reserve(cells.size());
    for (const Cell& cell : cells) {
        CellWeights weights;
        weights.unread = saysNoLetter(cell);
        const bool counted = cell.state == CellState::Lost || cell.state == CellState::Traces;
        if (counted) {
            weights.least = std::max(0, cell.least);
            weights.most =
                cell.most ? std::optional(std::max(*cell.most, weights.least)) : std::nullopt;
            weights.stretch = weights.least != 1 || weights.most != 1;
        }
        if (!weights.unread) {
            weights.of_letter = letterWeights(cell, ids, errors);
            weighCommonLetters(weights, cell, errors);
            for (std::size_t id = 0; id < ids.size(); ++id)
                if (ids.letter(id) == unknown_letter)
                    weights.of_letter[id] = weights.other;
        }
        all.push_back(std::move(weights));
    }
    return all;
}

double otherTextShare(const std::string& letter)
{
    // Digits fill more than half of such text, letters a sixth. Common practice, no source.
    if (letter.size() != 1)
        return 0.0005;
    const char c = letter[0];
    if (c >= '0' && c <= '9')
        return 0.06;
    if (c == ' ')
        return 0.06;
    if (c == '.' || c == '/')
        return 0.03;
    if (c >= 'A' && c <= 'Z')
        return 0.006;
    return c >= 'a' && c <= 'z' ? 0.001 : 0.005;
}

}  // namespace models
