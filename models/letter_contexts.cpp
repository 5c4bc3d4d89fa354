#include "models/letter_contexts.h"

#include <algorithm>

namespace models {

LetterContext LetterContext::with(std::size_t letter) const
{
    LetterContext longer = *this;
    if (longer.size_ == longest) {
        std::copy(letters_.begin() + 1, letters_.end(), longer.letters_.begin());
        --longer.size_;
    }
    longer.letters_[longer.size_++] =
        static_cast<std::uint8_t>(std::min<std::size_t>(letter, start));
    return longer;
}

LetterContext LetterContext::newest(std::size_t count) const
{
    LetterContext shorter;
    for (std::size_t i = size_ - count; i < size_; ++i)
        shorter.letters_[shorter.size_++] = letters_[i];
    return shorter;
}

LetterContext LetterContext::withoutNewest() const
{
    LetterContext shorter = *this;
    --shorter.size_;
    return shorter;
}

std::uint64_t LetterContext::key(std::size_t newest) const
{
    std::uint64_t key = newest;
    for (std::size_t i = 0; i < newest; ++i)
        key = key << 8 | back(i);
    return key;
}

void LetterContexts::add(const std::vector<std::size_t>& text, double weight)
{
    LetterContext context = LetterContext::atStart();
    for (const std::size_t letter : text) {
        if (letter >= LetterContext::start)
            return;
        for (std::size_t newest = 1; newest <= context.size(); ++newest) {
            Followers& behind = followers_[context.key(newest)];
            if (behind.counts.empty())
                behind.context = context.newest(newest);
            const auto same =
                std::find_if(behind.counts.begin(), behind.counts.end(),
                             [&](const auto& count) { return count.first == letter; });
            if (same == behind.counts.end())
                behind.counts.emplace_back(static_cast<std::uint8_t>(letter), weight);
            else
                same->second += weight;
            behind.sum += weight;
        }
        context = context.with(letter);
    }
}

void LetterContexts::drawTowards(const LetterContext& context, std::vector<double>& shares) const
{
    for (std::size_t newest = 2; newest <= context.size(); ++newest) {
        const auto found = followers_.find(context.key(newest));
        if (found == followers_.end())
            return;
        const Followers& behind = found->second;
        double kinds = 0;
        for (const auto& [letter, count] : behind.counts)
            kinds += std::min(1.0, count);
        for (double& share : shares)
            share *= kinds / (behind.sum + kinds);
        for (const auto& [letter, count] : behind.counts)
            shares[letter] += count / (behind.sum + kinds);
    }
}

std::vector<LetterContext> LetterContexts::seen(double least_weight) const
{
    std::vector<LetterContext> contexts;
    for (const auto& [key, behind] : followers_)
        if (behind.sum >= least_weight)
            contexts.push_back(behind.context);
    std::sort(contexts.begin(), contexts.end(), [](const LetterContext& a, const LetterContext& b) {
        return a.size() != b.size() ? a.size() < b.size() : a.key() < b.key();
    });
    return contexts;
}

}  // namespace models
