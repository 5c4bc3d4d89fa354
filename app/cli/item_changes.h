#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "app/cli/conclusion_options.h"
#include "models/archive/records.h"
#include "models/maker_register.h"

// From the options of `weftmark item` to what is recorded. Everything here throws UsageError, a
// sentence with the remedy, for what it cannot understand; nothing is written.
namespace cli {

struct ItemOptions {
    std::string item;  // empty: a new one
    std::string accession_number, archive_folder, register_folder, author;
    std::optional<std::string> type_id, owner, condition, place_found, notes;
    std::vector<std::string> features, measurements, events, stamps, parts, places, methods, inks;
    std::vector<std::string> taken_back;
    std::optional<std::size_t> stamp_number;
    bool later_added = false, fresh = false, json = false;
    ConclusionOptions conclusion;
    std::optional<std::size_t> replaces;
};

// Checks what can be checked before the archive is opened.
void checkItemOptions(const ItemOptions& options, const models::MakerRegister& known);

// Who records, when, and by which register.
struct ItemContext {
    const models::MakerRegister& known;
    std::filesystem::path register_folder;
    std::string by, now;
};

// What the options add to an item and correct in it. A new item is one of which nothing is filed:
// all that it gets is added.
models::RecordAdditions additionsFrom(const ItemOptions& options, const models::ItemRecord& item,
                                      const ItemContext& context);

}  // namespace cli
