// The words under which values are stored: part of the archive's and the exchange's format.
#include "models/archive/record_names.h"

#include <catch2/catch.hpp>

using namespace models;

TEST_CASE("Stored words keep their meaning", "[archive][names]")
{
    // A word that was stored may never change; new ones go to the end.
    CHECK(stampPartNamed("body") == StampPart::Body);
    CHECK(stampPartNamed("fitting") == StampPart::Fitting);
    CHECK(stampPartNamed("lining") == StampPart::Lining);
    CHECK(stampPartNamed("replacement") == StampPart::Replacement);
    CHECK(stampPartNamed("unknown") == StampPart::Unknown);
    CHECK(stampMethodNamed("ink") == StampMethod::Ink);
    CHECK(stampMethodNamed("stencil") == StampMethod::Stencil);
    CHECK(stampMethodNamed("impressed") == StampMethod::Impressed);
    CHECK(stampMethodNamed("woven") == StampMethod::Woven);
    CHECK(stampMethodNamed("label") == StampMethod::Label);
    CHECK(stampMethodNamed("cast") == StampMethod::Cast);
    CHECK(stampMethodNamed("engraved") == StampMethod::Engraved);
    CHECK(stampMethodNamed("painted") == StampMethod::Painted);
    CHECK(stampMethodNamed("unknown") == StampMethod::Unknown);
    CHECK(certaintyNamed("certain") == Certainty::Certain);
    CHECK(certaintyNamed("probable") == Certainty::Probable);
    CHECK(certaintyNamed("possible") == Certainty::Possible);
    CHECK(eventKindNamed("made") == EventKind::Made);
    CHECK(eventKindNamed("contract") == EventKind::Contract);
    CHECK(eventKindNamed("accepted") == EventKind::Accepted);
    CHECK(eventKindNamed("inspected") == EventKind::Inspected);
    CHECK(eventKindNamed("repaired") == EventKind::Repaired);
    CHECK(eventKindNamed("issued") == EventKind::Issued);
    CHECK(eventKindNamed("pattern") == EventKind::Pattern);
    CHECK(eventKindNamed("disposed") == EventKind::Disposed);
    CHECK(dateBoundNamed("exact") == DateBound::Exact);
    CHECK(dateBoundNamed("not_before") == DateBound::NotBefore);
    CHECK(dateBoundNamed("not_after") == DateBound::NotAfter);
    CHECK(dateBoundNamed("none") == DateBound::None);
    CHECK(featureSeenNamed("present") == FeatureSeen::Present);
    CHECK(featureSeenNamed("absent") == FeatureSeen::Absent);
    CHECK(featureSeenNamed("cannot_be_seen") == FeatureSeen::CannotBeSeen);
    CHECK(featureSeenNamed("altered_later") == FeatureSeen::AlteredLater);
    CHECK(cellStateNamed("clear") == CellState::Clear);
    CHECK(cellStateNamed("doubtful") == CellState::Doubtful);
    CHECK(cellStateNamed("traces") == CellState::Traces);
    CHECK(cellStateNamed("lost") == CellState::Lost);
    CHECK(cellStateNamed("restored") == CellState::Restored);
    CHECK(lineEndNamed("unknown") == LineEnd::Unknown);
    CHECK(lineEndNamed("complete") == LineEnd::Complete);
    CHECK(lineEndNamed("cut_off") == LineEnd::CutOff);
    CHECK(lineRoleNamed("maker") == LineRole::Maker);
    CHECK(lineRoleNamed("other") == LineRole::Other);
    CHECK(basisNamed("object_in_hand") == Basis::ObjectInHand);
    CHECK(basisNamed("transcript") == Basis::Transcript);
    CHECK_FALSE(basisNamed("hearsay"));
    CHECK_FALSE(cellStateNamed(""));
}

TEST_CASE("Every value has a word of its own that leads back to it", "[archive][names]")
{
    for (int i = 0; i <= static_cast<int>(StampMethod::Unknown); ++i)
        CHECK(stampMethodNamed(nameOf(static_cast<StampMethod>(i))) == static_cast<StampMethod>(i));
    for (int i = 0; i <= static_cast<int>(StampPart::Unknown); ++i)
        CHECK(stampPartNamed(nameOf(static_cast<StampPart>(i))) == static_cast<StampPart>(i));
    for (int i = 0; i <= static_cast<int>(EventKind::Disposed); ++i)
        CHECK(eventKindNamed(nameOf(static_cast<EventKind>(i))) == static_cast<EventKind>(i));
    for (int i = 0; i <= static_cast<int>(LineRole::Other); ++i)
        CHECK(lineRoleNamed(nameOf(static_cast<LineRole>(i))) == static_cast<LineRole>(i));
    for (int i = 0; i <= static_cast<int>(Basis::Transcript); ++i)
        CHECK(basisNamed(nameOf(static_cast<Basis>(i))) == static_cast<Basis>(i));
    for (int i = 0; i <= static_cast<int>(CellState::Restored); ++i)
        CHECK(cellStateNamed(nameOf(static_cast<CellState>(i))) == static_cast<CellState>(i));
}
