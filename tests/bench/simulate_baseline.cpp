#include "tests/bench/simulate_baseline.h"

#include <algorithm>
#include <cstdlib>
#include <map>
#include <optional>
#include <regex>
#include <utility>

#include "models/letters.h"

namespace {

// The best guess, a question mark for what cannot be read.
std::string bestString(const models::Line& line)
{
    std::string text;
    for (const models::Cell& cell : line.cells)
        text += cell.alternatives.empty() ? "?" : cell.alternatives.front().text;
    return text;
}

// Edits, or more than `most` as soon as it is clear that there are more.
std::size_t editsUpTo(const std::string& a, const std::string& b, std::size_t most)
{
    static thread_local std::vector<std::size_t> row;
    row.resize(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j)
        row[j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        std::size_t diagonal = row[0], least = row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t joined = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
            diagonal = row[j];
            row[j] = std::min({joined, row[j] + 1, row[j - 1] + 1});
            least = std::min(least, row[j]);
        }
        if (least > most)
            return most + 1;
    }
    return row[b.size()];
}

std::optional<int> yearIn(const std::vector<std::string>& lines)
{
    static const std::regex full("\\b(1[89][0-9][0-9])\\b"), two("(?:^|[/ '.])([0-9][0-9])$");
    std::smatch found;
    for (const std::string& line : lines)
        if (std::regex_search(line, found, full))
            return std::atoi(found[1].str().c_str());
    for (const std::string& line : lines)
        if (std::regex_search(line, found, two))
            return 1900 + std::atoi(found[1].str().c_str());
    return std::nullopt;
}

}  // namespace

StringBaseline::StringBaseline(const models::MakerRegister& known) : known_(known)
{
    std::map<std::string, std::vector<std::size_t>> makers_of;
    std::unordered_map<std::string, std::size_t> number;
    for (std::size_t m = 0; m < known.makers.size(); ++m)
        number[known.makers[m].maker_id] = m;
    for (const models::Mark& mark : known.marks)
        makers_of[models::plainText(mark.line)].push_back(number.at(mark.maker_id));
    for (auto& [text, makers] : makers_of)
        texts_.push_back({text, std::move(makers)});
}

double StringBaseline::worked(std::size_t maker, int year) const
{
    return year >= std::atoi(known_.makers[maker].from.c_str()) &&
                   year <= std::atoi(known_.makers[maker].to.c_str())
               ? 1
               : 0;
}

StringBaseline::Answer StringBaseline::nearest(const models::Reading& reading) const
{
    std::vector<std::string> lines;
    for (const models::Line& line : reading.lines)
        lines.push_back(bestString(line));
    const std::optional<int> year = yearIn(lines);
    struct Near {
        double distance;
        bool outside;
        std::size_t maker;
    };
    std::vector<Near> near;
    double third = 1;
    for (const std::string& line : lines)
        for (const Text& text : texts_) {
            const auto longer = static_cast<double>(std::max(line.size(), text.letters.size()));
            const auto most = static_cast<std::size_t>(third * longer);
            const std::size_t edits = editsUpTo(line, text.letters, most);
            if (edits > most)
                continue;
            for (const std::size_t maker : text.makers)
                near.push_back({static_cast<double>(edits) / longer,
                                year && worked(maker, *year) == 0, maker});
            if (near.size() >= 3) {
                std::stable_sort(near.begin(), near.end(), [](const Near& a, const Near& b) {
                    return std::make_pair(a.distance, a.outside) <
                           std::make_pair(b.distance, b.outside);
                });
                third = near[2].distance;
                while (near.size() > 3 && near.back().distance > third)
                    near.pop_back();
            }
        }
    Answer answer;
    for (const Near& one : near) {
        const std::string& id = known_.makers[one.maker].maker_id;
        if (answer.makers.size() < 3 &&
            std::find(answer.makers.begin(), answer.makers.end(), id) == answer.makers.end())
            answer.makers.push_back(id);
    }
    if (!near.empty())
        answer.distance = near.front().distance;
    return answer;
}
