// Why: all that the round page shows, read at once on a worker: the kept round (or the list as it would be
// now), what was decided, what is still missing, the stated promise and the rounds there are. Plain data;
// nothing on the page asks the fleet file again. Thread: `readRound` as the FleetFile it is given.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/fleet/due.h"
#include "core/fleet/round_desk.h"
#include "core/store/fleet_file.h"

namespace fettle {

struct RoundShown {
    std::string site, timeZone;
    std::optional<RoundEntry> entry;  // empty: a draft, the list as it would be now
    RoundList list;
    RoundState state;
    RoundProgress progress;
    Instant end{};                   // first moment after the period
    std::string promise;             // of the list
    std::vector<RoundEntry> rounds;  // all there are, oldest first
    std::vector<DueItem> due;        // before the list: deferred, overdue, to verify, late
    std::size_t machinesInRegister = 0, recordings = 0;

    bool draft() const { return !entry; }
    bool open() const { return entry && !entry->closedAt; }
    void refresh();  // progress from list and state
};

// `id` empty: the open round, else the last closed one, else the list as it would be now.
Result<RoundShown> readRound(FleetFile& fleet, std::optional<std::int64_t> id, const CancelToken& cancel);

}  // namespace fettle
