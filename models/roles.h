#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "models/date_bound.h"
#include "models/date_mark.h"
#include "models/maker_register.h"
#include "models/reading.h"

// What the lines of a stamp are for: maker, date, size, contract, and so on.
namespace models {

// What is known of an item before the roles of its texts are weighed.
struct RoleContext {
    DateContext dates;
    std::vector<std::string> sizes;       // that the item type is made in: "36", "L"
    std::vector<std::string> inspectors;  // codes of inspectors that the register lists
};

// What a register tells of it: its years, within them those of the item type, the sizes of the item
// type (empty: not said), its codes of inspectors, years and quarters.
RoleContext roleContextOf(const MakerRegister& known, const std::string& type_id);

// Parts the lines of one stamp into stretches and weighs for each what it is for, by the word that
// leads it (SIZE, PATT, CONTRACT, INSP ...), its form (digits, letters, firm's endings, the
// property arrow), where it stands and what the context knows. No role is ever forced: a size that
// could be a year gives both.
//   returns  for each line its spans from left to right, spaces between them left out; of one
//            stretch one span a role, likeliest first, those below 0.05 left out, their
//            probabilities sum to at most 1
// Weights: common practice, no source.
// Throws std::invalid_argument if the context's years are not in order.
std::vector<std::vector<RoleSpan>> guessRoles(const std::vector<Line>& lines,
                                              const RoleContext& context = {});

// What a date with this role says of when the item was made.
// Contract, Pattern: made not before. Inspection: made not after. Size, Owner, Property and Other
// say nothing of it (an owner's date is later, by how much nobody knows); all else: exact.
DateBound boundOf(LineRole role);

}  // namespace models
