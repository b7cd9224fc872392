// Why: the false-alarm curve of a site's own machines: what chance reaches on the recordings that its fleet
// file keeps raw. A machine's recordings are one cluster of the interval: a line that nobody listed stands in
// all of them. The newest running ones of each machine, as evenly over its points as they come. Thread: one;
// reads only.
#pragma once

#include <optional>
#include <string>

#include "core/diagnosis/phantoms.h"

namespace fettle {

struct FleetPhantoms {
    PhantomResult phantoms;
    bool refusedSome = false;  // already told
};
// Empty after telling why.
std::optional<FleetPhantoms> fleetPhantoms(const std::string& fleet, std::size_t perMachine,
                                           const PhantomOptions& options);

}  // namespace fettle
