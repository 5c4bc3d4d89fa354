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

struct Near {
    double distance = 1;
    bool outside = false;  // the maker did not work in the year that was found
    std::size_t maker = 0;
};

bool isNearer(const Near& a, const Near& b)
{
    return std::make_pair(a.distance, a.outside) < std::make_pair(b.distance, b.outside);
}

// Each maker once, nearest first.
class NearestThree {
public:
    void add(const Near& one)
    {
        for (Near& other : near_)
            if (other.maker == one.maker) {
                other = std::min(other, one, isNearer);
                std::stable_sort(near_.begin(), near_.end(), isNearer);
                return;
            }
        near_.insert(std::upper_bound(near_.begin(), near_.end(), one, isNearer), one);
        if (near_.size() > 3)
            near_.pop_back();
    }
    double farthest() const { return near_.size() < 3 ? 1 : near_.back().distance; }
    const std::vector<Near>& all() const { return near_; }

private:
    std::vector<Near> near_;
};

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
    NearestThree near;
    for (const std::string& line : lines)
        for (const Text& text : texts_) {
            const auto longer = static_cast<double>(std::max(line.size(), text.letters.size()));
            const auto most = static_cast<std::size_t>(near.farthest() * longer);
            const std::size_t edits = editsUpTo(line, text.letters, most);
            if (edits > most)
                continue;
            for (const std::size_t maker : text.makers)
                near.add({static_cast<double>(edits) / longer, year && worked(maker, *year) == 0,
                          maker});
        }
    Answer answer;
    for (const Near& one : near.all())
        answer.makers.push_back(known_.makers[one.maker].maker_id);
    if (!near.all().empty())
        answer.distance = near.all().front().distance;
    return answer;
}
