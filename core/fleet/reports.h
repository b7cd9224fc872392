// Why: what people say of a machine is checked before it is kept: a place the machine has, a time that has
// come (a day is left for clocks that differ), a fault the advice knows. The same report twice stands once.
// Times UTC. Thread: as the FleetFile. Errors: Invalid with the rule, NotFound for a tag not in the register.
#pragma once

#include "core/store/fleet_file.h"

namespace fettle {

// `event.at` empty or a place or point of the machine; a note has words.
Result<std::int64_t> keepEvent(FleetFile& fleet, const Event& event, Instant now);

struct KeptReport {
    std::int64_t id = 0;
    bool already = false;  // alike in machine, fault, place, outcome, site's day and reporter
};
Result<KeptReport> keepReport(FleetFile& fleet, const Feedback& report, Instant now);

}  // namespace fettle
