#pragma once

namespace models {

// What a date says of when the item was made: made then, not before, not after, nothing.
enum class DateBound { Exact, NotBefore, NotAfter, None };

}  // namespace models
