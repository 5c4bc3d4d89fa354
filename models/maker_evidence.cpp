#include <algorithm>
#include <optional>

#include "models/date_evidence.h"
#include "models/year_spread.h"

namespace models {

namespace {

const Mark* markOf(const MakerShare& share, const MakerRegister& known)
{
    const auto found = std::find_if(known.marks.begin(), known.marks.end(), [&](const Mark& mark) {
        return mark.maker_id == share.maker_id && mark.text == share.mark;
    });
    return found == known.marks.end() ? nullptr : &*found;
}

// When a maker made what bears this mark.
struct MakerYears {
    const Maker* maker = nullptr;
    std::string from, to, words;
};

MakerYears yearsOfMaker(const MakerShare& share, const MakerRegister& known)
{
    MakerYears working{known.maker(share.maker_id), {}, {}, {}};
    if (!working.maker)
        return working;
    working.from = working.maker->from;
    working.to = working.maker->to;
    working.words = working.maker->name;
    const Mark* mark = share.mark.empty() ? nullptr : markOf(share, known);
    if (mark && hasLimit(mark->from, mark->to)) {
        working.from = mark->from.empty() ? working.from : mark->from;
        working.to = mark->to.empty() ? working.to : mark->to;
        working.words += " signed " + mark->text;
    } else {
        working.words += " worked";
    }
    if (const std::string years = yearsInWords(working.from, working.to); !years.empty())
        working.words += " " + years;
    return working;
}

// The likeliest of the makers that the register has, the others together, and what they say.
struct WeighedMakers {
    const MakerShare* best = nullptr;
    std::vector<double> others;  // by year, with their shares; the rest of the share is any year's
};

WeighedMakers weighedMakers(const std::vector<MakerShare>& shares, const MakerRegister& known,
                            const YearRange& range)
{
    WeighedMakers makers;
    for (const MakerShare& share : shares)
        if (known.maker(share.maker_id) && share.probability > 0 &&
            (!makers.best || share.probability > makers.best->probability))
            makers.best = &share;
    double named = 0;
    makers.others.assign(range.size(), 0);
    for (const MakerShare& share : shares) {
        const MakerYears own = yearsOfMaker(share, known);
        if (!own.maker)
            continue;
        named += share.probability;
        if (&share != makers.best)
            makers.others =
                mixedYears(makers.others, 1,
                           summingToOne(periodWeights(own.from, own.to, range, usual_softness)),
                           share.probability);
    }
    makers.others = mixedYears(makers.others, 1, anyYear(range), std::max(0.0, 1 - named));
    return makers;
}

}  // namespace

std::optional<DateEvidence> makerEvidence(const std::string& source,
                                          const std::vector<MakerShare>& shares,
                                          const MakerRegister& known, const YearRange& range)
{
    const WeighedMakers makers = weighedMakers(shares, known, range);
    if (!makers.best)
        return std::nullopt;
    const MakerYears own = yearsOfMaker(*makers.best, known);
    const std::vector<double> years =
        summingToOne(periodWeights(own.from, own.to, range, usual_softness));
    const double p = std::min(1.0, makers.best->probability);
    DateEvidence piece;
    piece.source = source;
    piece.meaning = own.words;
    if (p < 0.5) {  // no maker that could be called the one
        piece.meaning = "one of several makers, likeliest: " + own.words;
        piece.cases = {{std::nullopt, 1, mixedYears(makers.others, 1, years, p), {}}};
        return piece;
    }
    piece.cases = {{std::nullopt, p * (1 - register_slips), years, {}},
                   {EvidenceFault::RegisterWrong, p * register_slips,
                    summingToOne(periodWeights(own.from, own.to, range, wrong_softness)),
                    "the register's years of this maker or mark are wrong"}};
    if (p < 1)
        piece.cases.push_back({EvidenceFault::OtherMaker, 1 - p,
                               scaledYears(1 / (1 - p), makers.others), "it is another maker's"});
    return piece;
}

}  // namespace models
