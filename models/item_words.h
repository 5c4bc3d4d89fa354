#pragma once

namespace models {

// What is recorded of an item in words of a fixed list. `Unknown` is what nobody has said.
enum class StampPart { Body, Fitting, Lining, Replacement, Unknown };
enum class StampMethod { Ink, Stencil, Impressed, Woven, Label, Cast, Engraved, Painted, Unknown };
enum class Certainty { Certain, Probable, Possible };
enum class EventKind { Made, Contract, Accepted, Inspected, Repaired, Issued, Pattern, Disposed };
enum class FeatureSeen { Present, Absent, CannotBeSeen, AlteredLater };

}  // namespace models
