// What findings, baselines and verified jobs stand on.
#include <algorithm>

#include "core/diagnosis/settings.h"
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

const double kFindingDban = WeighingSettings().findingDban;
constexpr int kBaselineDays = 42,
              kDaysToBaseline = 120;  // days, as core/trend/baseline.h; looked for that far
constexpr days kNewestWeek{7};
// The week before the work lies within so many days (core/round/verify_window.h), and what counts after it
// mostly too.
constexpr days kJobLooksBack{50}, kJobLooksOn{60};

// Of each fault and place the recording that weighs most, of those that reach a finding's weight.
class Best {
  public:
    void take(const WeightEntry& one, int span) {
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

Status HoldFinder::readWeights(Case& one) {
    auto weights = fleet_.retention().weights(one.machine.id, one.kept.recordings, kFindingDban,
                                              *one.kept.last - days(kLatelyDays));
    if (!weights) return fail(weights.error());
    one.weights = std::move(*weights);
    return {};
}

void HoldFinder::addStrongest(Case& one, const Span& span) const {
    Best best;
    for (const WeightEntry& weight : one.weights)
        if (span.holds(weight.time)) best.take(weight, 0);
    best.hold(one.holds, KeptFor::Round);
}

// Calendar weeks, and besides the seven days that the list of today is made of.
Status HoldFinder::addFindings(Case& one) {
    auto clock = SiteClock::of(site_.timeZone);
    if (!clock) return fail(clock.error());
    Best weekly, now;
    for (const WeightEntry& weight : one.weights) {
        const int day = dayOf(clock->at(weight.time));
        weekly.take(weight, weekOfDay(day));
        if (weight.time > newest_ - kNewestWeek - days(1)) now.take(weight, day);
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
        const auto found = baselineDays(fleet_, one.machine.tag, **machine, channel);
        if (!found) return fail(found.error());
        auto& spans = one.holds.baselines[channel.point];
        if (*found) {
            spans.push_back({(*found)->first, std::max((*found)->last, (*found)->first + kBaselineDays - 1)});
            continue;
        }
        const auto begins = baselineBegins(fleet_, site_, one.machine.tag,
                                           (*machine)->pointById(channel.point), **first, *one.kept.last);
        if (!begins) return fail(begins.error());
        spans.push_back({*begins, *begins + kDaysToBaseline});
    }
    return {};
}

// Of the time around the work as much as it takes: where the machine stood afterwards, up to its next run.
Result<HoldFinder::Verified> HoldFinder::verifiedBy(const Case& one, Instant done,
                                                    const VerifyOptions& options) const {
    auto clock = SiteClock::of(site_.timeZone);
    if (!clock) return fail(clock.error());
    const std::chrono::hours longest(int(options.longestHours));
    for (auto reach = kJobLooksOn;; reach *= 2) {
        const Instant until = std::min(newest_, done + reach);
        auto runs = MachineRuns::read(fleet_, one.machine.id, site_.timeZone, done - kJobLooksBack, until);
        if (!runs) return fail(runs.error());
        VerifyWindow window = verifyWindow(runs->moments(), clock->at(done), clock->at(newest_), options);
        const bool whole = until == newest_ || window.state == VerifyState::NothingBefore ||
                           (window.runInEnds && *window.runInEnds + longest <= clock->at(until));
        if (whole) return Verified{std::move(*runs), std::move(window)};
    }
}

Status HoldFinder::addJobs(Case& one) {
    const auto jobs = jobs_.find(one.machine.tag);
    if (jobs == jobs_.end()) return {};
    const auto events = fleet_.log().events(one.machine.tag);
    if (!events) return fail(events.error());
    for (const Job& job : jobs->second) {
        const auto done = doneOf(job, *events);
        if (!done) continue;
        const auto verified = verifiedBy(one, done->time, optionsOf(job, *done));
        if (!verified) return fail(verified.error());
        for (const auto* side : {&verified->window.before, &verified->window.after})
            for (const Instant moment : *side)
                for (const std::int64_t recording : verified->runs.recordingsAt(moment))
                    one.holds.add(recording, KeptFor::Job, kAllButWaveform);
    }
    return {};
}

}  // namespace fettle
