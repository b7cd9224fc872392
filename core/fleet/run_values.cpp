#include "core/fleet/run_values.h"

#include <algorithm>

#include "core/fleet/machine_desk.h"
#include "core/fleet/site_calendar.h"

namespace fettle {

Result<ChannelRuns> ChannelRuns::read(FleetFile& fleet, const ChannelEntry& channel,
                                      const std::string& timeZone, Instant from, Instant until) {
    ChannelRuns out;
    out.channel_ = channel;
    out.from_ = from;
    out.until_ = until;
    const auto rows = fleet.trends().values(channel.id, from, until);
    if (!rows) return fail(rows.error());
    auto clock = SiteClock::of(timeZone);
    if (!clock) return fail(clock.error());
    for (const TrendValues& row : *rows) {
        const auto speed = row.of(Quantity::SpeedRpm), load = row.of(Quantity::LoadPct);
        const bool says = row.of(Quantity::AccelerationRms) || row.of(Quantity::VelocityRms) || speed || load;
        if (!says || !isRunning(row.running)) continue;
        RunValue& run = out.runs_[row.recording];
        run.time = clock->at(row.time);
        run.running = row.running;
        run.speedRpm = speed, run.loadPct = load;
    }
    return out;
}

std::vector<RunValue> ChannelRuns::with(const std::vector<TrendPoint>& points) const {
    std::vector<RunValue> values;
    for (const TrendPoint& point : points) {
        const auto run = runs_.find(point.recording);
        if (run == runs_.end()) continue;
        values.push_back(run->second);
        values.back().value = point.value;
    }
    return values;
}

Result<std::vector<RunValue>> ChannelRuns::of(FleetFile& fleet, Quantity quantity) const {
    const auto points = fleet.trends().trend(channel_.id, quantity, from_, until_);
    if (!points) return fail(points.error());
    return with(*points);
}

Result<std::vector<RunValue>> ChannelRuns::of(FleetFile& fleet, const MeasureSeries& series) const {
    const auto points = fleet.trends().measured(series, from_, until_);
    if (!points) return fail(points.error());
    return with(*points);
}

std::vector<ChannelRuns::Moment> ChannelRuns::moments() const {
    std::vector<Moment> all;
    for (const auto& [recording, run] : runs_)
        all.push_back({run, recording});
    std::sort(all.begin(), all.end(),
              [](const Moment& a, const Moment& b) { return a.run.time < b.run.time; });
    return all;
}

Result<std::vector<ChannelRuns>> vibrationRuns(FleetFile& fleet, std::int64_t machine,
                                               const std::string& timeZone, Instant from, Instant until) {
    const auto channels = fleet.trends().channels(machine);
    if (!channels) return fail(channels.error());
    std::vector<ChannelRuns> all;
    for (const ChannelEntry& channel : *channels) {
        if (channel.quantity == "flux" || channel.quantity == "temperature") continue;
        auto runs = ChannelRuns::read(fleet, channel, timeZone, from, until);
        if (!runs) return fail(runs.error());
        if (!runs->moments().empty()) all.push_back(std::move(*runs));
    }
    return all;
}

}  // namespace fettle
