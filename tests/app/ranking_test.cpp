// Readings ranked by the demo register.
#include "app/flow/ranking.h"

#include <catch2/catch.hpp>

#include "models/maker_register.h"
#include "models/typed_notation.h"

namespace {

models::Reading typedReading(const std::string& text)
{
    models::Reading reading;
    reading.reader = "Maud Pell";
    reading.lines = models::parseTyped(text).lines;
    return reading;
}

const models::Candidate& best(const models::CandidateList& list)
{
    REQUIRE_FALSE(list.candidates.empty());
    return list.candidates.front();
}

}  // namespace

TEST_CASE("What a person says is for something else says nothing of maker and date",
          "[app][ranking]")
{
    const auto known =
        models::loadRegister(std::filesystem::path(WEFTMARK_SOURCE_DIR) / "models" / "register");
    const flow::Ranking ranking(known);
    models::Reading read = typedReading("J.H. & CO / 194[.] / D.W.C.");
    const models::CandidateList alone =
        ranking.rank({typedReading("J.H. & CO / 194[.]")}, std::string());
    const models::CandidateList all = ranking.rank({read}, {});
    CHECK(best(all).probability != Approx(best(alone).probability).margin(1e-9));
    read.lines[2].spans = {{0, read.lines[2].cells.size(), models::LineRole::Owner, 1}};
    const models::CandidateList without = ranking.rank({read}, {});
    CHECK(best(without).maker_id == best(alone).maker_id);
    CHECK(best(without).probability == Approx(best(alone).probability).margin(1e-9));

    // A part of a line, before what counts: the letter that would settle most keeps its place.
    models::Reading parted = typedReading("77 [.].H. & CO");
    const std::size_t owner_cells = 3;
    parted.lines[0].spans = {
        {0, owner_cells, models::LineRole::Owner, 1},
        {owner_cells, parted.lines[0].cells.size(), models::LineRole::Maker, 1}};
    const models::CandidateList narrowed = ranking.rank({{}, parted}, {});
    REQUIRE(narrowed.settling);
    CHECK(narrowed.settling->stamp == 1);
    CHECK(narrowed.settling->line == 0);
    CHECK(parted.lines[0].cells[narrowed.settling->cell].state == models::CellState::Lost);

    // A stamp of which nothing is left says nothing.
    models::Reading owner = typedReading("D.W.C.");
    owner.lines[0].spans = {{0, owner.lines[0].cells.size(), models::LineRole::Owner, 1}};
    const models::CandidateList nothing = ranking.rank({owner}, {});
    const models::CandidateList prior = ranking.rank({}, {});
    CHECK(nothing.unknown_maker == Approx(prior.unknown_maker).margin(1e-9));
}
