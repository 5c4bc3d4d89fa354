#include "models/date_evidence.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "models/dating_words.h"
#include "models/edtf.h"
#include "models/edtf_days.h"
#include "models/year_spread.h"

namespace models {

namespace {

using Fault = EvidenceFault;
using Weights = std::vector<double>;

// All common practice, no source. How often ...
constexpr double type_mistaken = 0.01;
constexpr double part_put_on_later = 0.03, part_older = 0.01, detail_mistaken = 0.01;
constexpr double part_matches = 0.5;     // a part that is not the first has this very detail
constexpr double mistaken_match = 0.3;   // another detail is taken for it
constexpr double has_detail = 0.7;       // an item of a detail's years has it
constexpr double alteration_free = 0.2;  // an alteration used what was long given up
constexpr double record_slips = 0.03;
constexpr double about_fading = 0.6;  // of a date qualified by ?, ~ or %, to either side

// How long after the making an event happens, or before it.
double fadingOf(EventKind kind)
{
    switch (kind) {
        case EventKind::Contract:
        case EventKind::Inspected:
            return 0.6;
        case EventKind::Accepted:
            return 0.3;
        case EventKind::Issued:
            return 0.7;
        case EventKind::Pattern:
        case EventKind::Repaired:
        case EventKind::Disposed:
            return 0.9;
        case EventKind::Made:
            break;
    }
    return 0.5;
}

const char* wordOf(EventKind kind)
{
    static constexpr const char* words[] = {"made",     "contract", "accepted", "inspected",
                                            "repaired", "issued",   "pattern",  "disposed of"};
    return words[static_cast<std::size_t>(kind)];
}

// What a detail says, of its years from `feature`.
DateEvidence featurePiece(const Feature& feature, const char* seen, const std::string& meaning,
                          std::vector<EvidenceCase> cases)
{
    DateEvidence piece;
    piece.source = feature.name + ", " + seen;
    piece.meaning = meaning;
    piece.cases = std::move(cases);
    return piece;
}

DateEvidence presentEvidence(const Feature& feature, const YearRange& range)
{
    const auto years = [&](const std::string& from, const std::string& to,
                           const LimitSoftness& softness = usual_softness) {
        return periodWeights(from, to, range, softness);
    };
    const double sound = 1 - register_slips - part_put_on_later - part_older - detail_mistaken;
    return featurePiece(
        feature, "present", "made so " + yearsInWords(feature.from, feature.to),
        {{std::nullopt, sound, years(feature.from, feature.to), {}},
         {Fault::RegisterWrong, register_slips, years(feature.from, feature.to, wrong_softness),
          "the register's years of this detail are wrong"},
         {Fault::LaterRepair, part_put_on_later, scaledYears(part_matches, years({}, feature.to)),
          "the part was put on later, in a repair"},
         {Fault::OlderPart, part_older, scaledYears(part_matches, years(feature.from, {})),
          "the part is older than the piece, or from another"},
         {Fault::WronglySeen, detail_mistaken, Weights(range.size(), mistaken_match),
          "the detail was taken for another"}});
}

// 1 less this share of the weights.
Weights allBut(double share, const Weights& years)
{
    return mixedYears(Weights(years.size(), 1), 1, years, -share);
}

DateEvidence absentEvidence(const Feature& feature, const YearRange& range)
{
    const Weights made_so = periodWeights(feature.from, feature.to, range, usual_softness);
    return featurePiece(
        feature, "absent", "rather not made " + yearsInWords(feature.from, feature.to),
        {{std::nullopt, 1 - detail_mistaken, allBut(has_detail, made_so), {}},
         {Fault::WronglySeen, detail_mistaken, Weights(range.size(), 1 - has_detail),
          "the detail was there and was overlooked"}});
}

DateEvidence alteredEvidence(const Feature& feature, const YearRange& range)
{
    const Weights until = periodWeights({}, feature.to, range, usual_softness);
    Weights made =
        mixedYears(Weights(range.size(), 1), alteration_free, until, 1 - alteration_free);
    return featurePiece(feature, "altered later",
                        "made before the alteration, which is of " +
                            yearsInWords(feature.from, feature.to) +
                            "; it says no more of the making",
                        {{std::nullopt, 1, std::move(made), {}}});
}

// The years an EDTF date can be, each alike; of a qualified one also some beside them.
Weights yearsOfDate(const std::string& edtf, const YearRange& range)
{
    Weights years(range.size(), 0);
    const auto parsed = parseEdtf(edtf);
    if (!std::holds_alternative<Edtf>(parsed))
        return years;
    for (std::size_t y = 0; y < years.size(); ++y)
        years[y] = couldBeIn(std::get<Edtf>(parsed), range.first + static_cast<int>(y)) ? 1 : 0;
    years = summingToOne(years);
    const auto bounds = edtfYearBounds(edtf);
    if (bounds && bounds->soft)
        years = summingToOne(mixedYears(yearsAfter(years, about_fading), 0.5,
                                        yearsBefore(years, about_fading), 0.5));
    return years;
}

}  // namespace

std::optional<DateEvidence> typeEvidence(const ItemType& type, const YearRange& range)
{
    if (!hasLimit(type.introduced, type.withdrawn))
        return std::nullopt;
    DateEvidence piece;
    piece.source = "item type " + type.nameWithPattern();
    piece.meaning = "made " + yearsInWords(type.introduced, type.withdrawn);
    piece.cases = {{std::nullopt,
                    1 - register_slips - type_mistaken,
                    periodWeights(type.introduced, type.withdrawn, range, usual_softness),
                    {}},
                   {Fault::RegisterWrong, register_slips,
                    periodWeights(type.introduced, type.withdrawn, range, wrong_softness),
                    "the register's years of this item type are wrong"},
                   {Fault::OtherType, type_mistaken, Weights(range.size(), mistaken_match),
                    "it is of another item type"}};
    return piece;
}

std::optional<DateEvidence> featureEvidence(const Feature& feature, FeatureSeen seen,
                                            const YearRange& range)
{
    if (!hasLimit(feature.from, feature.to))
        return std::nullopt;
    switch (seen) {
        case FeatureSeen::Present:
            return presentEvidence(feature, range);
        case FeatureSeen::Absent:
            return absentEvidence(feature, range);
        case FeatureSeen::AlteredLater:
            return alteredEvidence(feature, range);
        case FeatureSeen::CannotBeSeen:
            break;
    }
    return std::nullopt;
}

std::optional<DateEvidence> eventEvidence(const DatedEvent& event, const YearRange& range)
{
    Weights years = yearsOfDate(event.edtf, range);
    const bool is_dated = std::any_of(years.begin(), years.end(), [](double y) { return y > 0; });
    if (event.bound == DateBound::None || !is_dated)
        return std::nullopt;
    DateEvidence piece;
    piece.source = std::string(wordOf(event.kind)) + " " +
                   (event.printed.empty() ? event.edtf : event.printed);
    piece.meaning = "made in " + event.edtf;
    if (event.bound == DateBound::NotBefore) {
        years = yearsAfter(years, fadingOf(event.kind));
        piece.meaning = "made not before " + event.edtf;
    } else if (event.bound == DateBound::NotAfter) {
        years = yearsBefore(years, fadingOf(event.kind));
        piece.meaning = "made not after " + event.edtf;
    }
    piece.cases = {{std::nullopt, 1 - record_slips, std::move(years), {}},
                   {Fault::WronglyRecorded, record_slips, anyYear(range),
                    "the date was recorded wrongly, or speaks of something else"}};
    return piece;
}

}  // namespace models
