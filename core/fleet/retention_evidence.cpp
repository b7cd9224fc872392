// What findings, baselines and verified jobs stand on.
#include <algorithm>

#include "core/fleet/cure_figures.h"
#include "core/fleet/followed_trends.h"
#include "core/fleet/job_done.h"
#include "core/fleet/machine_desk.h"
#include "core/fleet/retention_holds.h"
#include "core/fleet/site_calendar.h"
#include "core/fleet/trend_past.h"

namespace fettle {

namespace {

using std::chrono::days;

constexpr double kFindingDban = 20;
constexpr int kBaselineDays = 42,
              kBaselineReach = 120;  // days, as core/trend/baseline.h; looked for that far
constexpr days kNewestWeek{7};

// Of each fault and place the recording that weighs most, if it reaches a finding's weight.
class Best {
  public:
    void take(const WeightEntry& one, int span) {
        if (one.weightDban < kFindingDban) return;
        const auto [at, fresh] = best_.try_emplace({span, one.fault + " @ " + one.at}, one);
        if (!fresh && one.weightDban > at->second.weightDban) at->second = one;
    }
    void hold(Holds& holds, KeptFor why) const {
        for (const auto& [key, one] : best_)
            holds.add(one.recording, why);
    }

  private:
    std::map<std::pair<int, std::string>, WeightEntry> best_;
};

// From where on days may enter a baseline that is not there yet.
Result<int> baselineBegins(FleetFile& fleet, const SiteSettings& site, const std::string& tag,
                           const Point* point, Instant first, Instant newest) {
    const auto day = dateIn(site.timeZone, newest), oldest = dateIn(site.timeZone, first);
    if (!day || !oldest) return fail(day ? oldest.error() : day.error());
    const auto period = periodTo(site, *day);
    if (!period) return fail(period.error());
    const auto events = fleet.log().events(tag);
    if (!events) return fail(events.error());
    const auto segment = segmentStart(*events, point, *period);
    if (!segment) return fail(segment.error());
    const auto from = dayNumber(*oldest);
    if (!from) return from;
    return std::max(*from, segment->value_or(*from));
}

VerifyOptions optionsOf(const Job& job, const JobDone& done) {
    std::vector<std::string> faults;
    for (const std::string& text : job.findings)
        faults.push_back(jobFinding(text).fault);
    VerifyOptions options;
    options.runInHours = runInHours(faults, done.greasedOnly);
    return options;
}

}  // namespace

Status HoldFinder::addStrongest(Case& one, const Span& span) {
    const auto weights = fleet_.recordings().weights(one.machine.id, span.from, span.until);
    if (!weights) return fail(weights.error());
    Best best;
    for (const WeightEntry& weight : *weights)
        best.take(weight, 0);
    best.hold(one.holds, KeptFor::Round);
    return {};
}

// Calendar weeks, and besides the seven days that the list of today is made of.
Status HoldFinder::addFindings(Case& one) {
    const auto weights =
        fleet_.recordings().weights(one.machine.id, one.recordings.front().time, one.recordings.back().time);
    if (!weights) return fail(weights.error());
    Best weekly, now;
    for (const WeightEntry& weight : *weights) {
        if (weight.weightDban < kFindingDban) continue;
        const auto clock = clockIn(site_.timeZone, weight.time);
        if (!clock) return fail(clock.error());
        weekly.take(weight, weekOfDay(dayOf(*clock)));
        if (weight.time > newest_ - kNewestWeek - days(1)) now.take(weight, dayOf(*clock));
    }
    weekly.hold(one.holds, KeptFor::Finding);
    now.hold(one.holds, KeptFor::Finding);
    return {};
}

Status HoldFinder::addBaselines(Case& one) {
    const auto machine = fleet_.machines().describedAt(one.machine.tag);
    if (!machine) return fail(machine.error());
    const auto channels = fleet_.trends().channels(one.machine.id);
    if (!channels) return fail(channels.error());
    for (const ChannelEntry& channel : *channels) {
        if (channel.quantity != "acceleration" && channel.quantity != "velocity") continue;
        const auto first = fleet_.trends().first(channel.id);
        if (!first) return fail(first.error());
        if (!*first) continue;
        const auto past = trendPast(fleet_, one.machine.tag, **machine, channel, Quantity::VelocityRms);
        if (!past) return fail(past.error());
        auto& spans = one.holds.baselines[channel.point];
        if (past->baseline) {
            spans.push_back({past->baseline->from,
                             std::max(past->baseline->to, past->baseline->from + kBaselineDays - 1)});
            continue;
        }
        const auto begins =
            baselineBegins(fleet_, site_, one.machine.tag, (*machine)->pointById(channel.point), **first,
                           one.recordings.back().time);
        if (!begins) return fail(begins.error());
        spans.push_back({*begins, *begins + kBaselineReach});
    }
    return {};
}

Status HoldFinder::addJobs(Case& one) {
    const auto jobs = jobs_.find(one.machine.tag);
    if (jobs == jobs_.end()) return {};
    const auto events = fleet_.log().events(one.machine.tag);
    if (!events) return fail(events.error());
    std::optional<MachineRuns> runs;
    for (const Job& job : jobs->second) {
        const auto done = doneOf(job, *events);
        if (!done) continue;
        if (!runs) {
            auto read = MachineRuns::read(fleet_, one.machine.id, site_.timeZone, newest_);
            if (!read) return fail(read.error());
            runs = std::move(*read);
        }
        const auto when = clockIn(site_.timeZone, done->time), known = clockIn(site_.timeZone, newest_);
        if (!when || !known) return fail(when ? known.error() : when.error());
        const VerifyWindow window = verifyWindow(runs->moments(), *when, *known, optionsOf(job, *done));
        for (const auto* side : {&window.before, &window.after})
            for (const Instant moment : *side)
                for (const std::int64_t recording : runs->recordingsAt(moment))
                    one.holds.add(recording, KeptFor::Job, kAllButWaveform);
    }
    return {};
}

}  // namespace fettle
