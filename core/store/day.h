// Why: days in the fleet file are texts "2026-05-04" that sort as they follow each other; anything else is
// refused before it is written. Now: the system's clock, whole milliseconds, UTC.
#pragma once

#include <string>

#include "core/base/result.h"
#include "core/base/time.h"

namespace fettle {

inline Instant nowUtc() {
    return std::chrono::floor<std::chrono::milliseconds>(std::chrono::system_clock::now());
}

// Empty is a day too ("always", "not said").
inline Status checkDay(const std::string& day, const std::string& file, const std::string& place) {
    if (day.empty() || (day.size() == 10 && parseUtc(day + "T00:00:00Z"))) return {};
    return fail(ErrorKind::Invalid, file, place, "is \"" + day + "\", must be a day as in 2026-05-04");
}

}  // namespace fettle
