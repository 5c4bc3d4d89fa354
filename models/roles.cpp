#include "models/roles.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <optional>

#include "models/letters.h"
#include "models/role_stretches.h"
#include "models/role_words.h"
#include "models/year_weights.h"

namespace models {

namespace {

constexpr double least_probability = 0.05;
// Weights, in log odds.
constexpr double led = 5.5, known_code = 4, known_size = 2.5, firm_words = 3.5, ampersand = 2;
constexpr double names = 1.5, initials = 2, lone_figure = 1, long_number = 1.5, divided = 2;
constexpr double last_line = 0.4, first_line = 0.4, lone_letter = 0.8;

constexpr std::size_t role_count = static_cast<std::size_t>(LineRole::Other) + 1;
using Weights = std::array<double, role_count>;

double& of(Weights& weights, LineRole role)
{
    return weights[static_cast<std::size_t>(role)];
}

std::string textOf(const Line& line, const RoleStretch& stretch)
{
    Line part;
    part.cells.assign(line.cells.begin() + static_cast<std::ptrdiff_t>(stretch.first_cell),
                      line.cells.begin() + static_cast<std::ptrdiff_t>(stretch.end_cell));
    return plainText(part);
}

bool isAmong(const std::string& text, const std::vector<std::string>& known)
{
    return std::find(known.begin(), known.end(), text) != known.end();
}

// What digits and letters alone say of a stretch that is no word.
void weighFigures(const std::string& text, const TextForm& form, Weights& weights)
{
    if (form.digits == 0)
        return;
    if (form.letters == 0 && form.digits <= 2)
        of(weights, LineRole::Size) += lone_figure;
    if (form.digits >= 5) {
        of(weights, LineRole::Owner) += long_number;
        of(weights, LineRole::Contract) += long_number;
    } else if (form.letters == 0 && form.digits >= 3) {
        of(weights, LineRole::Other) += lone_figure;
        of(weights, LineRole::Owner) += lone_figure;
    }
    if (form.letters > 0)
        of(weights, LineRole::Other) += lone_figure;
    if (text.find('/') != std::string::npos)
        of(weights, LineRole::Contract) += divided;
}

void weighLetters(const TextForm& form, Weights& weights)
{
    if (form.firm_words > 0)
        of(weights, LineRole::Maker) += firm_words;
    if (form.ampersand)
        of(weights, LineRole::Maker) += ampersand;
    if (form.letters >= 4 && form.digits == 0) {
        of(weights, LineRole::Maker) += names;
        of(weights, LineRole::Owner) += names / 2;
    } else if (form.letters >= 2 && form.digits == 0) {
        of(weights, LineRole::Maker) += initials;
    } else if (form.letters == 1 && form.digits == 0) {
        of(weights, LineRole::Size) += lone_letter;
    }
}

struct Place {
    std::size_t line = 0, lines = 1;
};

Weights weigh(const Line& line, const RoleStretch& stretch, const Place& place,
              const RoleContext& context)
{
    const std::string text = textOf(line, stretch);
    const TextForm form = formOf(text);
    Weights weights;
    weights.fill(-2.5);
    of(weights, LineRole::Unknown) = of(weights, LineRole::Date) = -1e9;
    of(weights, LineRole::Property) = text == property_arrow ? led : -3;
    of(weights, LineRole::Other) = -1;
    weighFigures(text, form, weights);
    weighLetters(form, weights);
    if (stretch.lead)
        of(weights, *stretch.lead) += led;
    if (stretch.is_number) {
        of(weights, LineRole::Owner) += led - 0.5;
        of(weights, LineRole::Contract) += led - 2;
    }
    if (isAmong(text, context.sizes))
        of(weights, LineRole::Size) += known_size;
    if (isAmong(text, context.inspectors))
        of(weights, LineRole::Inspection) += known_code;
    if (place.line == 0)
        of(weights, LineRole::Maker) += first_line;
    if (stretch.date > 0) {
        // Against all else that it may be, as a date of its form stands against other text.
        // A word that leads it to another role is not outweighed by its form.
        const bool otherwise = stretch.lead && *stretch.lead != LineRole::Date;
        double rest = 0;
        for (const double weight : weights)
            rest += std::exp(weight);
        of(weights, LineRole::Date) = std::log(stretch.date / (1 - stretch.date)) +
                                      std::log(std::max(rest, 0.5)) +
                                      (place.line + 1 == place.lines ? last_line : 0) -
                                      (otherwise      ? 1.6 * led
                                       : stretch.lead ? -led
                                                      : 0);
    }
    return weights;
}

std::vector<RoleSpan> spansOf(const RoleStretch& stretch, const Weights& weights)
{
    double sum = 0;
    for (const double weight : weights)
        sum += std::exp(weight);
    std::vector<RoleSpan> spans;
    for (std::size_t role = 0; role < weights.size(); ++role) {
        const double probability = std::exp(weights[role]) / sum;
        if (probability >= least_probability)
            spans.push_back(
                {stretch.first_cell, stretch.end_cell, static_cast<LineRole>(role), probability});
    }
    std::stable_sort(spans.begin(), spans.end(), [](const RoleSpan& a, const RoleSpan& b) {
        return a.probability > b.probability;
    });
    return spans;
}

}  // namespace

RoleContext roleContextOf(const MakerRegister& known, const std::string& type_id)
{
    const YearRange range = yearsOf(known);
    RoleContext context{{range.first, range.last}, {}, {}};
    if (const ItemType* type = known.itemType(type_id)) {
        context.sizes = type->sizes;
        const YearRange of_type = yearsOf(*type, range);
        if (of_type.first <= of_type.last)
            context.dates = {of_type.first, of_type.last};
    }
    for (const Code& code : known.codes) {
        if (code.stands_for == CodeMeaning::Inspector)
            context.inspectors.push_back(code.code);
        if (code.stands_for == CodeMeaning::Year || code.stands_for == CodeMeaning::Quarter)
            context.dates.codes.push_back(code);
    }
    return context;
}

std::vector<std::vector<RoleSpan>> guessRoles(const std::vector<Line>& lines,
                                              const RoleContext& context)
{
    std::vector<std::vector<RoleSpan>> roles;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        std::vector<RoleSpan> spans;
        for (const RoleStretch& stretch : roleStretches(lines[i], context.dates)) {
            const auto weighed =
                spansOf(stretch, weigh(lines[i], stretch, {i, lines.size()}, context));
            std::copy(weighed.begin(), weighed.end(), std::back_inserter(spans));
        }
        roles.push_back(std::move(spans));
    }
    return roles;
}

DateBound boundOf(LineRole role)
{
    switch (role) {
        case LineRole::Contract:
        case LineRole::Pattern:
            return DateBound::NotBefore;
        case LineRole::Inspection:
            return DateBound::NotAfter;
        case LineRole::Size:
        case LineRole::Owner:
        case LineRole::Property:
        case LineRole::Other:
            return DateBound::None;
        case LineRole::Unknown:
        case LineRole::Maker:
        case LineRole::Date:
            break;
    }
    return DateBound::Exact;
}

}  // namespace models
