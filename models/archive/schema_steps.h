#pragma once

#include <string>
#include <vector>

namespace models::sql {

// The statements that lead from the version before to `version`, 1 or more. SQL of a step that was
// published is never edited; a change is a new step. Plain SQL, for SQLite and PostgreSQL.
std::vector<std::string> schemaStep(int version);

}  // namespace models::sql
