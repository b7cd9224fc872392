#include "ui/model/round_shown.h"

#include "core/fleet/site_calendar.h"

namespace fettle {

namespace {

Result<std::optional<KeptRound>> wanted(FleetFile& fleet, std::optional<std::int64_t> id) {
    if (!id) return currentRound(fleet);
    auto kept = keptRound(fleet, *id);
    if (!kept) return fail(kept.error());
    return std::optional<KeptRound>(std::move(*kept));
}

void take(KeptRound found, RoundShown& round) {
    round.entry = std::move(found.entry);
    round.list = std::move(found.list);
    round.state = std::move(found.state);
    round.progress = std::move(found.progress);
}

// Without recordings there is no day to end with: an empty list, not a failure.
Status takeDraft(FleetFile& fleet, const CancelToken& cancel, RoundShown& round) {
    if (round.machinesInRegister == 0 || round.recordings == 0) return {};
    auto list = listNow(fleet, "", {}, cancel);
    if (!list) return fail(list.error());
    round.list = std::move(*list);
    round.refresh();
    return {};
}

Status count(FleetFile& fleet, RoundShown& round) {
    const auto machines = fleet.machines().all();
    if (!machines) return fail(machines.error());
    for (const MachineEntry& machine : *machines)
        if (machine.removedOn.empty()) ++round.machinesInRegister;
    const auto recordings = fleet.recordings().count();
    if (!recordings) return fail(recordings.error());
    round.recordings = *recordings;
    return {};
}

}  // namespace

void RoundShown::refresh() {
    progress = progressOf(list, state);
}

Result<RoundShown> readRound(FleetFile& fleet, std::optional<std::int64_t> id, const CancelToken& cancel) {
    RoundShown round;
    const auto site = fleet.site();
    if (!site) return fail(site.error());
    round.site = site->site;
    round.timeZone = site->timeZone;
    if (auto counted = count(fleet, round); !counted) return fail(counted.error());
    auto rounds = fleet.rounds().all();
    if (!rounds) return fail(rounds.error());
    round.rounds = std::move(*rounds);
    auto kept = wanted(fleet, id);
    if (!kept) return fail(kept.error());
    if (*kept)
        take(std::move(**kept), round);
    else if (auto drafted = takeDraft(fleet, cancel, round); !drafted)
        return fail(drafted.error());
    if (round.list.until.empty()) return round;
    const auto end = datePlus(round.list.until, 1).and_then([&](const std::string& day) {
        return startOfDate(site->timeZone, day);
    });
    if (!end) return fail(end.error());
    round.end = *end;
    auto due = dueOf(fleet, round.list);
    if (!due) return fail(due.error());
    round.due = std::move(*due);
    auto promise = listPromise(fleet, round.list);
    if (!promise) return fail(promise.error());
    round.promise = std::move(*promise);
    return round;
}

}  // namespace fettle
