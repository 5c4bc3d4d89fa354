#pragma once

// A fuzz target is one source that includes this header and defines fuzzOne and fuzzSeeds. The main
// function here harms the seeds until the time is over:
//   TARGET SECONDS [SEED]
// It prints how many texts were tried and ends with 0; on a broken promise, or where a sanitizer
// finds something, it prints the text and ends with another code. Build with
// -DSANITIZE=address,undefined, else a read beyond a text's end goes unseen. With libFuzzer
// (clang++ -fsanitize=fuzzer -DWEFTMARK_LIBFUZZER) its engine takes the place of the main function.

#include <algorithm>
#include <chrono>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <iostream>
#include <random>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

// Tries one text; calls fuzz::failed where something that should hold does not. Answers whether the
// text was understood, for the count.
bool fuzzOne(std::string_view text);

struct FuzzSeeds {
    std::vector<std::string> texts;   // sound ones, of every form
    std::vector<std::string> pieces;  // what the format is made of
};
FuzzSeeds fuzzSeeds();

namespace fuzz {

// What is being tried, so that a crash can be told: a sanitizer ends the program without unwinding.
inline std::string& current()
{
    static std::string text;
    return text;
}

// Whether the last text was.
inline bool& understood()
{
    static bool was = false;
    return was;
}

// The text as a C string literal.
inline std::string quoted(std::string_view text)
{
    std::string literal = "\"";
    for (const char c : text) {
        char code[8];
        if (c == '"' || c == '\\') {
            literal += '\\';
            literal += c;
        } else if (c >= ' ' && c <= '~') {
            literal += c;
        } else {
            std::snprintf(code, sizeof code, "\\%03o",
                          static_cast<unsigned>(static_cast<unsigned char>(c)));
            literal += code;
        }
    }
    return literal += '"';
}

[[noreturn]] inline void failed(const std::string& promise)
{
    std::cerr << "broken: " << promise << "\nby the text " << quoted(current()) << std::endl;
    std::abort();
}

// One harm done to a text at random: a byte changed, taken out or put in, a piece put in, a stretch
// taken out, doubled, or put in from another text.
class Mutator {
public:
    Mutator(FuzzSeeds seeds, std::uint32_t seed) : seeds_(std::move(seeds)), random_(seed) {}

    std::string next()
    {
        std::string text = pool_.empty() || upTo(1) == 0 ? any(seeds_.texts) : any(pool_);
        for (std::size_t harms = 1 + upTo(3); harms > 0; --harms)
            harm(text);
        if (text.size() > longest)
            text.resize(longest);
        return text;
    }

    // Harms that are understood go further than those of the seeds alone.
    void keep(const std::string& text)
    {
        if (pool_.size() < most_kept)
            pool_.push_back(text);
        else
            pool_[upTo(most_kept - 1)] = text;
    }

private:
    static constexpr std::size_t longest = 4000, most_kept = 4000;

    std::size_t upTo(std::size_t most)
    {
        return std::uniform_int_distribution<std::size_t>(0, most)(random_);
    }

    const std::string& any(const std::vector<std::string>& texts)
    {
        static const std::string none;
        return texts.empty() ? none : texts[upTo(texts.size() - 1)];
    }

    void harm(std::string& text)
    {
        const std::size_t place = upTo(text.size());
        const std::size_t length = upTo(std::min<std::size_t>(8, text.size() - place));
        switch (upTo(6)) {
            case 0:
                if (place < text.size())
                    text[place] = static_cast<char>(upTo(255));
                break;
            case 1:
                text.erase(place, 1);
                break;
            case 2:
                text.insert(place, 1, static_cast<char>(upTo(255)));
                break;
            case 3:
                text.insert(place, any(seeds_.pieces));
                break;
            case 4:
                text.erase(place, length);
                break;
            case 5:
                text.insert(place, text.substr(place, length));
                break;
            default: {
                const std::string& other = any(seeds_.texts);
                const std::size_t from = upTo(other.size());
                text.insert(place, other.substr(from, upTo(other.size() - from)));
            }
        }
    }

    FuzzSeeds seeds_;
    std::vector<std::string> pool_;
    std::mt19937 random_;
};

}  // namespace fuzz

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace fuzz {

inline void tryText(const std::string& text)
{
    LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(text.data()), text.size());
}

// The seeds as they are, which must all be understood, then harmed ones until the time is over.
inline int run(double seconds, std::uint32_t seed)
{
    FuzzSeeds seeds = fuzzSeeds();
    for (const std::string& text : seeds.texts) {
        tryText(text);
        if (!understood())
            failed("a seed is understood");
    }
    Mutator mutator(std::move(seeds), seed);
    const auto end = std::chrono::steady_clock::now() + std::chrono::duration<double>(seconds);
    std::int64_t tried = 0, taken = 0;
    while (std::chrono::steady_clock::now() < end)
        for (int i = 0; i < 100; ++i, ++tried) {
            const std::string text = mutator.next();
            tryText(text);
            taken += understood() ? 1 : 0;
            if (understood() && tried % 16 == 0)
                mutator.keep(text);
        }
    std::cout << tried << " texts tried with seed " << seed << ", " << taken
              << " of them understood, nothing broken\n";
    return 0;
}

}  // namespace fuzz

// What libFuzzer calls; 0 as it asks.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    // A copy of just this size on the heap, so that a read beyond its end is seen.
    const std::vector<char> exact(data, data + size);
    fuzz::current().assign(exact.begin(), exact.end());
    fuzz::understood() = fuzzOne({exact.data(), exact.size()});
    return 0;
}

#ifndef WEFTMARK_LIBFUZZER

// Of the sanitizers, where the program is built with them.
extern "C" __attribute__((weak)) void __sanitizer_set_death_callback(void (*callback)());

int main(int count, char** arguments)
{
    const double seconds = count > 1 ? std::atof(arguments[1]) : 0;
    if (seconds <= 0) {
        std::cerr << "use: " << arguments[0] << " SECONDS [SEED]\n";
        return 2;
    }
    if (__sanitizer_set_death_callback)
        __sanitizer_set_death_callback(
            [] { std::cerr << "by the text " << fuzz::quoted(fuzz::current()) << std::endl; });
    const auto seed = static_cast<std::uint32_t>(count > 2 ? std::atoll(arguments[2]) : 1);
    return fuzz::run(seconds, seed);
}

#endif
