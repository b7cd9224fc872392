// Why: what a balancing asks of the fleet file: the job the machine's description proposes, jobs kept, the
// coefficients closed jobs left, recordings that hold a once-per-turn channel, and readings from them. Times
// UTC. Thread: as the FleetFile; `onceOfRecording` takes some 10 ms. Errors: those of the stores; Invalid
// where a recording gives no once-per-turn reading, with the reason.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/store/fleet_file.h"
#include "core/workshop/balance_solve.h"
#include "core/workshop/tachometer.h"

namespace fettle {

struct BalanceEntry {
    std::int64_t id = 0;
    Instant changedAt{};
    std::optional<Instant> closedAt;
    std::string name, trouble;  // trouble: why the document cannot be read; empty: it can
    BalanceJob job;
};

struct BalanceDesk {
    BalanceJob proposedDriver, proposedDriven;
    bool hasDriven = false;
    std::vector<std::string> channels;       // of vibration, "M-DE x"
    std::vector<BalanceEntry> entries;       // newest first
    std::vector<SavedInfluence> saved;       // of closed jobs, newest first
    std::vector<RecordingEntry> recordings;  // the newest 40 with two channels or more, newest first
};

Result<BalanceDesk> balanceDesk(FleetFile& fleet, const std::string& tag);
// id 0: a new one; `close`: it does not change any more.
Result<std::int64_t> keepBalance(FleetFile& fleet, std::int64_t id, const BalanceJob& job, bool close);

struct RecordedReading {
    OnceAsTurned once;
    std::optional<double> loadPct;
};
// `channel` read against `tachometer`, both names within the recording.
Result<RecordedReading> onceOfRecording(FleetFile& fleet, std::int64_t recording, const std::string& channel,
                                        const std::string& tachometer);

}  // namespace fettle
