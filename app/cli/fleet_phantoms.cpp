#include "app/cli/fleet_phantoms.h"

#include <map>

#include "app/cli/answer.h"
#include "app/cli/load.h"
#include "app/cli/long_work.h"
#include "app/cli/open_fleet.h"
#include "core/fleet/machine_desk.h"

namespace fettle {

namespace {

// The newest running recordings that are kept raw, from one point after the other.
std::vector<RecordingEntry> chosen(const std::vector<RecordingEntry>& all, std::size_t most) {
    std::map<std::string, std::vector<RecordingEntry>> byPoint;
    for (auto entry = all.rbegin(); entry != all.rend(); ++entry)
        if (entry->hasWaveform && isRunning(entry->running)) byPoint[entry->point].push_back(*entry);
    std::vector<RecordingEntry> picked;
    for (std::size_t turn = 0, before = 1; picked.size() < most && before != picked.size(); ++turn) {
        before = picked.size();
        for (const auto& [point, entries] : byPoint)
            if (turn < entries.size() && picked.size() < most) picked.push_back(entries[turn]);
        if (turn == 0 && picked.empty()) break;
    }
    return picked;
}

// Told, not fatal: a damaged waveform leaves the others.
std::vector<RecordingPtr> loaded(FleetFile& fleet, const std::vector<RecordingEntry>& entries,
                                 bool& refusedSome) {
    std::vector<RecordingPtr> recordings;
    for (const RecordingEntry& entry : entries) {
        auto recording = fleet.recordings().recording(entry.id);
        if (recording) {
            recordings.push_back(std::move(*recording));
            continue;
        }
        refuse(recording.error());
        refusedSome = true;
    }
    return recordings;
}

}  // namespace

std::optional<FleetPhantoms> fleetPhantoms(const std::string& path, std::size_t perMachine,
                                           const PhantomOptions& options) {
    const auto fleet = openFleet(path, false);
    if (!fleet) return std::nullopt;
    const auto stop = [](const Error& error) {
        couldNotRun(error);
        return std::nullopt;
    };
    const auto machines = fleet->machines().all();
    if (!machines) return stop(machines.error());
    const Progress progress = progressOnStderr();
    PhantomTally tally(options);
    FleetPhantoms result;
    for (std::size_t i = 0; i < machines->size(); ++i) {
        const MachineEntry& entry = (*machines)[i];
        if (progress) progress(i, machines->size(), entry.tag);
        const auto all = fleet->recordings().list(entry.id, Instant{}, Instant::max());
        if (!all) return stop(all.error());
        const auto picked = chosen(*all, perMachine);
        if (picked.empty()) continue;
        const auto described = describedAt(*fleet, entry.tag, picked.front().time);
        if (!described) return stop(described.error());
        if (auto added = tally.add(**described, loaded(*fleet, picked, result.refusedSome), entry.tag);
            !added)
            return stop(added.error());
    }
    result.phantoms = tally.result();
    return result;
}

}  // namespace fettle
