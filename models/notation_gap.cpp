#include "models/notation_gap.h"

#include <algorithm>
#include <optional>

namespace models {

namespace {

constexpr int most_dots = 12;  // more lost characters than this are written as a number

struct Count {
    int least = 0;
    std::optional<int> most;
};

bool isDigits(const std::string& text)
{
    return !text.empty() && text.size() <= 3 &&
           std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

// "3..5" or "3.."; nullopt for anything else.
std::optional<Count> readRange(const std::string& text)
{
    const std::size_t dots = text.find("..");
    if (dots == std::string::npos)
        return std::nullopt;
    const std::string first = text.substr(0, dots), last = text.substr(dots + 2);
    if (!isDigits(first) || !(last.empty() || isDigits(last)))
        return std::nullopt;
    Count count{std::stoi(first), std::nullopt};
    if (!last.empty())
        count.most = std::stoi(last);
    return count;
}

GapForm gap(CellState state, const Count& count)
{
    GapForm form;
    if (count.most && (*count.most < count.least || *count.most == 0)) {
        form.fault = "a second number that is not less than the first";
        return form;
    }
    form.is_gap = true;
    form.cell.state = state;
    form.cell.least = count.least;
    form.cell.most = count.most;
    return form;
}

std::optional<int> countDots(const std::string& content)
{
    std::string dots = content;
    if (content.find("  ") == std::string::npos && content.back() != ' ')
        dots.erase(std::remove(dots.begin() + 1, dots.end(), ' '), dots.end());
    if (dots.find_first_not_of('.') != std::string::npos)
        return std::nullopt;
    return static_cast<int>(std::min<std::size_t>(dots.size(), 999));
}

GapForm readTraces(const std::string& content)
{
    if (content == "+ + +")
        return gap(CellState::Traces, {1, std::nullopt});
    const std::string number = content.substr(1);
    if (isDigits(number))
        return gap(CellState::Traces, {std::stoi(number), std::stoi(number)});
    if (const auto range = readRange(number))
        return gap(CellState::Traces, *range);
    GapForm form;
    form.fault = "'+ + +' with spaces, or '+' and a number such as +3";
    return form;
}

GapForm readAbout(const std::string& content)
{
    const std::string number = content.substr(1);
    if (isDigits(number) && std::stoi(number) > 0) {
        const int about = std::stoi(number);
        const int slack = std::max(1, about / 5);
        return gap(CellState::Lost, {std::max(1, about - slack), about + slack});
    }
    GapForm form;
    form.fault = "a number after '~', such as [~5]";
    return form;
}

bool beginsLikeADashOrDots(const std::string& content)
{
    for (const char* sign : {"-", "\xE2\x80\x93", "\xE2\x80\x94", "\xE2\x80\xA6"})  // - – — …
        if (content.rfind(sign, 0) == 0)
            return true;
    return false;
}

}  // namespace

GapForm readGap(const std::string& content)
{
    GapForm form;
    if (content.empty()) {
        form.fault = "a dot, a number, '- - -' or letters";
        return form;
    }
    if (content == "- - -" || content == "---")
        return gap(CellState::Lost, {0, std::nullopt});
    if (content.front() == '~')
        return readAbout(content);
    if (content.front() == '+')
        return readTraces(content);
    if (const auto dots = countDots(content))
        return gap(CellState::Lost, {*dots, *dots});
    if (const auto range = readRange(content))
        return gap(CellState::Lost, *range);
    if (beginsLikeADashOrDots(content))
        form.fault = "a dot for each lost character, a number, or '- - -' with plain hyphens";
    return form;
}

std::string writeGap(const Cell& cell)
{
    const bool traces = cell.state == CellState::Traces;
    const int least = std::max(0, cell.least);
    const std::optional<int> most =
        cell.most ? std::optional<int>(std::max({*cell.most, least, 1})) : std::nullopt;
    if (!most && traces && least == 1)
        return "[+ + +]";
    if (!most && !traces && least == 0)
        return "[- - -]";
    if (!traces && most == least && least <= most_dots)
        return std::string(1, '[').append(static_cast<std::size_t>(least), '.').append("]");
    std::string text = traces ? "[+" : "[";
    text += std::to_string(least);
    if (!traces || most != least)
        text += ".." + (most ? std::to_string(*most) : std::string());
    return text + "]";
}

}  // namespace models
