#include "core/fleet/grams.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/fleet/run_values.h"
#include "core/fleet/site_calendar.h"
#include "core/machine/severity_limits.h"
#include "core/trend/median.h"
#include "core/workshop/balance_solve.h"

namespace fettle {

namespace {

constexpr int kWeek = 7;
constexpr double kMmPerInch = 25.4;

// Of the job's unit in mm/s r.m.s.; 0: cannot be brought to it without more.
double inMmPerS(const std::string& unit) {
    if (unit == "mm/s r.m.s.") return 1;
    return unit == "in/s r.m.s." ? kMmPerInch : 0;
}

// A closed job that was solved, with what it says of its planes.
struct Balanced {
    std::string name;
    BalanceJob job;
    BalanceAnswer answer;
    int day = 0;  // of closing
};

struct Scaled {
    LevelPerGram perGram;
    std::size_t plane = 0;
    double leftBehind = 0;
    bool byCoefficient = false;
};

Result<std::optional<Balanced>> newestJob(FleetFile& fleet, const std::string& tag, const std::string& zone) {
    const auto entries = fleet.workshop().list(tag, "balance");
    if (!entries) return fail(entries.error());
    std::optional<Balanced> newest;
    for (const WorkshopEntry& entry : *entries) {
        if (!entry.closedAt) continue;
        auto job = readBalance(entry.json, entry.name);
        if (!job) continue;  // told where it is opened
        const auto clock = clockIn(zone, *entry.closedAt);
        if (!clock) return fail(clock.error());
        Balanced one{entry.name, std::move(*job), {}, dayOf(*clock)};
        one.answer = solveBalance(one.job);
        if (one.answer.solved && (!newest || one.day > newest->day)) newest = std::move(one);
    }
    return newest;
}

std::vector<DayValue> between(const std::vector<DayValue>& byDay, int from, int to) {
    std::vector<DayValue> some;
    for (const DayValue& day : byDay)
        if (day.day >= from && day.day <= to) some.push_back(day);
    return some;
}

std::optional<double> middleOf(const std::vector<DayValue>& byDay) {
    std::vector<double> values;
    for (const DayValue& day : byDay)
        values.push_back(day.value);
    if (values.empty()) return std::nullopt;
    return medianOf(std::move(values));
}

// The level right after the balancing, as the job has it.
double leftBehindIn(const SensorAnswer& sensor) {
    if (sensor.check) return sensor.check->amount;
    return sensor.predicted ? sensor.predicted->amount : 0;
}

std::optional<Scaled> byCoefficient(const Balanced& balanced, const std::string& channel) {
    const double scale = inMmPerS(balanced.job.unit);
    if (!(scale > 0)) return std::nullopt;
    for (std::size_t s = 0; s < balanced.job.sensors.size(); ++s) {
        if (balanced.job.sensors[s].channel != channel) continue;
        Scaled scaled{{}, 0, scale * leftBehindIn(balanced.answer.sensors[s]), true};
        double most = 0;
        for (std::size_t p = 0; p < balanced.job.planes.size(); ++p) {
            const double here = scale * balanced.answer.perGram(s, p).value_or(0);
            if (here > most) scaled.plane = p;
            most = std::max(most, here);
        }
        if (!(most > 0)) return std::nullopt;
        scaled.perGram = perGramOfJob(most);
        return scaled;
    }
    return std::nullopt;
}

// The sum of what was fitted in the plane, trial masses that stayed with it; grams.
double fittedG(const Balanced& balanced) {
    Phasor sum;
    for (const PlacedMass& one : balanced.answer.planes[0].split.masses)
        sum += massPhasor(one.mass, balanced.job.convention);
    if (balanced.job.trialMasses == TrialMasses::LeftOn && !balanced.job.trials.empty() &&
        balanced.job.trials[0].trial)
        sum += massPhasor(*balanced.job.trials[0].trial, balanced.job.convention);
    return std::abs(sum);
}

std::optional<Scaled> byKnownMass(const Balanced& balanced, const std::vector<DayValue>& byDay) {
    if (balanced.job.planes.size() != 1) return std::nullopt;
    const auto before = middleOf(between(byDay, balanced.day - kWeek, balanced.day - 1));
    const auto after = middleOf(between(byDay, balanced.day + 1, balanced.day + kWeek));
    if (!before || !after) return std::nullopt;
    const auto perGram = perGramOfKnownMass(*before, *after, fittedG(balanced));
    if (!perGram) return std::nullopt;
    return Scaled{*perGram, 0, *after, false};
}

class MassTeller {
  public:
    MassTeller(FleetFile& fleet, const std::string& tag, const SiteSettings& site, const Balanced& balanced)
        : fleet_(fleet), tag_(tag), site_(site), balanced_(balanced) {}

