// Why: the round as the commands and the desktop ask for it: put together from the stores, opened, decided,
// closed. The period is the seven days to `until` in the site's calendar. Thread: as the FleetFile it is
// given. Errors: those of the stores; Invalid for dates that are none and for closing too early (with what is
// missing).
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/progress.h"
#include "core/round/reliability.h"
#include "core/round/round.h"
#include "core/store/fleet_file.h"

namespace fettle {

// The list as it would be now; writes nothing. `until` empty: the day of the newest recording.
Result<RoundList> listNow(FleetFile& fleet, const std::string& until = "", const Progress& progress = {},
                          const CancelToken& cancel = {});

// Of how many recordings of that week retention thinned the examinations: its list stands on those left.
Result<std::int64_t> thinnedInWeek(FleetFile& fleet, const std::string& until);

struct KeptRound {
    RoundEntry entry;
    RoundList list;
    RoundState state;
    RoundProgress progress;
};
// Refused where the last day is more than 7 days after both today and the newest recording.
Result<KeptRound> openRound(FleetFile& fleet, const std::string& until = "", const Progress& progress = {},
                            const CancelToken& cancel = {});
Result<KeptRound> keptRound(FleetFile& fleet, std::int64_t id);
// The open round, else the last closed one, else nothing.
Result<std::optional<KeptRound>> currentRound(FleetFile& fleet);

// Decisions and answers are taken for machines of the round that ask for them: a decision for one that is
// listed, opened for one of the sample, a reason for one that is unseen. `by` empty: the user's login name.
// A decision's `at` left at 0 is now. A machine is deferred to a day after the round.
Status decide(FleetFile& fleet, std::int64_t round, const Decision& decision);
Status markOpened(FleetFile& fleet, std::int64_t round, const std::string& machine);
Status answerUnseen(FleetFile& fleet, std::int64_t round, const std::string& machine,
                    const std::string& reason, const std::string& by);
Status acceptLeave(FleetFile& fleet, std::int64_t round,
                   const std::string& by);  // refused before the sample was opened
Status closeRound(FleetFile& fleet, std::int64_t round, const std::string& by);

// "of the 9 listed on evidence, at most 1 in 10 on average over rounds is chance; 14 of 17 confirmed here so
// far" (the second half from 1 answer on; the word "confirmed" counts planner's reports).
Result<std::string> listPromise(FleetFile& fleet, const RoundList& list);

// What the planner's reports say: how many findings were opened and how many of them confirmed. All that is
// told of them and of the kept rounds: core/fleet/reliability.h.
struct SiteRecord {
    std::size_t opened = 0, confirmed = 0;
    Share share() const { return shareOf(confirmed, opened); }
};
// Of findings with this fault; empty: of all.
Result<SiteRecord> siteRecord(FleetFile& fleet, const std::string& fault = "");

}  // namespace fettle
