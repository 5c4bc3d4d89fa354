#include "models/confusion.h"

#include <algorithm>
#include <stdexcept>
#include <utility>

#include "models/letters.h"

namespace models {

namespace {

// Shares of P(seen | truth). They are a start: common practice, no source.
constexpr double other_case = 0.03;       // h for H
constexpr double anything_else = 0.02;    // shared by all characters that do not look alike
constexpr double published_pair = 0.022;  // each look-alike of the published lists
constexpr double common_practice_pair = 0.012;
constexpr double most_in_row = 0.9;

// What is seen for a letter that it does not look like; seldom a letter that marks hardly hold.
double unlistedShare(const std::string& seen)
{
    return anything_else / characters_on_marks * (isOnMarks(seen) ? 1 : seldom_on_marks);
}

const std::vector<LookAlike>& startingPairs()
{
    static const std::vector<LookAlike> pairs = {
        // Unicode Technical Standard 39, confusable characters, the part in ASCII.
        {"0", "O", published_pair},
        {"1", "I", published_pair},
        {"1", "l", published_pair},
        {"1", "|", published_pair},
        {"I", "l", published_pair},
        {"I", "|", published_pair},
        {"l", "|", published_pair},
        // A published list of look-alikes on number plates, "Smart Car Plate Recognition System".
        {"B", "P", published_pair},
        {"C", "G", published_pair},
        {"E", "F", published_pair},
        {"O", "Q", published_pair},
        {"P", "R", published_pair},
        {"V", "W", published_pair},
        {"0", "8", published_pair},
        {"2", "Z", published_pair},
        {"3", "5", published_pair},
        {"3", "8", published_pair},
        {"3", "9", published_pair},
        {"4", "9", published_pair},
        {"4", "A", published_pair},
        {"5", "8", published_pair},
        {"5", "S", published_pair},
        {"6", "8", published_pair},
        {"6", "b", published_pair},
        {"8", "B", published_pair},
        {"9", "q", published_pair},
        {"D", "O", published_pair},
        {"K", "X", published_pair},
        {"U", "V", published_pair},
        {"X", "Y", published_pair},
        // Tesseract's list of ambiguous characters for English, those of one character.
        {"0", "o", published_pair},
        {"a", "o", published_pair},
        {"c", "e", published_pair},
        {"f", "t", published_pair},
        // Common practice, no source: seen when one stroke of a capital is lost.
        {"&", "8", common_practice_pair},
        {"/", "1", common_practice_pair},
        {"0", "6", common_practice_pair},
        {"0", "9", common_practice_pair},
        {"0", "D", common_practice_pair},
        {"1", "7", common_practice_pair},
        {"6", "G", common_practice_pair},
        {"7", "T", common_practice_pair},
        {"8", "S", common_practice_pair},
        {"B", "R", common_practice_pair},
        {"C", "O", common_practice_pair},
        {"E", "L", common_practice_pair},
        {"H", "N", common_practice_pair},
        {"I", "J", common_practice_pair},
        {"I", "L", common_practice_pair},
        {"I", "T", common_practice_pair},
        {"M", "N", common_practice_pair},
        {"V", "Y", common_practice_pair},
    };
    return pairs;
}

}  // namespace

bool isOnMarks(const std::string& character)
{
    return character.size() == 1 || character == property_arrow;
}

const ConfusionTable& ConfusionTable::published()
{
    static const ConfusionTable table(startingPairs());
    return table;
}

ConfusionTable::ConfusionTable(const std::vector<LookAlike>& pairs)
    : table_(std::make_shared<const Table>())
{
    for (const LookAlike& pair : pairs) {
        set(pair.a, pair.b, pair.share);
        set(pair.b, pair.a, pair.share);
    }
}

void ConfusionTable::set(const std::string& truth, const std::string& seen, double share)
{
    auto table = std::make_shared<Table>(*table_);
    Row& row = table->rows[truth];
    row.of_seen[seen] = share;
    row.sum = 0;
    for (const auto& [letter, of_letter] : row.of_seen)
        row.sum += of_letter;
    if (!(share >= 0) || row.sum > most_in_row)
        throw std::invalid_argument("ConfusionTable: the shares of '" + truth +
                                    "' must be 0 or more and together at most 0.9");
    table->of_truths[seen][truth] = share;
    table_ = std::move(table);
}

double ConfusionTable::probability(const std::string& truth, const std::string& seen) const
{
    if (truth.empty() || seen.empty())
        return 0;
    const auto row = table_->rows.find(truth);
    if (row != table_->rows.end()) {
        const auto found = row->second.of_seen.find(seen);
        if (found != row->second.of_seen.end())
            return found->second;
    }
    const double in_row = row == table_->rows.end() ? 0 : row->second.sum;
    if (truth == seen)
        return 1 - other_case - anything_else - in_row;
    return sameButCase(truth, seen) ? other_case : unlistedShare(seen);
}

// One look into the table serves all letters that are not told apart in it.
std::vector<double> ConfusionTable::probabilities(const std::vector<std::string>& truths,
                                                  const std::string& seen) const
{
    static const Shares none;
    const auto row = table_->of_truths.find(seen);
    const Shares& listed = row == table_->of_truths.end() ? none : row->second;
    std::vector<double> all(truths.size(), unlistedShare(seen));
    for (std::size_t i = 0; i < truths.size(); ++i) {
        const auto isTruth = [&](const auto& share) { return share.first == truths[i]; };
        const auto share = std::find_if(listed.begin(), listed.end(), isTruth);
        if (share != listed.end())
            all[i] = share->second;
        else if (truths[i].empty() || seen.empty() || sameButCase(truths[i], seen))
            all[i] = probability(truths[i], seen);
    }
    return all;
}

std::vector<std::string> ConfusionTable::letters() const
{
    std::vector<std::string> letters;
    for (const auto& [letter, row] : table_->rows)
        letters.push_back(letter);
    std::sort(letters.begin(), letters.end());
    return letters;
}

std::vector<std::pair<std::string, double>> ConfusionTable::takenFor(const std::string& truth) const
{
    std::vector<std::pair<std::string, double>> taken;
    const auto row = table_->rows.find(truth);
    if (row != table_->rows.end())
        taken.assign(row->second.of_seen.begin(), row->second.of_seen.end());
    std::sort(taken.begin(), taken.end(), [](const auto& a, const auto& b) {
        return a.second != b.second ? a.second > b.second : a.first < b.first;
    });
    return taken;
}

}  // namespace models
