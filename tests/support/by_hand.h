#pragma once

#include <catch2/catch.hpp>

// A figure worked out by hand to six decimals. Catch's own relative slack (0.00001) is switched
// off: it would let through what differs in the fifth.
inline Approx byHand(double figure)
{
    return Approx(figure).epsilon(0).margin(1e-6);
}
