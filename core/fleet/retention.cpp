#include "core/fleet/retention.h"

#include <algorithm>
#include <thread>

#include "core/base/text.h"
#include "core/fleet/retention_holds.h"
#include "core/fleet/site_calendar.h"
#include "core/fleet/who.h"
#include "core/store/day.h"

namespace fettle {

namespace {

using std::chrono::days;

constexpr double kYearDays = 365;
constexpr double kSpectrumBytes = 800;
constexpr double kSpanBytes = 830, kSpansADay = 6;  // of four hours; a day's own besides
// Others that wait for their turn ask again every few milliseconds.
constexpr std::chrono::milliseconds kPause{4};

Error stopped(const FleetFile& fleet) {
    return {ErrorKind::Cancelled, fleet.path(), "", "stopped on request"};
}

struct Looked {
    KeptOfMachine kept;  // but for its recordings, which are:
    Aged aged;
    std::vector<Choice> choices;
    const std::vector<KeptRecording>& recordings() const { return aged.recordings; }
};

Result<Aged> agedOf(FleetFile& fleet, KeptOfMachine& kept) {
    const auto site = fleet.site();
    if (!site) return fail(site.error());
    auto clock = SiteClock::of(site->timeZone);
    if (!clock) return fail(clock.error());
    Aged aged;
    for (const KeptRecording& one : kept.recordings)
        aged.clocks.push_back(clock->at(one.time));
    for (const auto& [point, time] : kept.newest)
        aged.newest[point] = clock->at(time);
    aged.now = clock->at(nowUtc());
    aged.recordings = std::move(kept.recordings);
    return aged;
}

Result<Looked> lookAt(FleetFile& fleet, HoldFinder& holds, const StillThere& there,
                      const MachineEntry& machine, const RetentionRules& rules) {
    Looked looked;
    auto kept = fleet.retention().kept(machine.id, there, kLatelyDays);
    if (!kept) return fail(kept.error());
    const auto held = holds.of(machine, *kept);
    if (!held) return fail(held.error());
    auto aged = agedOf(fleet, *kept);
    if (!aged) return fail(aged.error());
    for (const std::size_t i : contested(*aged, rules, *held))
        if (auto good = fleet.retention().rank(machine.id, aged->recordings[i]); !good)
            return fail(good.error());
    looked.choices = chooseKept(*aged, rules, *held);
    looked.kept = std::move(*kept), looked.aged = std::move(*aged);
    return looked;
}

// How many of a year's recordings a rule leaves of one point.
double keptOfYear(const KeepRule& rule, double aDay) {
    double left = kYearDays, kept = 0;
    const auto spend = [&](double span, double each) {
        const double part = std::min(left, span);
        kept += part * each;
        left -= part;
    };
    spend(rule.allDays, aDay);
    spend(rule.dailyDays ? *rule.dailyDays : kYearDays, std::min(aDay, 1.0));
    spend(rule.weeklyDays ? *rule.weeklyDays : kYearDays, std::min(aDay, 1.0 / 7));
    return kept;
}

using Amounts = std::array<Amount, kKeptKinds>;

Amounts amountsSince(const std::vector<KeptRecording>& recordings, Instant from) {
    Amounts amounts;
    for (const KeptRecording& one : recordings)
        for (const KeptKind kind : kAllKept)
            if (one.time > from && one.has(kind))
                amounts[std::size_t(kind)].add(one.bytes[std::size_t(kind)]);
    return amounts;
}

Result<YearEstimate> estimateOf(FleetFile& fleet, const MachineEntry& machine, const Looked& looked,
                                const RetentionRules& rules) {
    YearEstimate year;
    const Instant from = *looked.kept.last - days(kLatelyDays);
    const auto points = double(looked.kept.latelyPoints.size());
    const double aDay = double(looked.kept.lately) / kLatelyDays / points;
    const auto each = fleet.retention().trendBytesEach(machine.id, from);
    if (!each) return fail(each.error());
    const Amounts lately = amountsSince(looked.recordings(), from);
    year.recordings = aDay * kYearDays * points;
    year.foreverBytes = year.recordings * *each;
    for (const KeptKind kind : kAllKept) {
        const Amount& amount = lately[std::size_t(kind)];
        if (amount.recordings == 0) continue;
        const double bytes = double(amount.bytes) / double(amount.recordings);
        year.bytes[std::size_t(kind)] = points * keptOfYear(rules.rule(kind), aDay) * bytes;
        if (kind == KeptKind::Spectra)
            year.foreverBytes += points * kYearDays * (std::min(aDay, kSpansADay) + std::min(aDay, 1.0)) *
                                 (bytes / kSpectrumBytes) * kSpanBytes;
    }
    return year;
}

MachinePlan planOf(const std::string& tag, const Looked& looked) {
    MachinePlan plan{tag, {}, {}};
    for (std::size_t i = 0; i < looked.recordings().size(); ++i)
        for (std::size_t kind = 0; kind < kKeptKinds; ++kind) {
            const std::int64_t bytes = looked.recordings()[i].bytes[kind];
            if (bytes == 0) continue;
            const auto& why = looked.choices[i][kind];
            (why ? plan.kinds[kind].stays[std::size_t(*why)] : plan.kinds[kind].goes).add(bytes);
        }
    return plan;
}

class Applier {
  public:
    Applier(FleetFile& fleet, const RetentionOptions& options)
        : fleet_(fleet), options_(options), holds_(fleet) {}

