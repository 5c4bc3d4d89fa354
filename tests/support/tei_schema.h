#pragma once

#include <string>

#include "tests/support/temporary_folder.h"

namespace support {

// Why documents cannot be held against the EpiDoc schema here; empty when they can. The schema is
// no part of the project (it is under the GPL): it is looked for where $WEFTMARK_TEI_SCHEMA says,
// or in a folder beside the source tree; jing checks.
std::string whyNoTeiSchema();

// What jing complains of in the folder's *.xml, all files at once; empty when it has nothing.
std::string complaintsOfTei(const TemporaryFolder& folder);

}  // namespace support
