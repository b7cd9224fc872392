#include "core/fleet/machine_week.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "core/base/text.h"
#include "core/diagnosis/sensor_checks.h"
#include "core/fleet/followed_trends.h"
#include "core/fleet/machine_desk.h"
#include "core/fleet/site_calendar.h"
#include "core/round/evidence.h"
#include "core/round/judge.h"
#include "core/trend/median.h"

namespace fettle {

namespace {

using std::chrono::days;

constexpr days kLateLooksBack{35};  // late recordings are told for weeks not older than this
constexpr days kToldLooksBack{60};  // an event explains silence for so long
constexpr days kNewestLooksBack{400};

void addLevel(Governing& g, int firstDay) {
    if (g.days.empty()) return;
    std::vector<double> now;
    for (const DayValue& day : g.days)
        if (day.day >= firstDay) now.push_back(day.value);
    g.inPeriod = !now.empty();
    g.level = g.inPeriod ? medianOf(std::move(now)) : g.days.back().value;
}

// A point that names no nodes does not say that there is none.
bool isFitted(const Point& point, const std::string& firstDay, const std::string& lastDay) {
    return point.nodes.empty() ||
           std::any_of(point.nodes.begin(), point.nodes.end(), [&](const FittedNode& node) {
               return node.from <= lastDay && (node.to.empty() || node.to >= firstDay);
           });
}

void addZone(const Machine& machine, const Point& point, Governing& g) {
    const auto limits = limitsFor(machine, point);
    if (!limits || limits->sets.empty() || !g.level) return;
    g.limits = limits->sets.front();
    if (limits->sets.size() > 1) g.otherLimits = limits->sets[1];
    if (g.otherLimits && g.otherLimits->velocity[1] < g.limits->velocity[1])
        std::swap(g.limits, g.otherLimits);
    g.indicative = limits->indicative;
    const Zone zone = zoneOf(*g.level, *g.limits);
    g.limit = g.limits->velocity[std::min(int(zone), 2)];
    if (g.inPeriod) g.zone = toText(zone);
}

// Worse first: zone, share of the B/C limit, level; a channel that said nothing in the period comes after
// those that did, a retired one after all.
auto badness(const Governing& g) {
    const double level = g.level.value_or(-1);
    return std::tuple(!g.retired, g.inPeriod, g.zone, g.limits ? level / g.limits->velocity[1] : 0, level);
}

Result<Governing> channelLevel(FleetFile& fleet, const ChannelEntry& channel, const Machine& described,
                               const Period& period) {
    const auto trend = fleet.trends().trend(channel.id, Quantity::VelocityRms,
                                            period.end - days(7 * kStripWeeks), period.last());
    if (!trend) return fail(trend.error());
    std::vector<TimedValue> values;
    for (const TrendPoint& p : *trend)
        if (isRunning(p.running)) values.push_back({p.time, p.value});
    for (TimedValue& value : values) {
        const auto clock = clockIn(period.timeZone, value.time);
        if (!clock) return fail(clock.error());
        value.time = *clock;
    }
    const auto firstDay = dayNumber(period.firstDay);
    if (!firstDay) return fail(firstDay.error());
    Governing g;
    g.title = channel.point + " " + channel.name + " velocity r.m.s.";
    g.point = channel.point;
    g.channel = channel.name;
    g.days = dailyMedians(values);
    addLevel(g, *firstDay);
    const Point* point = described.pointById(g.point);
    g.retired = !point || !isFitted(*point, period.firstDay, period.lastDay);
    if (!g.retired) addZone(described, *point, g);
    return g;
}

std::string checkWords(const std::string& code) {
    if (code == "ski_slope") return "drowned below 10 Hz";  // of a node that sits loosely, or was knocked
    if (code == "held") return "repeated samples";
    return code;
}

// "clipped on x", "drowned below 10 Hz on y".
std::set<std::string> failedChecks(const Examination& one) {
    std::set<std::string> failed;
    for (const RecordingFacts& r : one.recordings)
        for (const QualityNote& note : r.quality) {
            if (!speaksOfSensor(note.code)) continue;
            failed.insert(checkWords(note.code) + " on " + note.channel);
        }
    return failed;
}

// A recording of the standing machine that fails does not speak against one of the running machine.
void addFailed(const std::vector<OneWeighed>& all, MachineWeek& week) {
    const bool turns =
        std::any_of(all.begin(), all.end(), [](const OneWeighed& one) { return isRunning(one.running); });
    std::set<std::string> checks;
    for (const OneWeighed& one : all) {
        const std::set<std::string> failed = failedChecks(one.examination);
        const bool counts = !turns || isRunning(one.running);
        if (counts && !failed.empty()) {
            ++week.poor;
            checks.insert(failed.begin(), failed.end());
        }
        week.unknown += failed.empty() && one.running == "unknown";
    }
    week.failedChecks.assign(checks.begin(), checks.end());
}

// The last recording up to the end of the period, and how many came after their round was closed.
Status addRecordings(FleetFile& fleet, std::int64_t machine, const Period& period, MachineWeek& week) {
    const auto all = fleet.recordings().heads(machine, period.from - kLateLooksBack, period.last());
    if (!all) return fail(all.error());
    for (const RecordingHead& r : *all) {
        week.newest = r.time;
        week.recordings += r.time >= period.from;
        week.levels += r.time >= period.from && r.levelsOnly;
        week.lateRecordings += r.late;
    }
    if (week.newest) return {};
    const auto newest = fleet.recordings().newest(machine);
    if (!newest) return fail(newest.error());
    if (*newest && **newest < period.end) {
        week.newest = *newest;
        return {};
    }
    const auto before = fleet.recordings().heads(machine, period.from - kNewestLooksBack, period.last());
    if (!before) return fail(before.error());
    if (!before->empty()) week.newest = before->back().time;
    return {};
}

bool isFittedAnywhere(const Machine& machine, const std::string& day) {
    return std::any_of(machine.points.begin(), machine.points.end(),
                       [&](const Point& point) { return isFitted(point, day, day); });
}

void addTold(const std::vector<Event>& events, const Period& period, MachineWeek& week) {
    for (const Event& event : events) {
        if (event.time < period.end - kToldLooksBack) continue;
        if (week.newest && event.time + days(1) < *week.newest) continue;  // it was heard again
        if (event.kind == "low_battery") week.told = "low_battery";
        if (event.kind == "moved_node") week.told = "moved";
    }
}

std::string workWord(const std::string& kind) {
    static const std::map<std::string, std::string> words{
        {"repair", "repaired"},  {"greasing", "greased"},        {"part", "part changed"},
        {"cleaning", "cleaned"}, {"moved_node", "sensor moved"}, {"inspection", "inspected"}};
    const auto found = words.find(kind);
    return found == words.end() ? "" : found->second;
}

Status addEvents(FleetFile& fleet, const Period& period, Instant workSince, MachineWeek& week) {
    auto events = fleet.log().events(week.tag);
    if (!events) return fail(events.error());
    std::erase_if(*events, [&](const Event& event) { return event.time >= period.end; });
    addTold(*events, period, week);
    std::vector<std::string> done;
    for (const Event& event : *events) {
        const std::string word = workWord(event.kind);
        const auto date = dateIn(period.timeZone, event.time);
        if (!word.empty() && event.time >= workSince && date) done.push_back(word + " on " + *date);
    }
    week.workDone = joined(done, ", ");
    return {};
}

// The week's examinations: poor ones counted, running ones joined.
Status addExaminations(FleetFile& fleet, const MachineEntry& machine, const Period& period,
                       const std::shared_ptr<const Machine>& described, MachineWeek& week) {
    auto all = weighedIn(fleet, machine.id, period.from, period.last());
    if (!all) return fail(all.error());
    addFailed(*all, week);
    auto span = joinRunning(described, std::move(*all));
    if (!span) return fail(span.error());
    if (!*span) return {};
    week.turning = (*span)->recordingIds.size();
    week.week = std::move((*span)->examination);
    return {};
}

// Level, zone and what changed against the baseline: all that needs no examination.
Status addHistory(FleetFile& fleet, const MachineEntry& machine, const Machine& described,
                  const Period& period, MachineWeek& week) {
    auto governing = governingOf(fleet, machine, described, period);
    if (!governing) return fail(governing.error());
    week.governing = std::move(governing->title);
    week.days = std::move(governing->days);
    week.limit = governing->limit;
    week.zone = governing->zone;
    if (governing->limits && !week.zone.empty())
        week.zoneBy = {week.zone, governing->limits->basis, week.limit, governing->indicative,
                       governing->limits->greyOnly};
    auto followed = followedTrends(fleet, machine, described, period);
    if (!followed) return fail(followed.error());
    week.changes = std::move(followed->changes);
    week.dependences = std::move(followed->dependences);
    return {};
}

MachineWeek headOf(const MachineEntry& machine) {
    MachineWeek week;
    week.tag = machine.tag;
    week.asset = machine.asset;
    week.service = machine.service;
    week.area = machine.area;
    if (!machine.criticality.empty()) week.criticality = machine.criticality;
    week.standby = machine.standby;
    week.byHand = machine.byHand;
    week.byHandWhy = machine.byHandWhy;
    return week;
}

}  // namespace

Result<Period> periodTo(const SiteSettings& site, const std::string& until, int count) {
    Period period;
    period.lastDay = until;
    period.timeZone = site.timeZone;
    const auto first = datePlus(until, 1 - count), after = datePlus(until, 1);
    if (!first) return fail(first.error());
    period.firstDay = *first;
    const auto from = startOfDate(site.timeZone, *first), end = startOfDate(site.timeZone, *after);
    if (!from) return fail(from.error());
    if (!end) return fail(end.error());
    period.from = *from;
    period.end = *end;
    return period;
}

Result<Governing> governingOf(FleetFile& fleet, const MachineEntry& machine, const Machine& described,
                              const Period& period) {
    const auto channels = fleet.trends().channels(machine.id);
    if (!channels) return fail(channels.error());
    Governing worst;
    for (const ChannelEntry& channel : *channels) {
        if (channel.quantity == "flux" || channel.quantity == "temperature") continue;
        auto one = channelLevel(fleet, channel, described, period);
        if (!one) return fail(one.error());
        if (one->level && (!worst.level || badness(*one) > badness(worst))) worst = std::move(*one);
    }
    return worst;
}

Result<MachineWeek> machineWeek(FleetFile& fleet, const MachineEntry& machine, const Period& period,
                                Instant workSince) {
    const auto described = fleet.machines().describedOn(machine.tag, period.lastDay);
    if (!described) return fail(described.error());
    MachineWeek week = headOf(machine);
    week.fitted = isFittedAnywhere(**described, period.lastDay);
    if (auto good = addRecordings(fleet, machine.id, period, week); !good) return fail(good.error());
    if (auto good = addEvents(fleet, period, workSince, week); !good) return fail(good.error());
    if (auto good = addExaminations(fleet, machine, period, *described, week); !good)
        return fail(good.error());
    if (auto good = addHistory(fleet, machine, **described, period, week); !good) return fail(good.error());
    return week;
}

Result<std::vector<RoundFinding>> changesOfWeek(FleetFile& fleet, const MachineEntry& machine,
                                                const Machine& described, const Period& period,
                                                const Examination& examination) {
    MachineWeek week = headOf(machine);
    if (auto good = addHistory(fleet, machine, described, period, week); !good) return fail(good.error());
    RoundSettings settings;
    settings.from = period.firstDay;
    settings.until = period.lastDay;
    settings.end = period.end;
    std::vector<RoundFinding> findings =
        judge(week, hypothesesOf(examination), {}, settings, UrgencyRule()).findings;
    std::erase_if(findings, [](const RoundFinding& one) { return !one.change; });
    return findings;
}

}  // namespace fettle
