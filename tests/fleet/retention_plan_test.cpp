// The plan asks only for what may go; here it is held against a reference that reads everything and compares
// everything with everything, on fleets made by chance: before anything was thinned, and after it by the same
// rules. Seeds are fixed.
#include <fmt/format.h>

#include <random>

#include "core/fleet/cure_figures.h"
#include "core/fleet/followed_trends.h"
#include "core/fleet/job_done.h"
#include "core/fleet/machine_desk.h"
#include "core/fleet/round_desk.h"
#include "core/fleet/trend_past.h"
#include "core/store/day.h"
#include "tests/fleet/retention_site.h"

namespace fettle::fleet_test {
namespace {

using std::chrono::days;

// By value, so that a loop may run over it.
template <class Value>
Value got(Result<Value> result) {
    EXPECT_TRUE(result);
    return std::move(result.value());
}

class Reference {
  public:
    Reference(FleetFile& fleet, const MachineEntry& machine, const RetentionRules& rules)
        : fleet_(fleet), machine_(machine), rules_(rules), site_(fleet.site().value()) {
        for (const KeptRecording& one : store_test::everyRecording(fleet.path(), machine.id)) {
            const int aged = dayOf(std::min(clock(one.time), clock(nowUtc())));
            const auto at = newest_.try_emplace(one.point, aged).first;
            at->second = std::max(at->second, aged);
            last_ = std::max(last_, one.time);
            if (one.has(KeptKind::Waveform) || one.has(KeptKind::Spectra) || one.has(KeptKind::Examination))
                left_.push_back(one);
        }
    }

    std::array<KindPlan, kKeptKinds> plan() {
        holdRounds(), holdFindings(), holdBaselines(), holdJobs(), holdMoments();
        std::array<KindPlan, kKeptKinds> plan;
        for (const KeptRecording& one : left_)
            for (const KeptKind kind : kAllKept) {
                const auto k = std::size_t(kind);
                if (!one.has(kind)) continue;
                const auto why = reason(one, kind);
                (why ? plan[k].stays[std::size_t(*why)] : plan[k].goes).add(one.bytes[k]);
            }
        return plan;
    }

  private:
    Instant clock(Instant time) const { return clockIn(site_.timeZone, time).value(); }
    int day(const KeptRecording& one) const { return dayOf(clock(one.time)); }

    void hold(std::int64_t id, KeptFor why, bool waveformToo = true) {
        for (std::size_t kind = waveformToo ? 0 : 1; kind < kKeptKinds; ++kind) {
            auto& there = held_[{id, kind}];
            there = there ? std::min(*there, why) : why;
        }
    }
    bool isLeft(std::int64_t id) const {
        return std::any_of(left_.begin(), left_.end(),
                           [&](const KeptRecording& one) { return one.id == id; });
    }
    // Of each fault and place the strongest that is left within [from, until].
    void holdStrongest(Instant from, Instant until, KeptFor why) {
        std::map<std::string, WeightEntry> best;
        for (const WeightEntry& one : got(fleet_.recordings().weights(machine_.id, from, until))) {
            if (one.weightDban < 20 || !isLeft(one.recording)) continue;
            const auto [at, fresh] = best.try_emplace(one.fault + one.at, one);
            if (!fresh && one.weightDban > at->second.weightDban) at->second = one;
        }
        for (const auto& [key, one] : best)
            hold(one.recording, why);
    }
    Instant startOf(int dayNumber) const { return startOfDate(site_.timeZone, dateOfDay(dayNumber)).value(); }

