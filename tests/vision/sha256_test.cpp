#include "vision/sha256.h"

#include <string>
#include <vector>

#include <catch2/catch.hpp>

namespace {

std::string sha256OfText(const std::string& text)
{
    return vision::sha256Hex({reinterpret_cast<const unsigned char*>(text.data()), text.size()});
}

}  // namespace

// Published example values for FIPS 180-4 (NIST, "SHA-256" examples), compared with coreutils'
// sha256sum.
TEST_CASE("SHA-256 gives the published values", "[vision][sha256]")
{
    CHECK(sha256OfText("abc") ==
          "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    CHECK(sha256OfText("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq") ==
          "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
    CHECK(sha256OfText(std::string(1'000'000, 'a')) ==
          "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
}

TEST_CASE("No bytes have a SHA-256 too", "[vision][sha256]")
{
    CHECK(vision::sha256Hex({}) ==
          "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
}
