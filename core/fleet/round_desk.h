// Why: the round as the commands and the desktop ask for it: put together from the stores, opened, decided,
// closed. The period is the seven days to `until` in the site's calendar. Thread: as the FleetFile it is
// given. Errors: those of the stores; Invalid for dates that are none and for closing too early (with what is
// missing).
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/progress.h"
#include "core/round/round.h"
#include "core/store/fleet_file.h"

namespace fettle {

// The list as it would be now; writes nothing. `until` empty: the day of the newest recording.
Result<RoundList> listNow(FleetFile& fleet, const std::string& until = "", const Progress& progress = {},
                          const CancelToken& cancel = {});

struct KeptRound {
    RoundEntry entry;
    RoundList list;
    RoundState state;
    RoundProgress progress;
};
Result<KeptRound> openRound(FleetFile& fleet, const std::string& until = "", const Progress& progress = {});
Result<KeptRound> keptRound(FleetFile& fleet, std::int64_t id);
// The open round, else the last closed one, else nothing.
Result<std::optional<KeptRound>> currentRound(FleetFile& fleet);
Status decide(FleetFile& fleet, std::int64_t round, const Decision& decision);
Status acceptLeave(FleetFile& fleet, std::int64_t round,
                   const std::string& by);  // refused before the sample was opened
Status closeRound(FleetFile& fleet, std::int64_t round, const std::string& by);

// "of the 9 listed on evidence, at most 1 in 10 on average over rounds is chance; 14 of 17 confirmed here so
// far" (the second half from 1 answer on; the word "confirmed" counts planner's reports).
Result<std::string> listPromise(FleetFile& fleet, const RoundList& list);

}  // namespace fettle