    Result<RetentionDone> run();

  private:
    Status readStanding();
    Status thinMachine(const MachineEntry& machine);
    // False: somebody did something since the machine was looked at.
    Result<bool> thinOnce(const MachineEntry& machine);
    Result<bool> thinBatch(std::span<const Thinning> batch);
    Status beginOnce();
    void count(const Looked& looked, const std::vector<std::size_t>& places, std::span<const Thinning> batch);

    FleetFile& fleet_;
    const RetentionOptions& options_;
    HoldFinder holds_;
    StillThere there_;
    RetentionRules rules_;
    std::string standing_;
    std::int64_t run_ = 0;
    RetentionDone done_;
};

Status Applier::readStanding() {
    const auto standing = fleet_.retention().standing();
    if (!standing) return fail(standing.error());
    standing_ = *standing;
    const auto rules = fleet_.retention().rules();
    if (!rules) return fail(rules.error());
    rules_ = *rules;
    return holds_.read();
}

std::string wordsOf(const RetentionRules& rules) {
    std::vector<std::string> words;
    for (const KeptKind kind : kAllKept)
        words.push_back(inWords(kind, rules.rule(kind)));
    return joined(words, "; ");
}

Status Applier::beginOnce() {
    if (run_ != 0) return {};
    const auto run = fleet_.retention().beginRun(orLoginName(options_.by), wordsOf(rules_));
    if (!run) return fail(run.error());
    run_ = *run;
    return {};
}

Result<bool> Applier::thinBatch(std::span<const Thinning> batch) {
    bool stale = false;
    const std::int64_t runBefore = run_;
    const auto written = fleet_.together([&]() -> Status {
        const auto standing = fleet_.retention().standing();
        if (!standing) return fail(standing.error());
        stale = *standing != standing_;
        if (stale) return {};
        if (auto good = beginOnce(); !good) return good;
        return fleet_.retention().thin(run_, batch);
    });
    if (written) return !stale;
    run_ = runBefore;
    return fail(written.error());
}

void Applier::count(const Looked& looked, const std::vector<std::size_t>& places,
                    std::span<const Thinning> batch) {
    for (std::size_t n = 0; n < batch.size(); ++n)
        for (std::size_t kind = 0; kind < kKeptKinds; ++kind)
            if (batch[n].takes[kind]) done_.taken[kind].add(looked.recordings()[places[n]].bytes[kind]);
}

Result<bool> Applier::thinOnce(const MachineEntry& machine) {
    const auto looked = lookAt(fleet_, holds_, there_, machine, rules_);
    if (!looked) return fail(looked.error());
    std::vector<Thinning> list;
    std::vector<std::size_t> places;  // in `looked`, of each
    bool spectra = false;
    for (std::size_t i = 0; i < looked->recordings().size(); ++i) {
        const KeptRecording& recording = looked->recordings()[i];
        Thinning one{recording.id, {}};
        for (const KeptKind kind : kAllKept)
            one.takes[std::size_t(kind)] = recording.has(kind) && !looked->choices[i][std::size_t(kind)];
        if (std::none_of(one.takes.begin(), one.takes.end(), [](bool takes) { return takes; })) continue;
        spectra |= one.takes[std::size_t(KeptKind::Spectra)];
        list.push_back(one);
        places.push_back(i);
    }
    if (spectra)
        if (auto good = fleet_.retention().buildSpans(machine.id); !good) return fail(good.error());
    for (std::size_t at = 0; at < list.size() && !options_.cancel.cancelled(); at += options_.batch) {
        const std::size_t size = std::min(options_.batch, list.size() - at);
        const std::span<const Thinning> batch(list.data() + at, size);
        const auto fresh = thinBatch(batch);
        if (!fresh) return fail(fresh.error());
        if (!*fresh) return false;
        for (const Thinning& one : batch)
            there_.take(machine.id, one);  // should the machine be looked at again
        count(*looked, {places.begin() + long(at), places.begin() + long(at + size)}, batch);
        if (options_.afterBatch) options_.afterBatch();
        std::this_thread::sleep_for(kPause);
    }
    return true;
}

Status Applier::thinMachine(const MachineEntry& machine) {
    while (!options_.cancel.cancelled()) {
        const auto whole = thinOnce(machine);
        if (!whole) return fail(whole.error());
        if (*whole) return {};
        ++done_.lookedAgain;
        if (auto good = readStanding(); !good) return good;
    }
    return {};
}

Result<RetentionDone> Applier::run() {
    const auto before = fleet_.retention().space();
    if (!before) return fail(before.error());
    done_.before = *before;
    if (auto good = readStanding(); !good) return fail(good.error());
    auto there = fleet_.retention().stillThere(options_.progress, options_.cancel);
    if (!there && there.error().kind != ErrorKind::Cancelled) return fail(there.error());
    if (there) there_ = std::move(*there);
    const auto machines = fleet_.machines().all();
    if (!machines) return fail(machines.error());
    for (std::size_t i = 0; i < machines->size() && !options_.cancel.cancelled(); ++i) {
        if (options_.progress) options_.progress(i, machines->size(), (*machines)[i].tag);
        if (auto good = thinMachine((*machines)[i]); !good) return fail(good.error());
    }
    done_.cancelled = options_.cancel.cancelled();
    if (!done_.cancelled)
        if (auto good = fleet_.retention().giveBack(options_.progress, options_.cancel); !good)
            return fail(good.error());
    const auto after = fleet_.retention().space();
    if (!after) return fail(after.error());
    done_.after = *after;
    return done_;
}

}  // namespace

Amount KindPlan::kept() const {
    Amount all;
    for (const Amount& one : stays)
        all.add(one);
    return all;
}

void KindPlan::add(const KindPlan& more) {
    goes.add(more.goes);
    for (std::size_t i = 0; i < kReasons; ++i)
        stays[i].add(more.stays[i]);
}

Amount MachinePlan::goes() const {
    Amount all;
    for (const KindPlan& kind : kinds)
        all.add(kind.goes);
    return all;
}

KindPlan RetentionPlan::total(KeptKind kind) const {
    KindPlan all;
    for (const MachinePlan& machine : machines)
        all.add(machine.kinds[std::size_t(kind)]);
    return all;
}

Amount RetentionPlan::goes() const {
    Amount all;
    for (const MachinePlan& machine : machines)
        all.add(machine.goes());
    return all;
}

YearEstimate RetentionPlan::meanYear() const {
    YearEstimate mean;
    const auto count = double(std::count_if(machines.begin(), machines.end(),
                                            [](const MachinePlan& one) { return one.year.recordings > 0; }));
    for (const MachinePlan& one : machines) {
        for (std::size_t kind = 0; kind < kKeptKinds; ++kind)
            mean.bytes[kind] += one.year.bytes[kind] / count;
        mean.foreverBytes += one.year.foreverBytes / count;
        mean.recordings += one.year.recordings / count;
    }
    return mean;
}

Amount RetentionDone::all() const {
    Amount sum;
    for (const Amount& one : taken)
        sum.add(one);
    return sum;
}

Result<RetentionPlan> planRetention(FleetFile& fleet, const std::optional<RetentionRules>& rules,
                                    const Progress& progress, const CancelToken& cancel) {
    RetentionPlan plan;
    auto kept = rules ? Result<RetentionRules>(*rules) : fleet.retention().rules();
    if (!kept) return fail(kept.error());
    if (auto good = checkRules(*kept); !good) return fail(good.error());
    plan.rules = *kept;
    HoldFinder holds(fleet);
    if (auto good = holds.read(); !good) return fail(good.error());
    const auto there = fleet.retention().stillThere(progress, cancel);
    if (!there) return fail(there.error());
    const auto machines = fleet.machines().all();
    if (!machines) return fail(machines.error());
    for (std::size_t i = 0; i < machines->size(); ++i) {
        if (cancel.cancelled()) return fail(stopped(fleet));
        if (progress) progress(i, machines->size(), (*machines)[i].tag);
        const auto looked = lookAt(fleet, holds, *there, (*machines)[i], plan.rules);
        if (!looked) return fail(looked.error());
        if (!looked->kept.last) continue;
        MachinePlan one = planOf((*machines)[i].tag, *looked);
        const auto year = estimateOf(fleet, (*machines)[i], *looked, plan.rules);
        if (!year) return fail(year.error());
        one.year = *year;
        plan.machines.push_back(std::move(one));
    }
    const auto space = fleet.retention().space();
    if (!space) return fail(space.error());
    plan.space = *space;
    return plan;
}

Result<RetentionDone> applyRetention(FleetFile& fleet, const RetentionOptions& options) {
    if (!fleet.writable()) return fail(ErrorKind::Unwritable, fleet.path(), "", fleet.word());
    return Applier(fleet, options).run();
}

}  // namespace fettle
