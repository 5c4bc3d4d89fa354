#pragma once

#include <cstddef>
#include <cstdint>
#include <random>
#include <vector>

// Seeded choices that fall alike on every machine; the standard's own distributions need not.
class Dice {
public:
    explicit Dice(std::uint32_t seed) : engine_(seed) {}

    double between(double low, double high)
    {
        return low + (high - low) * (static_cast<double>(engine_()) / 4294967296.0);
    }
    // low to high, both included
    int whole(int low, int high)
    {
        return low + static_cast<int>(between(0, 1) * (high - low + 1));
    }
    bool once_in(int times) { return whole(1, times) == 1; }
    template <class T>
    T among(const std::vector<T>& values)
    {
        return values[static_cast<std::size_t>(whole(0, static_cast<int>(values.size()) - 1))];
    }

private:
    std::mt19937 engine_;
};
