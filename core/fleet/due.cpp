#include "core/fleet/due.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "core/base/text.h"
#include "core/fleet/verification.h"

namespace fettle {

namespace {

using RemovedOn = std::map<std::string, std::string>;  // tag to day, of machines no longer in service

Result<RemovedOn> removedBy(FleetFile& fleet, const std::string& until) {
    const auto machines = fleet.machines().all();
    if (!machines) return fail(machines.error());
    RemovedOn removed;
    for (const MachineEntry& machine : *machines)
        if (!machine.removedOn.empty() && machine.removedOn <= until)
            removed[machine.tag] = machine.removedOn;
    return removed;
}

// What rounds up to `until` say of what was deferred.
struct ToldRound {
    std::map<std::string, Decision> newest;  // on each machine
    std::string closedTo;                    // last day of the newest round closed; empty: none
};

Result<ToldRound> toldUpTo(FleetFile& fleet, const std::string& until) {
    auto rounds = fleet.rounds().all();
    if (!rounds) return fail(rounds.error());
    std::erase_if(*rounds, [&](const RoundEntry& round) { return round.until > until; });
    std::stable_sort(rounds->begin(), rounds->end(),
                     [](const RoundEntry& a, const RoundEntry& b) { return a.until < b.until; });
    ToldRound told;
    for (const RoundEntry& round : *rounds) {
        if (round.closedAt) told.closedTo = round.until;
        auto state = fleet.rounds().state(round.id);
        if (!state) return fail(state.error());
        for (Decision& decision : state->decisions)
            told.newest[decision.machine] = std::move(decision);
    }
    return told;
}

const RoundMachine* machineIn(const RoundList& list, const std::string& tag) {
    const auto found = std::find_if(list.machines.begin(), list.machines.end(),
                                    [&](const RoundMachine& m) { return m.tag == tag; });
    return found == list.machines.end() ? nullptr : &*found;
}

std::string deferredWords(const Decision& decision, const RoundMachine& now) {
    std::string words = fmt::format("deferred to {}: {}", decision.deferTo, oneLine(decision.reason));
    if (now.urgency == "leave") words += "; nothing lists it now";
    if (now.urgency == "unseen") words += "; not judged now: " + oneLine(now.unseenWords);
    return words;
}

// Asked once: in the first round that reaches the day, until that one is closed.
Status addDeferred(FleetFile& fleet, const RoundList& list, const RemovedOn& removed,
                   std::vector<DueItem>& due) {
    const auto told = toldUpTo(fleet, list.until);
    if (!told) return fail(told.error());
    for (const auto& [tag, decision] : told->newest) {
        const RoundMachine* now = machineIn(list, tag);
        const bool hasCome = decision.kind == DecisionKind::Defer && decision.deferTo <= list.until;
        if (!hasCome || decision.deferTo <= told->closedTo || !now || removed.count(tag)) continue;
        due.push_back({tag, "deferred", decision.deferTo, deferredWords(decision, *now)});
    }
    return {};
}

// A job that another one replaces is not asked about.
bool isReplaced(const std::vector<Job>& jobs, std::int64_t id) {
    return std::any_of(jobs.begin(), jobs.end(), [id](const Job& job) { return job.replaces == id; });
}

std::string nameOf(const Job& job) {
    std::string name = fmt::format("job {}", job.id);
    if (!job.workOrder.empty()) name += ", work order " + oneLine(job.workOrder);
    return name;
}

// Where verification is over its outcome, else how far it is.
Result<std::string> doneWords(FleetFile& fleet, const Job& job, const std::string& until) {
    const auto v = verifyJob(fleet, job, until);
    if (!v) return fail(v.error());
    const std::string asks = v->verdict ? " is done: " : " is done: verify that it cured; ";
    return nameOf(job) + asks + v->words();
}

// Of a machine in service.
Status addJob(FleetFile& fleet, const Job& job, const std::string& until, std::vector<DueItem>& due) {
    const std::string& day = job.plannedStop.empty() ? job.runUntil : job.plannedStop;
    if (job.state == "done") {
        auto words = doneWords(fleet, job, until);
        if (!words) return fail(words.error());
        due.push_back({job.machine, "verify", day, std::move(*words)});
    } else if (!day.empty() && day < until)
        due.push_back({job.machine, "overdue", day,
                       fmt::format("{} was due {} and is {}", nameOf(job), day, job.state)});
    return {};
}

Status addJobs(FleetFile& fleet, const std::string& until, const RemovedOn& removed,
               std::vector<DueItem>& due) {
    const auto jobs = fleet.log().jobs();
    if (!jobs) return fail(jobs.error());
    for (const Job& job : *jobs) {
        if (isReplaced(*jobs, job.id) || job.state == "verified" || job.state == "closed") continue;
        const auto gone = removed.find(job.machine);
        if (gone == removed.end()) {
            if (auto good = addJob(fleet, job, until, due); !good) return good;
        } else
            due.push_back({job.machine, "overdue", gone->second,
                           fmt::format("{} is {}, but the machine was taken out of the register on {}: "
                                       "close the job",
                                       nameOf(job), job.state, gone->second)});
    }
    return {};
}

void addLate(const RoundList& list, std::vector<DueItem>& due) {
    for (const RoundMachine& machine : list.machines)
        if (machine.lateRecordings > 0)
            due.push_back({machine.tag, "late", "",
                           fmt::format("{} recording{} came after the list of their week was kept",
                                       machine.lateRecordings, machine.lateRecordings == 1 ? "" : "s")});
}

}  // namespace

Result<std::vector<DueItem>> dueOf(FleetFile& fleet, const RoundList& list) {
    std::vector<DueItem> due;
    const auto removed = removedBy(fleet, list.until);
    if (!removed) return fail(removed.error());
    if (auto good = addDeferred(fleet, list, *removed, due); !good) return fail(good.error());
    if (auto good = addJobs(fleet, list.until, *removed, due); !good) return fail(good.error());
    addLate(list, due);
    std::stable_sort(due.begin(), due.end(), [](const DueItem& a, const DueItem& b) {
        return std::pair(a.day.empty(), a.day) < std::pair(b.day.empty(), b.day);
    });
    return due;
}

}  // namespace fettle
