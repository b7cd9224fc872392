#include "core/fleet/cure_figures.h"

#include <algorithm>
#include <set>

#include "core/fleet/machine_desk.h"
#include "core/fleet/site_calendar.h"
#include "core/machine/severity_limits.h"
#include "core/trend/median.h"

namespace fettle {

namespace {

constexpr Instant kAlways{std::chrono::days(365 * 200)};

struct GeneralLine {
    Quantity quantity;
    const char* name;
};

// The general numbers that each fault raises; a fault's own measures come besides.
const std::vector<GeneralLine>& generalLines(const std::string& fault) {
    using Lines = std::vector<GeneralLine>;
    static const Lines none, first{{Quantity::Order1, "1x"}};
    static const Lines two{{Quantity::Order1, "1x"}, {Quantity::Order2, "2x"}};
    static const Lines three{{Quantity::Order1, "1x"}, {Quantity::Order2, "2x"}, {Quantity::Order3, "3x"}};
    static const Lines high{{Quantity::HighBand, "band above 1 kHz"}};
    if (fault.starts_with("bearing_") || fault == "cavitation") return high;
    if (fault == "unbalance" || fault == "bent_shaft") return first;
    if (fault == "misalignment") return two;
    if (fault == "looseness" || fault == "soft_foot") return three;
    return none;
}

std::optional<double> medianAt(const std::vector<RunValue>& values, const std::vector<Instant>& moments) {
    const std::set<Instant> chosen(moments.begin(), moments.end());
    std::vector<double> some;
    for (const RunValue& one : values)
        if (chosen.count(one.time)) some.push_back(one.value);
    if (some.empty()) return std::nullopt;
    return medianOf(std::move(some));
}

std::string placeOf(const ChannelEntry& channel) {
    return channel.point + " " + channel.name;
}

std::string levelName(const ChannelEntry& channel) {
    return placeOf(channel) + " velocity r.m.s.";
}

struct LineKind {
    std::string name, unit;
    Scale scale = Scale::Decibels;
};

// Which days may be in a baseline.
struct Sound {
    std::optional<int> since;  // the last alteration
    std::set<int> notOn;       // days on which the fault was named, or vibration was over its aim
};

CureLine lineOf(const LineKind& kind, const ChannelEntry& channel, const std::vector<RunValue>& values,
                const VerifyWindow& window, const Sound& sound) {
    CureLine line;
    line.name = kind.name;
    line.unit = kind.unit;
    line.scale = kind.scale;
    line.where = placeOf(channel);
    line.before = medianAt(values, window.before);
    line.after = medianAt(values, window.after);
    std::vector<DayValue> days = likeDays(values, window.like);
    std::erase_if(days, [&](const DayValue& day) { return sound.notOn.count(day.day) > 0; });
    const auto search = baselineOf(days, sound.since, dayOf(window.before.front()), kind.scale);
    if (search.baseline) line.soundMost = soundMostOf(*search.baseline);
    line.baseline = search.baseline ? search.baseline->words() : search.why;
    return line;
}

// Of several channels the one where it stood out most.
void keepStrongest(std::vector<CureLine>& lines, CureLine line) {
    if (!line.before || !line.after) return;
    const auto found =
        std::find_if(lines.begin(), lines.end(), [&](const CureLine& one) { return one.name == line.name; });
    const auto strength = [](const CureLine& one) {
        return std::tuple(std::max(raisedBefore(one), 0.0), *one.before);
    };
    if (found == lines.end())
        lines.push_back(std::move(line));
    else if (strength(line) > strength(*found))
        *found = std::move(line);
}

struct Lines {
    FleetFile& fleet;
    const MachineRuns& runs;
    const VerifyWindow& window;
    std::optional<int> altered;
    std::vector<MeasureSeries> measures;
    std::vector<CureLevel> levels;
    std::vector<WeightEntry> weights;

    Result<Sound> soundFor(const CureFinding& finding, const ChannelRuns& channel) const {
        Sound sound{altered, {}};
        for (const WeightEntry& one : weights) {
            if (one.fault != finding.fault || one.at != finding.at || one.weightDban < kNamedDban) continue;
            const auto clock = clockIn(runs.timeZone, one.time);
            if (!clock) return fail(clock.error());
            sound.notOn.insert(dayOf(*clock));
        }
        const std::optional<double> aim = aimAt(channel.channel());
        const auto values = channel.of(fleet, Quantity::VelocityRms);
        if (!values) return fail(values.error());
        for (const RunValue& one : *values)
            if (aim && one.value > *aim) sound.notOn.insert(dayOf(one.time));
        return sound;
    }
    std::optional<double> aimAt(const ChannelEntry& channel) const {
        for (const CureLevel& level : levels)
            if (level.where == levelName(channel) && level.limitAB) return kAimShare * *level.limitAB;
        return std::nullopt;
    }