    Result<std::optional<MassNow>> run(const std::string& until) {
        const auto entry = fleet_.machines().byTag(tag_);
        if (!entry) return fail(entry.error());
        const auto last = dayNumber(until);
        if (!last) return fail(last.error());
        last_ = *last;
        auto described = fleet_.machines().describedOn(tag_, until);
        if (!described) return fail(described.error());
        machine_ = std::move(*described);
        if (auto good = findSince(); !good) return fail(good.error());
        const auto channels = fleet_.trends().channels(entry->id);
        if (!channels) return fail(channels.error());
        std::optional<MassNow> best;
        for (const ChannelEntry& channel : *channels) {
            auto one = of(channel);
            if (!one) return fail(one.error());
            if (*one && (!best || better(**one, *best))) best = std::move(*one);
        }
        if (best) best->sentence = words(*best);
        return best;
    }

  private:
    static bool better(const MassNow& a, const MassNow& b) {
        if (a.byCoefficient != b.byCoefficient) return a.byCoefficient;
        return a.levelMmS > b.levelMmS;
    }

    // Build-up counts from the balancing or the last cleaning after it.
    Status findSince() {
        since_ = balanced_.day + 1;
        const auto events = fleet_.log().events(tag_);
        if (!events) return fail(events.error());
        for (const Event& event : *events) {
            if (event.kind != "cleaning") continue;
            const auto clock = clockIn(site_.timeZone, event.time);
            if (!clock) return fail(clock.error());
            if (dayOf(*clock) <= last_) since_ = std::max(since_, dayOf(*clock) + 1);
        }
        return {};
    }

    Result<std::optional<MassNow>> of(const ChannelEntry& channel) {
        // Nothing before the week ahead of the balancing is asked for; a day of a zone may begin a day
        // earlier.
        const int first = std::min(balanced_.day, last_) - kWeek - 1;
        const auto runs =
            ChannelRuns::read(fleet_, channel, site_.timeZone, Instant(std::chrono::days(first)),
                              Instant(std::chrono::days(last_ + 2)));
        if (!runs) return fail(runs.error());
        const auto values = runs->of(fleet_, Quantity::Order1);
        if (!values) return fail(values.error());
        std::vector<RunValue> week;
        for (const RunValue& value : *values)
            if (dayOf(value.time) > last_ - kWeek && dayOf(value.time) <= last_) week.push_back(value);
        const auto usual = usualCondition(week);
        if (!usual) return std::nullopt;
        const std::vector<DayValue> byDay = between(likeDays(*values, *usual), 0, last_);
        const std::string where = channel.point + " " + channel.name;
        auto scaled = byCoefficient(balanced_, where);
        if (!scaled) scaled = byKnownMass(balanced_, byDay);
        if (!scaled || last_ <= balanced_.day) return std::nullopt;
        return massOfChannel(channel, where, byDay, *scaled);
    }

