#include "core/fleet/sheet_change.h"

#include <fmt/format.h>

#include <algorithm>

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

Result<std::vector<DayValue>> daysOf(FleetFile& fleet, const MeasureSeries& series, const Period& period) {
    const auto points =
        fleet.trends().measured(series, period.end - std::chrono::days(7 * kStripWeeks), period.last());
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

}  // namespace

const ChangeFacts* measuredChange(const SheetCase& sheet) {
    return sheet.told.change && !sheet.told.finding.fault.empty() ? &*sheet.told.change : nullptr;
}

bool isOfGear(const SheetCase& sheet) {
    return measuredChange(sheet) && gearOf(sheet);
}

Status addChangeDays(FleetFile& fleet, SheetCase& sheet) {
    const ChangeFacts* change = measuredChange(sheet);
    if (!change) return {};
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
    trend.title = fmt::format("{} {} {}", change.point, change.channel, change.quantity);
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

std::vector<SheetMark> meshMarks(const SheetCase& sheet, const RecordingFacts& facts) {
    const ChangeFacts* change = measuredChange(sheet);
    const Gear* gear = gearOf(sheet);
    if (!change || !gear || !facts.speed.rpm) return {};
    const auto heard =
        std::any_of(facts.channels.begin(), facts.channels.end(), [&](const ChannelFacts& channel) {
            return channel.point == change->point && channel.name == change->channel &&
                   channel.quantity == "acceleration";
        });
    std::vector<SheetMark> marks;
    for (int harmonic = 1; heard && harmonic <= kMeshMarks; ++harmonic)
        marks.push_back({harmonic == 1 ? "mesh" : fmt::format("{} x mesh", harmonic),
                         harmonic * meshOrder(*sheet.machine, *gear) * *facts.speed.rpm / 60, true});
    return marks;
}

}  // namespace fettle
