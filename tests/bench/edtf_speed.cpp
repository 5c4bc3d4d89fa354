// How long EDTF takes, on one core: a million typical texts parsed, then with their days, then as
// year bounds. Prints seconds; the texts are made from a seed:
//   edtf_speed [TEXTS] [SEED]
#include <chrono>
#include <cstdint>
#include <cstdlib>
#include <iostream>
#include <random>
#include <string>
#include <vector>

#include "models/edtf.h"
#include "models/edtf_days.h"

namespace {

std::string padded(int number, std::size_t length)
{
    std::string text = std::to_string(number);
    text.insert(0, length - text.size(), '0');
    return text;
}

// As registers and records have them: mostly years, then masks, months, days, intervals and sets,
// and one text in fifty that is no EDTF.
std::string typicalText(std::mt19937& random)
{
    const auto upTo = [&](int most) { return std::uniform_int_distribution<int>(0, most)(random); };
    const std::string year = padded(1900 + upTo(80), 4), later = padded(1980 + upTo(30), 4);
    const std::string month = padded(1 + upTo(11), 2), day = padded(1 + upTo(27), 2);
    const int kind = upTo(49);
    if (kind < 15)
        return year;
    if (kind < 20)
        return year + "?";
    if (kind < 25)
        return year.substr(0, 3) + "X";
    if (kind < 30)
        return year + "-" + month;
    if (kind < 34)
        return year + "-" + month + "-" + day;
    if (kind < 36)
        return year + "-" + month + "-XX";
    if (kind < 40)
        return year + "/" + later;
    if (kind < 42)
        return "../" + year;
    if (kind < 44)
        return "[" + year + "," + later + "]";
    if (kind < 46)
        return "[" + year + ".." + later + "]";
    if (kind < 48)
        return year + "-" + std::to_string(33 + upTo(3));
    return kind == 48 ? year.substr(0, 2) + "X" + year.substr(3) : year + "s";
}

// Runs `work` over all texts and prints the time; what it answers is summed, so that none is left
// out by the compiler.
template <typename Work>
void measure(const char* what, const std::vector<std::string>& texts, Work work)
{
    const auto begin = std::chrono::steady_clock::now();
    std::int64_t sum = 0;
    for (const std::string& text : texts)
        sum += work(text);
    const std::chrono::duration<double> taken = std::chrono::steady_clock::now() - begin;
    std::cout << what << ": " << texts.size() << " texts in " << taken.count() << " s (sum " << sum
              << ")\n";
}

}  // namespace

int main(int count, char** arguments)
{
    const long texts_wanted = count > 1 ? std::atol(arguments[1]) : 1'000'000;
    std::mt19937 random(count > 2 ? static_cast<unsigned>(std::atol(arguments[2])) : 1U);
    std::vector<std::string> texts;
    for (long i = 0; i < texts_wanted; ++i)
        texts.push_back(typicalText(random));
    measure("parsed", texts, [](const std::string& text) {
        return std::holds_alternative<models::Edtf>(models::parseEdtf(text)) ? 1 : 0;
    });
    measure("parsed, first and last day", texts, [](const std::string& text) {
        const auto parsed = models::parseEdtf(text);
        const auto* edtf = std::get_if<models::Edtf>(&parsed);
        return edtf ? models::daysOf(*edtf).last.day.day : 0;
    });
    measure("year bounds", texts, [](const std::string& text) {
        const auto bounds = models::edtfYearBounds(text);
        return bounds ? bounds->last.value_or(0) : 0;
    });
}
