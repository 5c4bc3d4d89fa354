#pragma once

#include <random>

#include "models/exchange/tei.h"
#include "models/reading.h"

// Readings of every kind that reading.h allows, with everything in them that TEI keeps:
// certainties, extents, who vouches, roles, odd letters, cells without any.
models::Reading randomReading(std::mt19937& random);

// A document of this reading, with a title, place and number that need care in XML.
models::TeiDocument madeUpDocument(models::Reading reading);
