#include "core/fleet/sheet_change.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/fleet/followed_trends.h"
#include "core/fleet/machine_desk.h"
#include "core/fleet/site_calendar.h"
#include "core/machine/forcing.h"

namespace fettle {

namespace {

constexpr int kMeshMarks = 3;

const Gear* gearOf(const SheetCase& sheet) {
    const std::string& fault = sheet.told.finding.fault;
    if (fault != "gear_mesh" && fault != "gear_tooth") return nullptr;
    for (const Gear& gear : sheet.machine->gears)
        if (gear.id == sheet.told.finding.at) return &gear;
    return nullptr;
}

bool isOf(const MeasureSeries& series, const SheetCase& sheet, const ChangeFacts& change) {
    return series.name == change.quantity && series.point == change.point &&
           series.channelName == change.channel && series.fault == sheet.told.finding.fault;
}

Instant firstOf(const Period& period) {
    return period.end - std::chrono::days(7 * kStripWeeks);
}

Result<std::vector<DayValue>> daysOf(FleetFile& fleet, const MeasureSeries& series, const Period& period) {
    const auto points = fleet.trends().measured(series, firstOf(period), period.last());
    if (!points) return fail(points.error());
    std::vector<TimedValue> values;
    for (const TrendPoint& point : *points) {
        if (!isRunning(point.running)) continue;
        const auto clock = clockIn(period.timeZone, point.time);
        if (!clock) return fail(clock.error());
        values.push_back({*clock, point.value});
    }
    return dailyMedians(values);
}

// A level of which the velocity, and the limits it has, say nothing; empty: another quantity.
std::optional<Followed> ownLevel(const ChangeFacts& change) {
    for (const Followed level : {Followed::HighBand, Followed::TemperatureRise})
        if (change.quantity == followedName(level)) return level;
    return std::nullopt;
}

// Of the first channel of the point that has it; a temperature is the point's, of no channel.
Result<std::vector<DayValue>> daysOf(FleetFile& fleet, Followed level, const SheetCase& sheet,
                                     const ChangeFacts& change) {
    const Period& period = sheet.period;
    const auto channels = fleet.trends().channels(sheet.entry.id);
    if (!channels) return fail(channels.error());
    std::vector<TimedValue> values;
    for (const ChannelEntry& channel : *channels) {
        if (channel.point != change.point || (!change.channel.empty() && channel.name != change.channel))
            continue;
        const auto levels =
            followedLevels(fleet, channel.id, level, period.timeZone, firstOf(period), period.last());
        if (!levels) return fail(levels.error());
        for (const RunValue& one : *levels)
            values.push_back({one.time, one.value});
        if (!values.empty()) break;
    }
    return dailyMedians(values);
}

// The channel that changed measures acceleration, and the recording has it.
bool hears(const RecordingFacts& facts, const ChangeFacts& change) {
    return std::any_of(facts.channels.begin(), facts.channels.end(), [&](const ChannelFacts& channel) {
        return channel.point == change.point && channel.name == change.channel &&
               channel.quantity == "acceleration";
    });
}

}  // namespace

const ChangeFacts* measuredChange(const SheetCase& sheet) {
    return sheet.told.change && !sheet.told.finding.fault.empty() ? &*sheet.told.change : nullptr;
}

const ChangeFacts* changeInAcceleration(const SheetCase& sheet) {
    const ChangeFacts* change = measuredChange(sheet);
    return change && (change->unit == unitOf(Quantity::HighBand) || gearOf(sheet)) ? change : nullptr;
}

Status addChangeDays(FleetFile& fleet, SheetCase& sheet) {
    const ChangeFacts* change = measuredChange(sheet);
    if (!change) return {};
    if (const auto level = ownLevel(*change))
        return daysOf(fleet, *level, sheet, *change).map([&](std::vector<DayValue> days) {
            sheet.changeDays = std::move(days);
        });
    const auto all = fleet.trends().measures(sheet.entry.id);
    if (!all) return fail(all.error());
    const auto series = std::find_if(all->begin(), all->end(),
                                     [&](const MeasureSeries& one) { return isOf(one, sheet, *change); });
    if (series == all->end()) return {};
    auto days = daysOf(fleet, *series, sheet.period);
    if (!days) return fail(days.error());
    sheet.changeDays = std::move(*days);
    return {};
}

std::optional<SheetTrend> changeTrend(const SheetCase& sheet) {
    if (sheet.changeDays.size() < 2) return std::nullopt;
    const ChangeFacts& change = *measuredChange(sheet);
    SheetTrend trend;
    trend.title = fmt::format("{} {}{}{}", change.point, change.channel, change.channel.empty() ? "" : " ",
                              change.quantity);
    trend.unit = change.unit;
    trend.days = sheet.changeDays;
    trend.past.baseline = BaselineBand{
        change.baselineFrom, change.baselineTo, change.baselineDays, change.was, change.was, change.was, ""};
    trend.past.limits = change.limits;
    trend.past.since = change.since;
    trend.caption =
        fmt::format("daily medians of {}, {} weeks; no standard limits this", trend.title, kStripWeeks);
    return trend;
}

bool showAcceleration(const SheetCase& sheet, const RecordingFacts& facts, SheetSpectrum& spectrum,
                      std::string& point) {
    const ChangeFacts* change = changeInAcceleration(sheet);
    if (!change || !hears(facts, *change)) return false;
    spectrum.channel = change->channel;
    spectrum.view = "own";
    point = change->point;
    const Gear* gear = gearOf(sheet);
    for (int harmonic = 1; gear && facts.speed.rpm && harmonic <= kMeshMarks; ++harmonic)
        spectrum.marks.push_back({harmonic == 1 ? "mesh" : fmt::format("{} x mesh", harmonic),
                                  harmonic * meshOrder(*sheet.machine, *gear) * *facts.speed.rpm / 60, true});
    return true;
}

}  // namespace fettle
