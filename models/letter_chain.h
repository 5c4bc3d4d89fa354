#pragma once

#include <cstddef>
#include <cstdint>
#include <functional>
#include <vector>

#include "models/letter_contexts.h"

namespace models {

// How texts go on, letter by letter, as a chain of states: a state is what the last letters were,
// as many of them as texts were seen to share.
class LetterChain {
public:
    static constexpr std::uint32_t anywhere = 0;  // no letter before is known
    static constexpr std::uint32_t at_start = 1;

    //   letters    numbers of letters, 0 to letters - 1; the last stands for the end of a text
    //   contexts   shorter ones first, with each one also what it begins and ends with
    //   shares_of  by letter, what follows a context; sums to 1
    LetterChain(std::size_t letters, const std::vector<LetterContext>& contexts,
                const std::function<std::vector<double>(const LetterContext&)>& shares_of);

    std::size_t size() const { return shares_.size() / letters_; }
    std::size_t letters() const { return letters_; }
    // By letter, what follows this state, and the state then.
    const float* shares(std::uint32_t state) const { return &shares_[state * letters_]; }
    const std::uint32_t* next(std::uint32_t state) const { return &next_[state * letters_]; }
    float end(std::uint32_t state) const { return shares(state)[letters_ - 1]; }

private:
    void addState(const LetterContext& context, const std::vector<double>& shares,
                  std::uint32_t shorter);

    std::size_t letters_;
    std::vector<float> shares_;
    std::vector<std::uint32_t> next_;
};

}  // namespace models
