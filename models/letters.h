#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace models {

// The sign of the state's property, which marks carry as a symbol of its own.
inline constexpr const char* property_arrow = "\u2191";
// One that a register could not read, or of which nothing is known.
inline constexpr const char* unknown_letter = "\uFFFD";

// Where text stops being UTF-8 (overlong forms, surrogates and code points above U+10FFFF count as
// bad); nullopt when all of it is good.
std::optional<std::size_t> firstBadByte(const std::string& text);

// The user-perceived characters of a text: each code point with the combining marks behind it, and
// a carriage return with its line feed. A bad byte becomes U+FFFD, one for each. Joined emoji and
// Hangul syllables typed in parts are not put together: marks do not hold them.
std::vector<std::string> charactersOf(const std::string& text);

// One form for each letter, however it was typed: Latin letters up to U+024F with their accent in
// one code point where there is one, several accents in one order (Unicode's NFC for these
// letters). A dot below is never joined to its letter, since it is Leiden's sign of doubt.
std::string normalForm(const std::string& character);

// The capital of a Latin letter, of a letter with accent up to U+017F too; others as they are.
std::string capitalOf(const std::string& character);
// Are they the same but for capitals? h and H, h and h.
bool sameButCase(const std::string& a, const std::string& b);

// True for a character that is drawn on the one before it and so cannot stand alone.
bool isCombiningMark(const std::string& character);

// Capitals without blanks: what differs in those alone is one thing to a person.
std::string plainKey(const std::string& text);

}  // namespace models