    void holdRounds() {
        for (const auto& round : got(fleet_.retention().roundsWith(machine_.tag))) {
            const Instant from = startOfDate(site_.timeZone, round.from).value();
            const Instant until = startOfDate(site_.timeZone, datePlus(round.until, 1).value()).value() -
                                  std::chrono::milliseconds(1);
            const bool looked = round.urgency != "leave" || round.inSample;
            std::map<std::string, std::int64_t> newest;
            for (const KeptRecording& one : left_) {
                if (one.time < from || one.time > until) continue;
                if (round.open) hold(one.id, KeptFor::Round, looked);
                if (isRunning(one.running)) newest[one.point] = one.id;
            }
            if (!looked) continue;
            for (const auto& [point, id] : newest)
                hold(id, KeptFor::Round);
            holdStrongest(from, until, KeptFor::Round);
            const auto text = fleet_.rounds().examinationJson(round.round, machine_.tag);
            if (!text) continue;
            const Examination week = examinationFromText(*text, "").value();
            for (const Hypothesis& finding : week.findings)
                for (const KeptRecording& one : left_)
                    if (one.time >= from && one.time <= until &&
                        one.file == week.recordings.at(finding.recording).file)
                        hold(one.id, KeptFor::Round);
        }
    }
    void holdFindings() {
        if (left_.empty()) return;
        const int first = weekOfDay(day(left_.front())), last = weekOfDay(day(left_.back()));
        for (int week = first; week <= last; ++week)  // a week of days from Monday, day -3
            holdStrongest(startOf(7 * week - 3), startOf(7 * week + 4) - std::chrono::milliseconds(1),
                          KeptFor::Finding);
        const Instant newest = std::min(fleet_.recordings().newest()->value(), nowUtc());
        const Instant recent = newest - days(8) + std::chrono::milliseconds(1);
        for (int one = dayOf(clock(recent)); one <= dayOf(clock(newest)) + 1; ++one)
            holdStrongest(std::max(startOf(one), recent), startOf(one + 1) - std::chrono::milliseconds(1),
                          KeptFor::Finding);
    }
    void holdBaselines() {
        const auto machine = fleet_.machines().describedAt(machine_.tag).value();
        for (const ChannelEntry& channel : got(fleet_.trends().channels(machine_.id))) {
            const auto first = fleet_.trends().first(channel.id).value();
            if (!first || channel.quantity != "acceleration") continue;
            const auto past =
                trendPast(fleet_, machine_.tag, *machine, channel, Quantity::VelocityRms).value();
            if (past.baseline) {
                baselines_[channel.point].push_back(
                    {past.baseline->from, std::max(past.baseline->to, past.baseline->from + 41)});
                continue;
            }
            const auto period = periodTo(site_, dateIn(site_.timeZone, last_).value()).value();
            const auto segment = segmentStart(fleet_.log().events(machine_.tag).value(),
                                              machine->pointById(channel.point), period)
                                     .value();
            const int begins = std::max(dayOf(clock(*first)), segment.value_or(-1));
            baselines_[channel.point].push_back({begins, begins + 120});
        }
    }
    void holdJobs() {
        const Instant newest = std::min(fleet_.recordings().newest()->value(), nowUtc());
        const auto runs = MachineRuns::read(fleet_, machine_.id, site_.timeZone, Instant{}, newest).value();
        for (const Job& job : got(fleet_.log().jobs(machine_.tag))) {
            const auto done = doneOf(job, fleet_.log().events(machine_.tag).value());
            if (!done) continue;
            VerifyOptions options;
            std::vector<std::string> faults;
            for (const std::string& text : job.findings)
                faults.push_back(jobFinding(text).fault);
            options.runInHours = runInHours(faults, done->greasedOnly);
            const auto window = verifyWindow(runs.moments(), clock(done->time), clock(newest), options);
            for (const auto* side : {&window.before, &window.after})
                for (const Instant moment : *side)
                    for (const std::int64_t id : runs.recordingsAt(moment))
                        hold(id, KeptFor::Job, false);
        }
    }
    void holdMoments() {
        std::vector<Instant> moments;
        for (const Event& event : got(fleet_.log().events(machine_.tag)))
            if (event.kind != "note" && event.kind != "low_battery") moments.push_back(event.time);
        for (const Job& job : got(fleet_.log().jobs(machine_.tag)))
            moments.push_back(job.createdAt);
        for (const Instant moment : moments) {
            std::map<std::string, std::int64_t> before, after;
            for (const KeptRecording& one : left_)
                if (isRunning(one.running) && one.time <= moment) before[one.point] = one.id;
            for (auto one = left_.rbegin(); one != left_.rend(); ++one)
                if (isRunning(one->running) && one->time > moment) after[one->point] = one->id;
            for (const auto* side : {&before, &after})
                for (const auto& [point, id] : *side)
                    hold(id, KeptFor::History);
        }
        for (const Request& request : got(fleet_.requests().list("", true)))
            if (request.recording) hold(*request.recording, KeptFor::Request);
        for (const std::string& path : got(fleet_.retention().refusedPaths()))
            for (const KeptRecording& one : left_)
                if (one.file == path) hold(one.id, KeptFor::Refusal);
    }

