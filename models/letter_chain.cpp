#include "models/letter_chain.h"

#include <algorithm>
#include <unordered_map>

namespace models {

LetterChain::LetterChain(std::size_t letters, const std::vector<LetterContext>& contexts,
                         const std::function<std::vector<double>(const LetterContext&)>& shares_of)
    : letters_(letters)
{
    std::vector<LetterContext> states = {LetterContext(), LetterContext::atStart()};
    for (std::size_t letter = 0; letter + 1 < letters; ++letter)
        states.push_back(LetterContext().with(letter));
    for (const LetterContext& context : contexts)
        if (context.size() > 1)
            states.push_back(context);
    std::unordered_map<std::uint64_t, std::uint32_t> numbers;
    for (std::uint32_t s = 0; s < states.size(); ++s)
        numbers.emplace(states[s].key(), s);
    shares_.reserve(states.size() * letters);
    next_.reserve(states.size() * letters);
    // What a state goes on to is what the next shorter one does, unless a longer one is known; all
    // states of one length are linked before the next longer ones take over what they go on to.
    for (std::size_t first = 0; first < states.size();) {
        const std::size_t length = states[first].size();
        std::size_t end = first;
        for (; end < states.size() && states[end].size() == length; ++end)
            if (length > 0 && states[end].back(0) != LetterContext::start)
                next_[numbers.at(states[end].withoutNewest().key()) * letters_ +
                      states[end].back(0)] = static_cast<std::uint32_t>(end);
        for (std::size_t s = first; s < end; ++s)
            addState(states[s], shares_of(states[s]),
                     length == 0 ? anywhere : numbers.at(states[s].key(length - 1)));
        first = end;
    }
}

void LetterChain::addState(const LetterContext& context, const std::vector<double>& shares,
                           std::uint32_t shorter)
{
    for (const double share : shares)
        shares_.push_back(static_cast<float>(share));
    const std::size_t row = next_.size();
    next_.resize(row + letters_, anywhere);
    if (context.size() > 0)
        std::copy_n(next_.begin() + static_cast<long>(shorter * letters_), letters_,
                    next_.begin() + static_cast<long>(row));
}

}  // namespace models
