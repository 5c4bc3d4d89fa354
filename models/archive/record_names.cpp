#include "models/archive/record_names.h"

#include <algorithm>
#include <iterator>
#include <span>

namespace models {

namespace {

using Names = std::span<const char* const>;

// Each list is in the order of its enumeration.
constexpr const char* stamp_parts[] = {"body", "fitting", "lining", "replacement", "unknown"};
constexpr const char* stamp_methods[] = {"ink",  "stencil",  "impressed", "woven",  "label",
                                         "cast", "engraved", "painted",   "unknown"};
constexpr const char* certainties[] = {"certain", "probable", "possible"};
constexpr const char* event_kinds[] = {"made",     "contract", "accepted", "inspected",
                                       "repaired", "issued",   "pattern",  "disposed"};
constexpr const char* date_bounds[] = {"exact", "not_before", "not_after", "none"};
constexpr const char* features_seen[] = {"present", "absent", "cannot_be_seen", "altered_later"};
constexpr const char* cell_states[] = {"clear", "doubtful", "traces", "lost", "restored"};
constexpr const char* line_ends[] = {"unknown", "complete", "cut_off"};
constexpr const char* line_roles[] = {"unknown",    "maker",   "date",     "size",  "contract",
                                      "inspection", "pattern", "property", "owner", "other"};
constexpr const char* bases[] = {"unknown", "object_in_hand", "photo", "transcript"};

std::optional<int> indexOf(Names names, const std::string& name)
{
    const auto found = std::find(names.begin(), names.end(), name);
    if (found == names.end())
        return std::nullopt;
    return static_cast<int>(std::distance(names.begin(), found));
}

}  // namespace

const char* nameOf(StampPart part)
{
    return stamp_parts[static_cast<std::size_t>(part)];
}

const char* nameOf(StampMethod method)
{
    return stamp_methods[static_cast<std::size_t>(method)];
}

const char* nameOf(Certainty certainty)
{
    return certainties[static_cast<std::size_t>(certainty)];
}

const char* nameOf(EventKind kind)
{
    return event_kinds[static_cast<std::size_t>(kind)];
}

const char* nameOf(DateBound bound)
{
    return date_bounds[static_cast<std::size_t>(bound)];
}

const char* nameOf(FeatureSeen seen)
{
    return features_seen[static_cast<std::size_t>(seen)];
}

const char* nameOf(CellState state)
{
    return cell_states[static_cast<std::size_t>(state)];
}

const char* nameOf(LineEnd end)
{
    return line_ends[static_cast<std::size_t>(end)];
}

const char* nameOf(LineRole role)
{
    return line_roles[static_cast<std::size_t>(role)];
}

const char* nameOf(Basis basis)
{
    return bases[static_cast<std::size_t>(basis)];
}

std::optional<StampPart> stampPartNamed(const std::string& name)
{
    const std::optional<int> index = indexOf(stamp_parts, name);
    return index ? std::optional(static_cast<StampPart>(*index)) : std::nullopt;
}

std::optional<StampMethod> stampMethodNamed(const std::string& name)
{
    const std::optional<int> index = indexOf(stamp_methods, name);
    return index ? std::optional(static_cast<StampMethod>(*index)) : std::nullopt;
}

std::optional<Certainty> certaintyNamed(const std::string& name)
{
    const std::optional<int> index = indexOf(certainties, name);
    return index ? std::optional(static_cast<Certainty>(*index)) : std::nullopt;
}

std::optional<EventKind> eventKindNamed(const std::string& name)
{
    const std::optional<int> index = indexOf(event_kinds, name);
    return index ? std::optional(static_cast<EventKind>(*index)) : std::nullopt;
}

std::optional<DateBound> dateBoundNamed(const std::string& name)
{
    const std::optional<int> index = indexOf(date_bounds, name);
    return index ? std::optional(static_cast<DateBound>(*index)) : std::nullopt;
}

std::optional<FeatureSeen> featureSeenNamed(const std::string& name)
{
    const std::optional<int> index = indexOf(features_seen, name);
    return index ? std::optional(static_cast<FeatureSeen>(*index)) : std::nullopt;
}

std::optional<CellState> cellStateNamed(const std::string& name)
{
    const std::optional<int> index = indexOf(cell_states, name);
    return index ? std::optional(static_cast<CellState>(*index)) : std::nullopt;
}

std::optional<LineEnd> lineEndNamed(const std::string& name)
{
    const std::optional<int> index = indexOf(line_ends, name);
    return index ? std::optional(static_cast<LineEnd>(*index)) : std::nullopt;
}

std::optional<LineRole> lineRoleNamed(const std::string& name)
{
    const std::optional<int> index = indexOf(line_roles, name);
    return index ? std::optional(static_cast<LineRole>(*index)) : std::nullopt;
}

std::optional<Basis> basisNamed(const std::string& name)
{
    const std::optional<int> index = indexOf(bases, name);
    return index ? std::optional(static_cast<Basis>(*index)) : std::nullopt;
}

}  // namespace models
