#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <unordered_map>
#include <utility>
#include <vector>

namespace models {

// The last letters of a text, newest last: up to `longest` of them by number.
class LetterContext {
public:
    static constexpr std::size_t longest = 5;
    static constexpr std::uint8_t start = 255;  // stands before a text's first letter

    static LetterContext atStart() { return LetterContext().with(start); }

    LetterContext with(std::size_t letter) const;
    LetterContext newest(std::size_t count) const;
    LetterContext withoutNewest() const;
    std::size_t size() const { return size_; }
    // The newest letters of it alone, as a key that no other context has.
    std::uint64_t key(std::size_t newest) const;
    std::uint64_t key() const { return key(size_); }
    std::uint8_t back(std::size_t i) const { return letters_[size_ - 1 - i]; }  // 0: the newest

private:
    std::array<std::uint8_t, longest> letters_{};
    std::size_t size_ = 0;
};

// What follows which letters in the texts that it has seen: counts by the last one to five letters,
// so that whole names and endings are known where they were seen, and their parts where not.
class LetterContexts {
public:
    // A text as letter numbers below 255, its end among them; others are not counted.
    void add(const std::vector<std::size_t>& text, double weight);

    // Draws shares of the next letter behind the newest one, by number, towards what was seen
    // behind ever more of the letters before it (interpolation after Witten and Bell 1991, method
    // C). What was never seen there keeps a share.
    void drawTowards(const LetterContext& context, std::vector<double>& shares) const;

    // The contexts that were seen with at least this weight, shorter ones first.
    std::vector<LetterContext> seen(double least_weight) const;

private:
    struct Followers {
        LetterContext context;
        double sum = 0;
        std::vector<std::pair<std::uint8_t, double>> counts;  // by letter, unordered
    };
    std::unordered_map<std::uint64_t, Followers> followers_;
};

}  // namespace models
