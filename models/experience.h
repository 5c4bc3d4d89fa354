#pragma once

#include <map>
#include <string>

#include "models/confusion.h"

namespace models {

// What an archive teaches the ranking; the default is an archive that holds nothing.
struct Experience {
    std::map<std::string, double> maker_counts;  // items by maker_id
    ConfusionTable confusions = ConfusionTable::published();
};

}  // namespace models
