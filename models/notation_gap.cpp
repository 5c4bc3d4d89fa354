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

constexpr int most_counted = 999;  // no line holds more

// A number that the notation can say.
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
        form.fault = count.least == 0 ? "a number of at least 1: no character is no stretch"
                                      : "a second number that is not less than the first";
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
    return static_cast<int>(std::min<std::size_t>(dots.size(), most_counted));
}

GapForm readAbout(CellState state, const std::string& number)
{
    GapForm form;
    if (isDigits(number) && std::stoi(number) > 0) {
        form.is_gap = true;
        form.cell = aboutCell(state, std::stoi(number));
    } else {
        form.fault = "a number after '~', such as [~5]";
    }
    return form;
}

GapForm readTraces(const std::string& content)
{
    if (content == "+ + +")
        return gap(CellState::Traces, {1, std::nullopt});
    const std::string number = content.substr(1);
    if (!number.empty() && number.front() == '~')
        return readAbout(CellState::Traces, number.substr(1));
    if (isDigits(number))
        return gap(CellState::Traces, {std::stoi(number), std::stoi(number)});
    if (const auto range = readRange(number))
        return gap(CellState::Traces, *range);
    GapForm form;
    form.fault = "'+ + +' with spaces, or '+' and a number such as +3";
    return form;
}

bool looksLikeARange(const std::string& content)
{
    const std::size_t dots = content.find("..");
    return dots != std::string::npos && dots > 0 &&
           content.find_first_not_of("0123456789.") == std::string::npos &&
           content.find('.', dots + 2) == std::string::npos && content.find('.') == dots;
}

bool beginsLikeADashOrDots(const std::string& content)
{
    for (const char* sign : {"-", "\xE2\x80\x93", "\xE2\x80\x94", "\xE2\x80\xA6"})  // - – — …
        if (content.rfind(sign, 0) == 0)
            return true;
    return false;
}

}  // namespace

Cell aboutCell(CellState state, int about)
{
    Cell cell;
    const int slack = std::max(1, about / 5);
    cell.state = state;
    cell.least = std::max(1, about - slack);
    cell.most = about + slack;
    cell.about = true;
    return cell;
}

bool isOpenGap(const Cell& cell)
{
    return cell.state == CellState::Lost && !cell.most && cell.least <= 0;
}

int aboutNumber(const Cell& cell)
{
    constexpr int too_many = 1000000;  // no line holds so much; keeps the sums small
    if (!cell.about || !cell.most || *cell.most > too_many || cell.least <= 0 ||
        *cell.most < cell.least)
        return 0;
    const int number = cell.least + (*cell.most - cell.least) / 2;
    const Cell same = aboutCell(cell.state, number);
    return same.least == cell.least && same.most == cell.most ? number : 0;
}

GapForm readGap(const std::string& content)
{
    GapForm form;
    if (content.empty()) {
        form.fault =
            "a dot for each lost character, a number as in [3..5], '- - -', or restored letters";
        return form;
    }
    if (content == "- - -" || content == "---")
        return gap(CellState::Lost, {0, std::nullopt});
    if (content.front() == '~')
        return readAbout(CellState::Lost, content.substr(1));
    if (content.front() == '+')
        return readTraces(content);
    if (const auto dots = countDots(content))
        return gap(CellState::Lost, {*dots, *dots});
    if (const auto range = readRange(content))
        return gap(CellState::Lost, *range);
    if (looksLikeARange(content))
        form.fault = "numbers of at most three digits, as in [3..5]";
    if (beginsLikeADashOrDots(content))
        form.fault = "a dot for each lost character, a number, or '- - -' with plain hyphens";
    return form;
}

std::string writeGap(const Cell& cell)
{
    const bool traces = cell.state == CellState::Traces;
    const int least = std::clamp(cell.least, 0, most_counted);
    std::optional<int> most;
    if (cell.most && *cell.most <= most_counted)
        most = std::max({*cell.most, least, 1});
    if (const int about = aboutNumber(cell); about > 0 && about <= most_counted)
        return (traces ? "[+~" : "[~") + std::to_string(about) + "]";
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
