#include "core/fleet/grease.h"

#include <algorithm>
#include <set>

#include "core/fleet/machine_desk.h"
#include "core/fleet/run_values.h"
#include "core/fleet/site_calendar.h"
#include "core/trend/median.h"

namespace fettle {

namespace {

constexpr int kSpeakDays = 14;  // before the greasing: whose channel speaks, and at which speed and load

std::string componentOf(const Machine& machine, const std::string& at) {
    const auto place = machine.placeOf(at);
    return place ? place->component : "";
}

// A point without a place, and a greasing without one, may belong to each other.
bool hears(const Machine& machine, const std::string& pointId, const std::string& at) {
    for (const Point& point : machine.points) {
        if (point.id != pointId) continue;
        const std::string greased = componentOf(machine, at), heard = componentOf(machine, point.at);
        return greased.empty() || heard.empty() || greased == heard;
    }
    return false;
}

std::vector<RunValue> within(const std::vector<RunValue>& values, int from, int until) {
    std::vector<RunValue> some;
    for (const RunValue& one : values)
        if (dayOf(one.time) >= from && dayOf(one.time) <= until) some.push_back(one);
    return some;
}

double medianValue(const std::vector<RunValue>& values) {
    std::vector<double> all;
    for (const RunValue& one : values)
        all.push_back(one.value);
    return all.empty() ? 0 : medianOf(std::move(all));
}

// Days of other work on the machine: the witness hears the greasing alone.
struct Between {
    int after = 0, before = 0;  // days, neither included
};

Between otherWork(const std::vector<Event>& events, const std::string& timeZone, int greasedOn) {
    static const std::set<std::string> kinds{"repair", "part", "moved_node", "greasing", "rebaseline"};
    Between between{greasedOn - 10000, greasedOn + 10000};
    for (const Event& event : events) {
        const auto clock = clockIn(timeZone, event.time);
        if (!kinds.count(event.kind) || !clock) continue;
        const int day = dayOf(*clock);
        if (day < greasedOn) between.after = std::max(between.after, day);
        if (day > greasedOn) between.before = std::min(between.before, day);
    }
    return between;
}

GreaseWitness witnessOf(const std::vector<RunValue>& values, const Between& between, int greasedOn) {
    const auto free = within(values, between.after + 1, between.before - 1);
    const auto usual = usualCondition(within(free, greasedOn - kSpeakDays, greasedOn - 1));
    return greaseWitness(usual ? likeDays(free, *usual) : std::vector<DayValue>{}, greasedOn);
}

struct Loudest {
    std::vector<RunValue> values;
    std::string where;
    double level = -1;
};

}  // namespace

Result<std::vector<GreasingHeard>> greasingsHeard(FleetFile& fleet, const std::string& tag) {
    const auto site = fleet.site();
    if (!site) return fail(site.error());
    const auto machine = fleet.machines().byTag(tag);
    if (!machine) return fail(machine.error());
    const auto events = fleet.log().events(tag);
    if (!events) return fail(events.error());
    const auto newest = fleet.recordings().newest();
    if (!newest) return fail(newest.error());
    const auto runs =
        vibrationRuns(fleet, machine->id, site->timeZone, Instant{}, newest->value_or(Instant{}));
    if (!runs) return fail(runs.error());
    std::vector<GreasingHeard> all;
    for (const Event& event : *events) {
        if (event.kind != "greasing") continue;
        const auto clock = clockIn(site->timeZone, event.time);
        if (!clock) return fail(clock.error());
        const auto described = describedAt(fleet, tag, event.time);
        if (!described) return fail(described.error());
        const int day = dayOf(*clock);
        Loudest loudest;
        for (const ChannelRuns& channel : *runs) {
            if (!hears(**described, channel.channel().point, event.at)) continue;
            auto values = channel.of(fleet, Quantity::HighBand);
            if (!values) return fail(values.error());
            const double level = medianValue(within(*values, day - kSpeakDays, day - 1));
            if (level > loudest.level)
                loudest = {std::move(*values), channel.channel().point + " " + channel.channel().name, level};
        }
        GreasingHeard heard{event.id, loudest.where, {}};
        if (loudest.where.empty())
            heard.witness.words = "not heard: no sensor on the same component";
        else
            heard.witness = witnessOf(loudest.values, otherWork(*events, site->timeZone, day), day);
        all.push_back(std::move(heard));
    }
    return all;
}

}  // namespace fettle
