#include "models/dating_words.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <sstream>

namespace models {

namespace {

constexpr double hardly = 0.02;  // of the probability moved

std::string yearOfIndex(const Dating& dating, std::size_t index)
{
    return std::to_string(dating.range.first + static_cast<int>(index));
}

// Runs of the set: "1938", "1940 to 1946 or 1948".
std::string yearsOfSet(const std::vector<int>& set)
{
    constexpr std::size_t most_runs = 5;
    std::string text;
    std::size_t runs = 0;
    for (std::size_t i = 0; i < set.size(); ++runs) {
        std::size_t last = i;
        while (last + 1 < set.size() && set[last + 1] == set[last] + 1)
            ++last;
        if (runs == most_runs)
            return text + " or others";
        text += (text.empty() ? "" : " or ") + std::to_string(set[i]);
        if (last > i)
            text.append(last == i + 1 ? " or " : " to ").append(std::to_string(set[last]));
        i = last + 1;
    }
    return text;
}

}  // namespace

std::string percentInWords(double share)
{
    const long percent = std::lround(share * 100);
    if (percent == 0)
        return share > 0 ? "under 1 %" : "0 %";
    if (percent == 100)
        return share < 1 ? "over 99 %" : "100 %";
    return std::to_string(percent) + " %";
}

std::string moveInWords(const Dating& dating, const std::vector<double>& without,
                        const EvidenceWeight& weight)
{
    if (weight.moved < hardly)
        return "hardly changes anything";
    std::size_t up = 0, down = 0;
    for (std::size_t y = 0; y < without.size(); ++y) {
        if (dating.years[y] - without[y] > dating.years[up] - without[up])
            up = y;
        if (dating.years[y] - without[y] < dating.years[down] - without[down])
            down = y;
    }
    return yearOfIndex(dating, up) + " rises from " + percentInWords(without[up]) + " to " +
           percentInWords(dating.years[up]) + ", " + yearOfIndex(dating, down) + " falls from " +
           percentInWords(without[down]) + " to " + percentInWords(dating.years[down]);
}

std::string misreadInWords(int read, int printed)
{
    const std::string as_read = std::to_string(read), as_printed = std::to_string(printed);
    if (as_read.size() != as_printed.size())
        return as_read + " was read for " + as_printed;
    std::string digits;
    for (std::size_t i = 0; i < as_read.size(); ++i)
        if (as_read[i] != as_printed[i])
            digits.append(digits.empty() ? "the " : ", the ")
                .append(1, as_read[i])
                .append(" may be a ")
                .append(1, as_printed[i]);
    return digits + " (" + as_printed + " read as " + as_read + ")";
}

std::string openInWords(const EvidenceCase& open, double share)
{
    return "; likeliest " + open.words + " (" + percentInWords(share) + ")";
}

std::string culpritInWords(const DateEvidence& piece, const EvidenceCase& likeliest,
                           const Culprit& culprit)
{
    std::string sentence = piece.source + ": " + percentInWords(culprit.probability) +
                           " that it misleads; likeliest " + likeliest.words;
    if (culprit.probability - culprit.fault_share > 0.005)
        sentence += " (" + percentInWords(culprit.fault_share) + ")";
    // The share is that of any digit misread, not of this one.
    if (culprit.printed && piece.printed_year)
        sentence += ", soonest " + misreadInWords(*piece.printed_year, *culprit.printed);
    return sentence;
}

const char* nameOf(EvidenceFault fault)
{
    static constexpr std::array<const char*, 11> names = {
        "misread",          "later mark",   "earlier mark", "other role",
        "register wrong",   "later repair", "older part",   "wrongly seen",
        "wrongly recorded", "other maker",  "other type"};
    return names.at(static_cast<std::size_t>(fault));
}

std::string datingInWords(const Dating& dating)
{
    if (dating.edtf.empty())
        return "nothing is known of the year";
    const auto best = static_cast<std::size_t>(
        std::max_element(dating.years.begin(), dating.years.end()) - dating.years.begin());
    const std::string share = percentInWords(dating.years[best]);
    if (dating.set.size() == 1)
        return std::to_string(dating.set.front()) + ", with " + share;
    return yearsOfSet(dating.set) + "; likeliest " + yearOfIndex(dating, best) + ", with " + share;
}

}  // namespace models