    Status addGeneral(CureFinding& finding) const {
        for (const GeneralLine& general : generalLines(finding.fault))
            for (const ChannelRuns& channel : runs.channels) {
                const auto values = channel.of(fleet, general.quantity);
                if (!values) return fail(values.error());
                const auto sound = soundFor(finding, channel);
                if (!sound) return fail(sound.error());
                const LineKind kind{general.name, unitOf(general.quantity), Scale::Decibels};
                keepStrongest(finding.lines, lineOf(kind, channel.channel(), *values, window, *sound));
            }
        return {};
    }
    Status addOwn(CureFinding& finding) const {
        for (const MeasureSeries& series : measures) {
            if (series.fault != finding.fault || series.at != finding.at) continue;
            const auto channel =
                std::find_if(runs.channels.begin(), runs.channels.end(),
                             [&](const ChannelRuns& one) { return one.channel().id == series.channel; });
            if (channel == runs.channels.end()) continue;
            const auto values = channel->of(fleet, series);
            if (!values) return fail(values.error());
            const auto sound = soundFor(finding, *channel);
            if (!sound) return fail(sound.error());
            const LineKind kind{series.name, series.unit,
                                series.unit == "dB" ? Scale::Linear : Scale::Decibels};
            keepStrongest(finding.lines, lineOf(kind, channel->channel(), *values, window, *sound));
        }
        return {};
    }
};

Status addLimits(const Machine& machine, const std::string& point, CureLevel& level) {
    const Point* found = machine.pointById(point);
    if (!found) return {};
    const auto limits = limitsFor(machine, *found);
    if (!limits) return fail(limits.error());
    for (const ZoneLimits& set : limits->sets)
        if (!level.limitBC || set.velocity[1] < *level.limitBC) {
            level.limitAB = set.velocity[0];
            level.limitBC = set.velocity[1];
        }
    return {};
}

}  // namespace

Result<MachineRuns> MachineRuns::read(FleetFile& fleet, std::int64_t machine, const std::string& timeZone,
                                      Instant from, Instant until) {
    MachineRuns out;
    out.machine = machine;
    out.timeZone = timeZone;
    auto channels = vibrationRuns(fleet, machine, timeZone, from, until);
    if (!channels) return fail(channels.error());
    out.channels = std::move(*channels);
    for (const ChannelRuns& channel : out.channels)
        for (const ChannelRuns::Moment& moment : channel.moments()) {
            out.runs_.try_emplace(moment.run.time, moment.run);
            auto& at = out.recordings_[moment.run.time];
            if (std::find(at.begin(), at.end(), moment.recording) == at.end()) at.push_back(moment.recording);
        }
    return out;
}

std::vector<RunValue> MachineRuns::moments() const {
    std::vector<RunValue> all;
    for (const auto& [time, run] : runs_)
        all.push_back(run);
    return all;
}

const std::vector<std::int64_t>& MachineRuns::recordingsAt(Instant moment) const {
    static const std::vector<std::int64_t> none;
    const auto found = recordings_.find(moment);
    return found == recordings_.end() ? none : found->second;
}

std::optional<int> alteredBefore(const std::vector<Event>& events, const std::string& timeZone, int day) {
    static const std::set<std::string> kinds{"part", "repair", "moved_node", "rebaseline"};
    std::optional<int> last;
    for (const Event& event : events) {
        const auto clock = clockIn(timeZone, event.time);
        if (kinds.count(event.kind) && clock && dayOf(*clock) < day) last = dayOf(*clock);
    }
    return last;
}

Status addLevels(FleetFile& fleet, const std::string& tag, const MachineRuns& runs,
                 const VerifyWindow& window, CureCase& figures) {
    const auto machine = fleet.machines().describedOn(tag, formatDate(window.after.back()));
    if (!machine) return fail(machine.error());
    for (const ChannelRuns& channel : runs.channels) {
        const auto values = channel.of(fleet, Quantity::VelocityRms);
        if (!values) return fail(values.error());
        CureLevel level;
        level.where = levelName(channel.channel());
        level.unit = unitOf(Quantity::VelocityRms);
        level.before = medianAt(*values, window.before);
        level.after = medianAt(*values, window.after);
        if (auto good = addLimits(**machine, channel.channel().point, level); !good) return good;
        if (level.after) figures.levels.push_back(std::move(level));
    }
    return {};
}

Status addLines(FleetFile& fleet, const std::vector<Event>& events, const MachineRuns& runs,
                const VerifyWindow& window, CureCase& figures) {
    auto measures = fleet.trends().measures(runs.machine);
    if (!measures) return fail(measures.error());
    const int day = dayOf(window.before.front());
    auto weights = fleet.recordings().weights(runs.machine, Instant{}, kAlways);
    if (!weights) return fail(weights.error());
    const Lines lines{fleet,
                      runs,
                      window,
                      alteredBefore(events, runs.timeZone, day),
                      std::move(*measures),
                      figures.levels,
                      std::move(*weights)};
    for (CureFinding& finding : figures.findings) {
        if (auto good = lines.addGeneral(finding); !good) return good;
        if (auto good = lines.addOwn(finding); !good) return good;
    }
    return {};
}

}  // namespace fettle