    bool isStrongest(const KeptRecording& one, KeptKind kind, bool ofWeek) const {
        return std::none_of(left_.begin(), left_.end(), [&](const KeptRecording& other) {
            const bool together =
                ofWeek ? weekOfDay(day(other)) == weekOfDay(day(one)) : day(other) == day(one);
            return together && other.point == one.point && other.has(kind) && isStronger(other, one);
        });
    }
    std::optional<KeptFor> reason(const KeptRecording& one, KeptKind kind) const {
        const KeepRule& rule = rules_.rule(kind);
        const int age = newest_.at(one.point) - day(one);
        if (age <= rule.allDays) return KeptFor::Young;
        const auto held = held_.find({one.id, std::size_t(kind)});
        if (held != held_.end()) return held->second;
        const bool ofDay = isStrongest(one, kind, false);
        if (const auto spans = baselines_.find(one.point); spans != baselines_.end())
            for (const Holds::Days& span : spans->second)
                if (day(one) >= span.first && day(one) <= span.last && (kind == KeptKind::Spectra || ofDay))
                    return KeptFor::Baseline;
        const int sunday = 7 * weekOfDay(day(one)) + 3;
        const int weekAge = newest_.at(one.point) - sunday;
        if (!rule.dailyDays || weekAge <= rule.allDays + *rule.dailyDays)
            return ofDay ? std::optional(KeptFor::Day) : std::nullopt;
        if (rule.weeklyDays && weekAge > rule.allDays + *rule.dailyDays + *rule.weeklyDays)
            return std::nullopt;
        return isStrongest(one, kind, true) ? std::optional(KeptFor::Week) : std::nullopt;
    }

    FleetFile& fleet_;
    const MachineEntry& machine_;
    const RetentionRules& rules_;
    SiteSettings site_;
    std::vector<KeptRecording> left_;
    std::map<std::string, int> newest_;
    Instant last_{};
    std::map<std::pair<std::int64_t, std::size_t>, std::optional<KeptFor>> held_;
    std::map<std::string, std::vector<Holds::Days>> baselines_;
};

class RetentionPlanned : public MadeHistory {
  protected:
    int chance(int most) { return std::uniform_int_distribution<int>(0, most)(random_); }
    std::string timeOn(const std::string& date) {
        return fmt::format("{}T{:02}:{:02}:00Z", date, chance(23), chance(59));
    }
    std::string dateOf(int day) { return datePlus("2025-12-29", day).value(); }

    // Two points of FN-01, one of FN-02: some days silent, some stopped, loads and levels that change, here
    // and there a fault, some days of levels alone.
    void live(int lastDay) {
        for (int day = 0; day < lastDay; ++day)
            for (const auto& [tag, point] : std::vector<std::pair<const char*, const char*>>{
                     {"FN-01", "P"}, {"FN-01", "Q"}, {"FN-02", "P"}}) {
                std::map<std::string, Heard> times;
                for (int n = chance(4); n > 0; --n) {
                    Heard one;
                    one.point = point;
                    one.velocityMmS = 1 + 0.25 * chance(4);
                    one.raceDban = chance(9) == 0 ? 15 + chance(15) : chance(3) - 3;
                    one.loadPct = chance(9) == 0 ? 30 : 80;
                    if (chance(9) == 0) one.running = "stopped";
                    times[fmt::format("{:02}:{:02}", chance(23), chance(59))] = one;
                }
                hearDaysAt(tag, dateOf(day), dateOf(day), {times.begin(), times.end()});
                if (chance(30) == 0) putLevels(tag, at(timeOn(dateOf(day))));
            }
    }
    void putLevels(const std::string& tag, Instant time) {
        auto raw = std::make_shared<Recording>();
        raw->file = "levels.csv", raw->machine = tag, raw->point = "P", raw->time = time;
        raw->channels = {Channel{"x", "P", "g", 0, {}, 0, 0, 0}};
        NewRecording levels;
        levels.machine = fleet_->machines().byTag(tag)->id;
        levels.key = recordingKey(formatUtc(time), *raw);
        levels.format = kLevelsFormat, levels.levelsOnly = true, levels.running = "running";
        TrendRow row;
        row.channel = "x", row.point = "P", row.quantity = "acceleration", row.unit = "g";
        row.direction = "horizontal", row.time = time, row.running = "running";
        row.values[std::size_t(Quantity::VelocityRms)] = 1.1;
        levels.trends = {row};
        levels.recording = raw;
        ASSERT_TRUE(fleet_->recordings().put(levels));
    }
    void tellThings(int lastDay) {
        for (const char* tag : {"FN-01", "FN-02"}) {
            for (const char* kind : {"inspection", "note", "greasing"})
                tell(tag, timeOn(dateOf(chance(lastDay))), kind);
            const std::string date = dateOf(chance(lastDay));
            job(tag, timeOn(date), "unbalance @ driver");
            tell(tag, timeOn(datePlus(date, chance(9)).value()), "repair", "", "cleaned");
            const auto all = store_test::everyRecording(fleet_->path(), fleet_->machines().byTag(tag)->id);
            Request request;
            request.machine = tag, request.point = "P", request.what = "longer", request.why = "to see";
            const auto id = fleet_->requests().add(request).value();
            ASSERT_TRUE(fleet_->requests().answer(id, all.back().time, all[all.size() / 3].id, "longer"));
            Refusal refusal;
            refusal.path = all[all.size() / 2].file, refusal.rule = "breaks off", refusal.kind = "refused";
            ASSERT_TRUE(fleet_->log().putRefusal(refusal));
        }
        const auto round = openRound(*fleet_, dateOf(lastDay / 2 + chance(6)));
        ASSERT_TRUE(round) << round.error().sentence();
        if (chance(1)) {
            ASSERT_TRUE(fleet_->rounds().close(round->entry.id, "test"));
        }
    }
    KeepRule someRule(int fewest) {
        const auto some = [&](int most) { return chance(2) ? std::optional(chance(most)) : std::nullopt; };
        return {fewest + chance(20), some(30), some(60)};
    }

