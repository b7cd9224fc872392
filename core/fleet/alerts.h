// Why: between two rounds somebody is told when a machine turns bad. After each batch of recordings the rules
// are asked of the machines it belongs to: of each the newest few recordings, found along the keys, so that
// it costs what is new and not the history; examinations are read of those alone that would count. Alerts,
// and what is to be sent of them, are written in one transaction; sending is another step (alert_post.h).
// Data older than a week say nothing of now: a backlog taken in raises no alert. Thread: as the FleetFile.
// Errors: those of the stores.
#pragma once

#include <cstddef>

#include "core/fleet/alert_rules.h"
#include "core/store/fleet_file.h"

namespace fettle {

inline constexpr std::chrono::days kAlertWindow{7};  // recordings not older say how a machine is now

struct AlertRun {
    enum class Which {
        New,  // machines with recordings that came in since the last time
        All   // every machine in service
    } which = Which::New;
    Instant now{};            // empty: the system's clock
    CancelToken cancel = {};  // between two machines: then nothing is written
};

struct AlertsRaised {
    std::size_t machines = 0;  // looked at
    std::size_t raised = 0, grown = 0, ended = 0, asked = 0;
    bool any() const { return raised + grown + ended + asked > 0; }
};

// Call after each batch that was stored. Silence is looked at every ten minutes, and with All.
Result<AlertsRaised> raiseAlerts(FleetFile& fleet, const AlertRun& run = {});

// What the rules read of one machine.
Result<HeardMachine> heardMachine(FleetFile& fleet, const MachineEntry& machine,
                                  const std::vector<AlertRule>& rules, Instant now);
// Its points and when they were last heard, without recordings: all that silence needs.
Result<HeardMachine> heardPoints(FleetFile& fleet, const MachineEntry& machine, Instant now);

// `why` says what was seen or done; both are needed, `by` empty: as orLoginName.
Status acknowledgeAlert(FleetFile& fleet, std::int64_t id, const std::string& by, const std::string& why,
                        Instant now);

}  // namespace fettle
