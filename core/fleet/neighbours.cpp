#include "core/fleet/neighbours.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>

#include "core/base/text.h"
#include "core/fleet/machine_desk.h"
#include "core/fleet/machine_week.h"
#include "core/fleet/site_calendar.h"
#include "core/machine/forcing.h"
#include "core/trend/median.h"

namespace fettle {

namespace {

constexpr std::ptrdiff_t kLineCells = 1, kFloorCells = 12;
constexpr double kAboveFloor = 2;  // 6 dB

struct Seen {
    std::string where;
    double cellHz = 0;
    std::vector<LineSeen> moments;
    std::size_t there = 0;
};

Turning turningOf(const std::string& state) {
    if (isRunning(state)) return Turning::Yes;
    return state == "stopped" || state == "energised_not_turning" ? Turning::No : Turning::Unknown;
}

Result<Seen> seenOn(FleetFile& fleet, const ChannelEntry& channel, double hz, const Period& period) {
    const auto spectra =
        fleet.trends().spectra(channel.id, WaterfallKind::Velocity, period.from, period.last());
    if (!spectra) return fail(spectra.error());
    Seen seen;
    seen.where = channel.point + " " + channel.name;
    for (const SpectrumAt& spectrum : *spectra) {
        if (spectrum.lines.empty() || hz >= spectrum.topHz) continue;
        seen.cellHz = spectrum.topHz / double(spectrum.lines.size());
        seen.moments.push_back({spectrum.time, lineStands(spectrum, hz)});
        seen.there += seen.moments.back().there;
    }
    return seen;
}

// The channel on which it stands most often.
Result<Seen> bestSeen(FleetFile& fleet, const MachineEntry& machine, double hz, const Period& period) {
    const auto channels = fleet.trends().channels(machine.id);
    if (!channels) return fail(channels.error());
    Seen best;
    for (const ChannelEntry& channel : *channels) {
        auto seen = seenOn(fleet, channel, hz, period);
        if (!seen) return seen;
        if (!seen->moments.empty() && (best.moments.empty() || seen->there > best.there))
            best = std::move(*seen);
    }
    if (!best.moments.empty()) return best;
    return fail(ErrorKind::NotFound, fleet.path(), machine.tag,
                fmt::format("has no stored spectrum that reaches {:g} Hz in those days", hz));
}

Result<std::vector<Neighbour>> neighboursOf(FleetFile& fleet, const MachineEntry& asked, bool everyArea,
                                            const Period& period) {
    const auto machines = fleet.machines().all();
    if (!machines) return fail(machines.error());
    std::vector<Neighbour> all;
    for (const MachineEntry& machine : *machines) {
        if (!everyArea && machine.area != asked.area) continue;
        const auto recordings = fleet.recordings().list(machine.id, period.from, period.last());
        if (!recordings) return fail(recordings.error());
        Neighbour one{machine.tag, machine.tag == asked.tag, {}};
        for (const RecordingEntry& recording : *recordings)
            one.turning.push_back({recording.time, turningOf(recording.running)});
        all.push_back(std::move(one));
    }
    return all;
}

constexpr double kOwnTopHz = 1000;
constexpr int kOwnOrders = 10, kOwnMains = 4;

// A line that the machine draws itself by its description and its median speed, within a cell of the one
// asked.
Result<std::string> ownLineAt(FleetFile& fleet, const MachineEntry& entry, double hz, double cellHz,
                              const Period& period) {
    const auto machine = fleet.machines().describedOn(entry.tag, period.lastDay);
    if (!machine) return fail(machine.error());
    const auto recordings = fleet.recordings().list(entry.id, period.from, period.last());
    if (!recordings) return fail(recordings.error());
    std::vector<double> rpm;
    for (const RecordingEntry& recording : *recordings)
        if (recording.speedRpm && isRunning(recording.running)) rpm.push_back(*recording.speedRpm);
    if (rpm.empty()) return std::string();
    const double shaftHz = medianOf(std::move(rpm)) / 60;
    ForcingExtent extent;
    extent.mostHz = kOwnTopHz, extent.shaftHz = shaftHz;
    extent.shaftHarmonics = kOwnOrders, extent.mainsHarmonics = kOwnMains;
    for (const ForcingLine& line : forcingLines(**machine, extent)) {
        const double at = line.hz(shaftHz, (*machine)->mainsHz);
        const bool told = line.kind == ForcingKind::Shaft || line.kind == ForcingKind::Mains ||
                          line.kind == ForcingKind::BladePass || line.kind == ForcingKind::GearMesh;
        if (told && std::abs(at - hz) <= 1.5 * cellHz) return fmt::format("{} at {:.1f} Hz", line.name, at);
    }
    return std::string();
}

Result<Period> periodOf(FleetFile& fleet, const LineQuestion& question) {
    const auto site = fleet.site();
    if (!site) return fail(site.error());
    std::string until = question.until;
    if (until.empty()) {
        const auto newest = fleet.recordings().newest();
        if (!newest) return fail(newest.error());
        const auto date = dateIn(site->timeZone, newest->value_or(Instant{}));
        if (!date) return fail(date.error());
        until = *date;
    }
    return periodTo(*site, until, std::max(question.days, 1));
}

}  // namespace

bool lineStands(const SpectrumAt& spectrum, double hz) {
    const auto count = std::ptrdiff_t(spectrum.lines.size());
    const auto cell = std::ptrdiff_t(hz / spectrum.topHz * double(count));
    double top = 0;
    std::vector<double> floor;
    for (std::ptrdiff_t i = cell - kFloorCells; i <= cell + kFloorCells; ++i) {
        if (i < 0 || i >= count) continue;
        const double value = spectrum.lines[std::size_t(i)];
        if (std::abs(i - cell) <= kLineCells)
            top = std::max(top, value);
        else
            floor.push_back(value);
    }
    return top > 0 && top >= kAboveFloor * medianOf(std::move(floor));
}

Result<WhoseLine> whoseLine(FleetFile& fleet, const LineQuestion& question) {
    const auto machine = fleet.machines().byTag(question.machine);
    if (!machine) return fail(machine.error());
    if (!(question.hz > 0)) return fail(ErrorKind::Invalid, "", "line", "its frequency is not above 0 Hz");
    const auto period = periodOf(fleet, question);
    if (!period) return fail(period.error());
    const auto seen = bestSeen(fleet, *machine, question.hz, *period);
    if (!seen) return fail(seen.error());
    const auto neighbours = neighboursOf(fleet, *machine, question.everyArea, *period);
    if (!neighbours) return fail(neighbours.error());
    auto own = ownLineAt(fleet, *machine, question.hz, seen->cellHz, *period);
    if (!own) return fail(own.error());
    return WhoseLine{seen->where, seen->cellHz,    seen->moments.size(),
                     seen->there, std::move(*own), leavesWith(seen->moments, *neighbours)};
}

}  // namespace fettle
