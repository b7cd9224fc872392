#include "core/fleet/trial_desk.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/fleet/balance_desk.h"
#include "core/fleet/machine_desk.h"
#include "core/fleet/site_calendar.h"
#include "core/fleet/trial_reading.h"
#include "core/fleet/who.h"
#include "core/store/day.h"
#include "core/trend/median.h"
#include "core/workshop/trial_json.h"
#include "core/workshop/trial_judge.h"

namespace fettle {

namespace {

tl::unexpected<Error> refuse(FleetFile& fleet, const Trial& trial, const std::string& rule) {
    return fail(ErrorKind::Invalid, fleet.path(), "trial " + trial.name, rule);
}

std::vector<std::string> placesOf(const Machine& machine) {
    std::vector<std::string> places{"driver"};
    if (machine.driven.known) places.push_back("driven");
    for (const BearingPlace& bearing : machine.bearings)
        places.push_back(bearing.at);
    return places;
}

Result<std::optional<TrialChannel>> channelOf(FleetFile& fleet, const ChannelEntry& channel, Instant from,
                                              Instant until) {
    if (channel.quantity == "flux" || channel.quantity == "temperature") return std::nullopt;
    const auto points = fleet.trends().trend(channel.id, Quantity::Order1, from, until);
    if (!points) return fail(points.error());
    std::vector<double> values;
    for (const TrendPoint& point : *points)
        if (isRunning(point.running)) values.push_back(point.value);
    TrialChannel one{channel.point, channel.name, channel.direction, {}, values.size()};
    if (!values.empty()) one.onceMmS = medianOf(values);
    return one;
}

Status addRecordings(FleetFile& fleet, std::int64_t machine, TrialPlan& plan) {
    const auto entries = fleet.recordings().list(machine, plan.beforeFrom, plan.newest);
    if (!entries) return fail(entries.error());
    std::vector<double> seconds, speeds;
    for (const RecordingEntry& one : *entries) {
        if (!isRunning(one.running)) continue;
        seconds.push_back(one.seconds);
        if (one.speedRpm) speeds.push_back(*one.speedRpm);
    }
    plan.ground.before = seconds.size();
    if (!seconds.empty()) plan.ground.seconds = medianOf(seconds);
    if (!speeds.empty()) plan.ground.driverRpm = medianOf(speeds);
    return {};
}

// What a balancing that was solved in mm/s at a channel of the fleet file has learnt of each plane.
void addInfluences(const BalanceEntry& entry, const std::string& timeZone, TrialPlan& plan) {
    const BalanceJob& job = entry.job;
    if (!entry.closedAt || !entry.trouble.empty() || job.unit != "mm/s r.m.s.") return;
    const BalanceAnswer answer = solveBalance(job);
    const auto rpm = job.initial.rpm ? job.initial.rpm : job.rotor.rpm;
    const auto date = dateIn(timeZone, *entry.closedAt);
    if (!rpm || !date) return;
    for (std::size_t sensor = 0; sensor < job.sensors.size(); ++sensor)
        for (std::size_t plane = 0; plane < job.planes.size(); ++plane) {
            const std::size_t gap = job.sensors[sensor].channel.find(' ');
            const auto perGram = answer.perGram(sensor, plane);
            if (!perGram || gap == std::string::npos || job.planes[plane].radiusMm <= 0) continue;
            plan.ground.influences.push_back({fmt::format("the balancing \"{}\" of {}, {}", entry.name,
                                                          spelledDate(*date), job.planes[plane].name),
                                              job.rotor.component, job.sensors[sensor].channel.substr(0, gap),
                                              job.sensors[sensor].channel.substr(gap + 1),
                                              *perGram / job.planes[plane].radiusMm, *rpm});
        }
}

Result<TrialEntry> entryOf(FleetFile& fleet, const WorkshopEntry& kept) {
    auto trial = trialFromText(kept.json, fmt::format("{}: trial {}", fleet.path(), kept.id));
    if (!trial) return fail(trial.error());
    return TrialEntry{kept.id, kept.createdAt, kept.closedAt, std::move(*trial)};
}

// What was promised is what is kept, whoever asks otherwise.
Status promiseKept(FleetFile& fleet, const Trial& before, const Trial& now) {
    if (!before.started()) return {};
    const auto frozen = [](const Trial& trial) {
        Trial part;
        part.machine = trial.machine;
        part.change = trial.change;
        part.expectation = trial.expectation;
        part.promise = trial.promise;
        part.startedAt = trial.startedAt;
        part.beforeFrom = trial.beforeFrom;
        return trialAsText(part);
    };
    if (frozen(before) == frozen(now)) return {};
    return refuse(fleet, before, "is started: what it changes and promises does not change any more");
}

Result<TrialEntry> keepAnd(FleetFile& fleet, std::int64_t id, const Trial& trial,
                           std::optional<Instant> closedAt = {}) {
    WorkshopEntry entry;
    entry.id = id;
    entry.machine = trial.machine;
    entry.kind = "trial";
    entry.name = trial.name;
    entry.closedAt = closedAt;
    entry.json = trialAsText(trial);
    const auto kept = fleet.workshop().put(entry);
    if (!kept) return fail(kept.error());
    return trialOf(fleet, *kept);
}

}  // namespace

Result<TrialPlan> trialPlan(FleetFile& fleet, const std::string& tag, std::optional<Instant> beforeFrom) {
    const auto entry = fleet.machines().byTag(tag);
    if (!entry) return fail(entry.error());
    const auto site = fleet.site();
    if (!site) return fail(site.error());
    const auto newest = fleet.recordings().newest(entry->id);
    if (!newest) return fail(newest.error());
    TrialPlan plan;
    plan.timeZone = site->timeZone;
    plan.newest = newest->value_or(nowUtc());
    plan.beforeFrom = beforeFrom.value_or(plan.newest - std::chrono::days(kTrialDaysBefore));
    auto machine = describedAt(fleet, tag, plan.newest);
    if (!machine) return fail(machine.error());
    plan.machine = std::move(*machine);
    plan.places = placesOf(*plan.machine);
    if (auto good = addRecordings(fleet, entry->id, plan); !good) return fail(good.error());
    const auto balanced = balanceDesk(fleet, tag);
    if (!balanced) return fail(balanced.error());
    for (const BalanceEntry& one : balanced->entries)
        addInfluences(one, plan.timeZone, plan);
    const auto channels = fleet.trends().channels(entry->id);
    if (!channels) return fail(channels.error());
    for (const ChannelEntry& channel : *channels) {
        auto one = channelOf(fleet, channel, plan.beforeFrom, plan.newest);
        if (!one) return fail(one.error());
        if (*one) plan.channels.push_back(std::move(**one));
    }
    return plan;
}

TrialGround groundOf(const TrialPlan& plan, const TrialChange& change) {
    TrialGround ground = plan.ground;
    for (const TrialChannel& one : plan.channels)
        if (one.point == change.point && one.name == change.channel) {
            ground.onceMmS = one.onceMmS;
            ground.before = one.recordings;
        }
    return ground;
}

Result<std::vector<TrialEntry>> trialsOf(FleetFile& fleet, const std::string& tag) {
    const auto kept = fleet.workshop().list(tag, "trial");
    if (!kept) return fail(kept.error());
    std::vector<TrialEntry> all;
    for (const WorkshopEntry& one : *kept) {
        auto entry = entryOf(fleet, one);
        if (!entry) return fail(entry.error());
        all.push_back(std::move(*entry));
    }
    return all;
}

Result<TrialEntry> trialOf(FleetFile& fleet, std::int64_t id) {
    const auto kept = fleet.workshop().get(id);
    if (!kept) return fail(kept.error());
    if (kept->kind != "trial")
        return fail(ErrorKind::NotFound, fleet.path(), fmt::format("trial {}", id),
                    "is not in the fleet file");
    return entryOf(fleet, *kept);
}

Result<std::int64_t> keepTrial(FleetFile& fleet, std::int64_t id, const Trial& trial) {
    if (id != 0) {
        const auto before = trialOf(fleet, id);
        if (!before) return fail(before.error());
        if (auto good = promiseKept(fleet, before->trial, trial); !good) return fail(good.error());
    }
    const auto kept = keepAnd(fleet, id, trial);
    if (!kept) return fail(kept.error());
    return kept->id;
}

std::vector<std::string> startLacks(const Trial& trial) {
    std::vector<std::string> lacks;
    if (!trial.expectation.lacking.empty()) lacks.push_back(trial.expectation.lacking);
    if (trial.promise.sentences.empty()) lacks.push_back("nothing is promised yet");
    const std::size_t cautions = trialCautions(trial.change.kind).size();
    if (trial.precautions.size() < cautions)
        lacks.push_back(fmt::format("{} of {} cautions are confirmed", trial.precautions.size(), cautions));
    if (trial.stopAt.empty()) lacks.push_back("the value at which the machine is stopped is not given");
    if (trial.responsible.empty()) lacks.push_back("nobody is named who answers for it");
    return lacks;
}

Result<TrialEntry> startTrial(FleetFile& fleet, std::int64_t id, const std::string& by, Instant now) {
    auto entry = trialOf(fleet, id);
    if (!entry) return entry;
    Trial& trial = entry->trial;
    if (trial.started()) return refuse(fleet, trial, "is started already");
    if (const auto lacks = startLacks(trial); !lacks.empty()) return refuse(fleet, trial, lacks.front());
    trial.startedAt = now;
    trial.startedBy = orLoginName(by);
    return keepAnd(fleet, id, trial);
}

Result<TrialEntry> tellChange(FleetFile& fleet, std::int64_t id, Instant from, Instant until) {
    auto entry = trialOf(fleet, id);
    if (!entry) return entry;
    Trial& trial = entry->trial;
    if (!trial.started()) return refuse(fleet, trial, "is not started: the promise comes before the change");
    if (until < from) return refuse(fleet, trial, "the machine cannot turn again before it was stopped");
    if (trial.beforeFrom && from < *trial.beforeFrom)
        return refuse(fleet, trial, "the change lies before the span that is to stand before it");
    trial.changeFrom = from;
    trial.changeUntil = until;
    return keepAnd(fleet, id, trial);
}

Result<TrialEntry> closeTrial(FleetFile& fleet, std::int64_t id, Instant until, const std::string& remarks) {
    auto entry = trialOf(fleet, id);
    if (!entry) return entry;
    Trial& trial = entry->trial;
    if (trial.changeUntil && until < *trial.changeUntil)
        return refuse(fleet, trial, "cannot end before the change was made");
    trial.afterUntil = until;
    trial.remarks = remarks;
    auto recordings = trialRecordings(fleet, trial);
    if (!recordings) return fail(recordings.error());
    trial.result = judgeTrial(trial, std::move(*recordings), true);
    return keepAnd(fleet, id, trial, nowUtc());
}

Result<TrialResult> trialResult(FleetFile& fleet, const TrialEntry& entry) {
    if (entry.trial.result) return *entry.trial.result;
    auto recordings = trialRecordings(fleet, entry.trial);
    if (!recordings) return fail(recordings.error());
    return judgeTrial(entry.trial, std::move(*recordings));
}

Result<std::vector<TrialSpan>> trialSpans(FleetFile& fleet, Instant now) {
    const auto trials = trialsOf(fleet);
    if (!trials) return fail(trials.error());
    std::vector<TrialSpan> spans;
    for (const TrialEntry& one : *trials)
        for (const TrialSpan& span : spansOf(one.trial, now))
            spans.push_back(span);
    return spans;
}

}  // namespace fettle
