// Why: the figures that verification compares: levels with their aim and lines with their sound baseline, at
// the moments chosen, each line at the channel where it stood out most. The baseline is the first sound days
// since the machine was last altered before the work, and stays what it was; a day on which the fault was
// named or vibration was over its aim is not sound. Times by the site's clock. Thread: as the FleetFile;
// reads only. Errors: those of the stores.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "core/fleet/run_values.h"
#include "core/round/verification.h"
#include "core/round/verify_window.h"

namespace fettle {

// All vibration channels of a machine, and its running moments with the recordings at each.
struct MachineRuns {
    std::int64_t machine = 0;
    std::string timeZone;
    std::vector<ChannelRuns> channels;

    static Result<MachineRuns> read(FleetFile& fleet, std::int64_t machine, const std::string& timeZone,
                                    Instant from, Instant until);
    std::vector<RunValue> moments() const;  // one of each moment, oldest first
    const std::vector<std::int64_t>& recordingsAt(Instant moment) const;

  private:
    std::map<Instant, RunValue> runs_;
    std::map<Instant, std::vector<std::int64_t>> recordings_;
};

Status addLevels(FleetFile& fleet, const std::string& tag, const MachineRuns& runs,
                 const VerifyWindow& window, CureCase& figures);
// `events`: of the machine, oldest first.
Status addLines(FleetFile& fleet, const std::vector<Event>& events, const MachineRuns& runs,
                const VerifyWindow& window, CureCase& figures);

// Day of the last alteration of the machine before `day`: part, repair, moved node, told anew; empty: none.
std::optional<int> alteredBefore(const std::vector<Event>& events, const std::string& timeZone, int day);

}  // namespace fettle
