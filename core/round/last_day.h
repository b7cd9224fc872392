// Why: the round counts in the site's days, so its last day is that of its date `until` and not of its end in
// Greenwich, which lies in the next day west of there. Days since 1970-01-01. Thread: pure.
#pragma once

#include "core/round/round.h"

namespace fettle {

inline int lastDayOf(const RoundSettings& settings) {
    const auto until = parseUtc(settings.until + "T00:00:00Z");
    return dayOf(until ? *until : settings.end - std::chrono::milliseconds(1));
}

}  // namespace fettle