    std::optional<MassNow> massOfChannel(const ChannelEntry& channel, const std::string& where,
                                         const std::vector<DayValue>& byDay, const Scaled& scaled) {
        const std::vector<DayValue> week = between(byDay, std::max(last_ - kWeek + 1, since_), last_);
        const auto level = middleOf(week);
        if (!level) return std::nullopt;
        const BalancePlane& plane = balanced_.job.planes[scaled.plane];
        MassNow now;
        now.job = balanced_.name;
        now.balancedOn = dateOfDay(balanced_.day);
        now.where = where;
        now.plane = plane.name;
        now.radiusMm = plane.radiusMm;
        now.byCoefficient = scaled.byCoefficient;
        now.day = week.back().day;
        now.levelMmS = *level;
        now.mass = massOf(*level, scaled.perGram, scaled.leftBehind);
        for (DayValue day : between(byDay, since_, last_)) {
            day.value /= scaled.perGram.value;
            now.days.push_back(day);
        }
        now.growth = growthOf(now.days);
        addLimit(channel, scaled, now);
        return now;
    }

    void addLimit(const ChannelEntry& channel, const Scaled& scaled, MassNow& now) {
        const Point* point = machine_->pointById(channel.point);
        const auto limits =
            point ? limitsFor(*machine_, *point) : Result<ApplicableLimits>(ApplicableLimits{});
        if (!limits || limits->sets.empty()) return;
        const double* boundary = limits->sets.front().velocity;
        const std::size_t next = now.levelMmS < boundary[1] ? 1 : 2;
        now.limitG = boundary[next] / scaled.perGram.value;
        now.limitName = fmt::format("{} {:g} mm/s", next == 1 ? "B/C" : "C/D", boundary[next]);
        if (now.growth && now.growth->perWeek > 0) now.date = forecastLimit(now.days, *now.limitG);
        if (now.date && !now.date->median) now.date.reset();
    }

    static std::string grams(double value) { return fmt::format("{:.{}f} g", value, value < 9.95 ? 1 : 0); }

    static std::string dateWords(const MassNow& now) {
        const std::string median = spelledDate(dateOfDay(*now.date->median));
        const std::string from = spelledDate(dateOfDay(now.date->from.value_or(*now.date->median)));
        const std::string to = now.date->to ? spelledDate(dateOfDay(*now.date->to)) : "an open end";
        const bool soon = now.date->from.value_or(*now.date->median) <= now.day;
        return fmt::format(" At this rate it reaches {} ({}) about {} ({} to {}): clean {}.",
                           grams(*now.limitG), now.limitName, median, from, to,
                           soon ? "at the next chance" : "before " + from);
    }

    static std::string words(const MassNow& now) {
        std::string text = fmt::format(
            "Today's 1x of {:.1f} mm/s at {} is about {} at the {:.0f} mm radius of "
            "{} ({} to {}), by the balancing of {}.",
            now.levelMmS, now.where, grams(now.mass.grams), now.radiusMm, now.plane, grams(now.mass.low),
            grams(now.mass.high), spelledDate(now.balancedOn));
        if (!now.growth) return text;
        const Growth& growth = *now.growth;
        if (growth.low <= 0) return text + " It does not grow clearly.";
        text += fmt::format(" It grows by {} a week ({} to {}).", grams(growth.perWeek), grams(growth.low),
                            grams(growth.high));
        return now.date ? text + dateWords(now) : text;
    }

    FleetFile& fleet_;
    const std::string& tag_;
    const SiteSettings& site_;
    const Balanced& balanced_;
    std::shared_ptr<const Machine> machine_;
    int last_ = 0, since_ = 0;
};

}  // namespace

Result<std::optional<MassNow>> massNow(FleetFile& fleet, const std::string& tag, const std::string& until) {
    const auto site = fleet.site();
    if (!site) return fail(site.error());
    const auto balanced = newestJob(fleet, tag, site->timeZone);
    if (!balanced) return fail(balanced.error());
    if (!*balanced) return std::nullopt;
    std::string last = until;
    if (last.empty()) {
        const auto entry = fleet.machines().byTag(tag);
        if (!entry) return fail(entry.error());
        const auto newest = fleet.recordings().newest(entry->id);
        if (!newest) return fail(newest.error());
        if (!*newest) return std::nullopt;
        const auto date = dateIn(site->timeZone, **newest);
        if (!date) return fail(date.error());
        last = *date;
    }
    return MassTeller(fleet, tag, *site, **balanced).run(last);
}

}  // namespace fettle
