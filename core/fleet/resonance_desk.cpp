#include "core/fleet/resonance_desk.h"

#include <map>

#include "core/fleet/machine_desk.h"

namespace fettle {

namespace {

using Speeds = std::map<std::int64_t, double>;

Result<Speeds> runningSpeeds(FleetFile& fleet, const ChannelEntry& channel, Instant from, Instant until) {
    const auto points = fleet.trends().trend(channel.id, Quantity::SpeedRpm, from, until);
    if (!points) return fail(points.error());
    Speeds speeds;
    for (const TrendPoint& point : *points)
        if (isRunning(point.running) && point.value > 0) speeds[point.recording] = point.value;
    return speeds;
}

Result<ChannelSpectra> spectraOf(FleetFile& fleet, const ChannelEntry& channel, Instant from, Instant until) {
    ChannelSpectra spectra{channel.point + " " + channel.name, {}};
    const auto speeds = runningSpeeds(fleet, channel, from, until);
    if (!speeds) return fail(speeds.error());
    if (speeds->empty()) return spectra;
    auto kept = fleet.trends().spectra(channel.id, WaterfallKind::Velocity, from, until);
    if (!kept) return fail(kept.error());
    for (SpectrumAt& one : *kept)
        if (const auto speed = speeds->find(one.recording); speed != speeds->end())
            spectra.spectra.push_back({speed->second, one.topHz, std::move(one.lines)});
    return spectra;
}

// Blades of a driven machine that turns as the motor does.
ResonanceOptions optionsOf(const Machine& machine) {
    ResonanceOptions options;
    const auto driven = machine.shaftOfDriven();
    if (machine.driven.blades && driven && machine.shafts[*driven].ratio == 1)
        options.moreOrders = {*machine.driven.blades};
    return options;
}

}  // namespace

Result<MachineResonance> resonanceOf(FleetFile& fleet, const std::string& tag, int days) {
    const auto entry = fleet.machines().byTag(tag);
    if (!entry) return fail(entry.error());
    const auto site = fleet.site();
    if (!site) return fail(site.error());
    const auto newest = fleet.recordings().newest(entry->id);
    if (!newest) return fail(newest.error());
    MachineResonance found;
    found.timeZone = site->timeZone;
    found.until = newest->value_or(Instant{});
    found.from = found.until - std::chrono::days(days);
    auto machine = describedAt(fleet, tag, found.until);
    if (!machine) return fail(machine.error());
    found.machine = std::move(*machine);
    const auto channels = fleet.trends().channels(entry->id);
    if (!channels) return fail(channels.error());
    std::vector<ChannelSpectra> spectra;
    for (const ChannelEntry& channel : *channels) {
        auto one = spectraOf(fleet, channel, found.from, found.until);
        if (!one) return fail(one.error());
        if (!one->spectra.empty()) spectra.push_back(std::move(*one));
    }
    const Driver& driver = found.machine->driver;
    found.map = resonanceMap(spectra, driver.rpmMin.value_or(0), driver.rpmMax.value_or(0),
                             optionsOf(*found.machine));
    return found;
}

}  // namespace fettle
