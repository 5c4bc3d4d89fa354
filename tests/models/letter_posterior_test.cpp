#include "models/letter_posterior.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "models/typed_notation.h"

namespace {

struct PosteriorCase {
    explicit PosteriorCase(const std::string& typed, const std::string& truth) : rates(0.03)
    {
        text = models::makeMatchText(truth, ids, 0.03);
        ids.idOf("X");
        const models::ParsedNotation parsed = models::parseTyped(typed);
        weights = models::weighCells(parsed.lines.at(0).cells, ids, models::ReadingErrors{});
        cells = models::cellsAsOdds(weights, rates);
        plan.entry.assign(cells.size() + 1, 0.02);
        plan.exit = plan.entry;
        plan.entry.front() = plan.exit.back() = 0.8;
        plan.cut_left = 0.1;
        plan.cut_right = 0.2;
    }

    double sum() const { return std::exp(models::logAlignmentSum(cells, text, plan, rates)); }

    models::GapRates rates;
    models::LetterIds ids;
    models::MatchText text;
    std::vector<models::CellWeights> weights;
    std::vector<models::AlignedCell> cells;
    models::AlignmentPlan plan;
};

}  // namespace

TEST_CASE("Forward and backward sums agree with the sum over alignments", "[models][match]")
{
    for (const char* typed : {"HARSK", "H+RSK", "[.]A[.]SK", "HA[1..3]K", "H[- - -]K", "[- - -]",
                              "(8|H)A?RS", "XHARSK"})
        for (const char* truth : {"HARSK", "A", "HARSKELL", "T.H. & CO"}) {
            CAPTURE(typed, truth);
            const PosteriorCase one(typed, truth);
            const models::LetterPosterior posterior(one.cells, one.text, one.plan, one.rates);
            CHECK(posterior.total() == Approx(one.sum()).epsilon(1e-9));
        }
}

// The sum over alignments is linear in what a cell says of one letter: taking that letter's weight
// away takes exactly the alignments away that match it.
TEST_CASE("A letter's share is what the sum loses without it", "[models][match]")
{
    for (const char* typed : {"H+RSK", "HARXSK", "H[- - -]R(S|5)K", "ARS[2..4]"}) {
        PosteriorCase one(typed, "HARSK");
        const models::LetterPosterior posterior(one.cells, one.text, one.plan, one.rates);
        const double before = one.sum();
        for (std::size_t c = 0; c < one.cells.size(); ++c) {
            if (one.weights[c].stretch)
                continue;
            models::CellWeights& cell = one.weights[c];
            if (cell.unread) {
                cell.unread = false;
                cell.of_letter.assign(one.ids.size(), cell.other);
            }
            for (std::size_t j = 0; j < one.text.letters.size(); ++j) {
                CAPTURE(typed, c, j);
                const double share = posterior.share(c, j);
                const double kept = cell.of_letter[one.text.letters[j]];
                cell.of_letter[one.text.letters[j]] = 0;
                CHECK(share == Approx((before - one.sum()) / before).margin(1e-9));
                cell.of_letter[one.text.letters[j]] = kept;
            }
        }
    }
}
