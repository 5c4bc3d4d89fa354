#include "vision/symbol_alignment.h"

#include <algorithm>
#include <string>

namespace vision {

namespace {

// Fewest edits from the first i of a to the first j of b.
class EditTable {
public:
    EditTable(const std::vector<std::string>& a, const std::vector<std::string>& b)
        : columns_(b.size() + 1), cost_((a.size() + 1) * columns_)
    {
        for (std::size_t i = 0; i <= a.size(); ++i)
            for (std::size_t j = 0; j <= b.size(); ++j)
                at(i, j) = cheapest(a, b, i, j);
    }

    int& at(std::size_t i, std::size_t j) { return cost_[i * columns_ + j]; }

private:
    int cheapest(const std::vector<std::string>& a, const std::vector<std::string>& b,
                 std::size_t i, std::size_t j)
    {
        if (i == 0)
            return static_cast<int>(j);
        if (j == 0)
            return static_cast<int>(i);
        const int change = at(i - 1, j - 1) + (a[i - 1] == b[j - 1] ? 0 : 1);
        return std::min({change, at(i - 1, j) + 1, at(i, j - 1) + 1});
    }

    std::size_t columns_;
    std::vector<int> cost_;
};

std::vector<std::string> textsOf(const std::vector<RawSymbol>& symbols, bool with_spaces)
{
    std::vector<std::string> texts;
    for (const RawSymbol& symbol : symbols) {
        if (with_spaces && symbol.starts_word && !texts.empty())
            texts.emplace_back(" ");
        texts.push_back(symbol.text);
    }
    return texts;
}

}  // namespace

std::vector<int> alignSymbols(const std::vector<RawSymbol>& a, const std::vector<RawSymbol>& b)
{
    const std::vector<std::string> p = textsOf(a, false), q = textsOf(b, false);
    EditTable table(p, q);
    std::vector<int> partner(a.size(), -1);
    std::size_t i = p.size(), j = q.size();
    while (i > 0 && j > 0) {
        const int change = p[i - 1] == q[j - 1] ? 0 : 1;
        if (table.at(i, j) == table.at(i - 1, j - 1) + change) {
            --i;
            --j;
            partner[i] = static_cast<int>(j);
        } else if (table.at(i, j) == table.at(i - 1, j) + 1) {
            --i;
        } else {
            --j;
        }
    }
    return partner;
}

double agreementOf(const std::vector<RawSymbol>& a, const std::vector<RawSymbol>& b)
{
    if (a.empty() || b.empty())
        return 0;
    const std::vector<std::string> p = textsOf(a, true), q = textsOf(b, true);
    EditTable table(p, q);
    return 1 - static_cast<double>(table.at(p.size(), q.size())) /
                   static_cast<double>(std::max(p.size(), q.size()));
}

}  // namespace vision
