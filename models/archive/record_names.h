#pragma once

#include <optional>
#include <string>

#include "models/archive/records.h"
#include "models/reading.h"

// The words under which the archive and the exchange formats store enumerated values. They are part
// of both formats: a word once stored keeps its meaning, new ones may be added.
namespace models {

const char* nameOf(StampPart part);
const char* nameOf(StampMethod method);
const char* nameOf(Certainty certainty);
const char* nameOf(EventKind kind);
const char* nameOf(DateBound bound);
const char* nameOf(FeatureSeen seen);
const char* nameOf(CellState state);
const char* nameOf(LineEnd end);
const char* nameOf(LineRole role);
const char* nameOf(Basis basis);

// nullopt for a word that is none of them.
std::optional<StampPart> stampPartNamed(const std::string& name);
std::optional<StampMethod> stampMethodNamed(const std::string& name);
std::optional<Certainty> certaintyNamed(const std::string& name);
std::optional<EventKind> eventKindNamed(const std::string& name);
std::optional<DateBound> dateBoundNamed(const std::string& name);
std::optional<FeatureSeen> featureSeenNamed(const std::string& name);
std::optional<CellState> cellStateNamed(const std::string& name);
std::optional<LineEnd> lineEndNamed(const std::string& name);
std::optional<LineRole> lineRoleNamed(const std::string& name);
std::optional<Basis> basisNamed(const std::string& name);

}  // namespace models