    void expectAsReference() {
        const RetentionRules rules = fleet_->retention().rules().value();
        const auto plan = planRetention(*fleet_);
        ASSERT_TRUE(plan) << plan.error().sentence();
        const auto machines = fleet_->machines().all().value();
        ASSERT_EQ(plan->machines.size(), machines.size());
        for (std::size_t i = 0; i < machines.size(); ++i) {
            const auto wanted = Reference(*fleet_, machines[i], rules).plan();
            for (const KeptKind kind : kAllKept) {
                const KindPlan &listed = plan->machines[i].kinds[std::size_t(kind)],
                               &want = wanted[std::size_t(kind)];
                SCOPED_TRACE(machines[i].tag + " " + inWords(kind, rules.rule(kind)));
                expectSame(listed.goes, want.goes, "goes");
                for (std::size_t why = 0; why < kReasons; ++why)
                    expectSame(listed.stays[why], want.stays[why], keyOf(KeptFor(why)));
            }
        }
    }
    static void expectSame(const Amount& got, const Amount& want, const char* what) {
        EXPECT_EQ(got.recordings, want.recordings) << what;
        EXPECT_EQ(got.bytes, want.bytes) << what;
    }

    std::mt19937 random_;
};

TEST_F(RetentionPlanned, AsAReferenceThatReadsEverythingHasIt) {
    std::size_t gone = 0;
    for (unsigned seed = 1; seed <= 6; ++seed) {
        SCOPED_TRACE(seed);
        random_.seed(seed);
        begin(fmt::format("fleet{}", seed));
        if (seed % 2) {
            ASSERT_TRUE(fleet_->setSite({"Test works", "Europe/London", 0.1}));
        }
        const int lastDay = 60 + chance(80);
        live(lastDay);
        tellThings(lastDay);
        RetentionRules rules;
        rules.of = {someRule(1), someRule(1), someRule(8)};
        ASSERT_TRUE(fleet_->retention().setRules(rules));
        expectAsReference();
        const auto done = applyRetention(*fleet_);
        ASSERT_TRUE(done) << done.error().sentence();
        gone += done->all().recordings;
        expectAsReference();
        EXPECT_EQ(planRetention(*fleet_)->goes().recordings, 0u);
        // Weeks later, with more that was told.
        hearDays("FN-01", dateOf(lastDay + 20), dateOf(lastDay + 25), {});
        hearDays("FN-02", dateOf(lastDay + 1), dateOf(lastDay + 25), {});
        tell("FN-01", timeOn(dateOf(lastDay / 3)), "inspection", "", "told late");
        expectAsReference();
    }
    EXPECT_GT(gone, 1000u);
}

}  // namespace
}  // namespace fettle::fleet_test
