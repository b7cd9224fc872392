#include "app/cli/export_recordings.h"

#include <fmt/format.h>

#include <set>

#include "app/cli/answer.h"
#include "app/cli/load.h"
#include "app/cli/long_work.h"
#include "core/base/file_name.h"
#include "core/exchange/recording_export.h"

namespace fettle {

namespace {

// "20260504T062000Z_M-DE", told apart by number where two would have one name.
std::string stemOf(const RecordingEntry& entry, std::set<std::string>& used) {
    std::string time = formatUtc(entry.time);
    std::erase_if(time, [](char c) { return c == '-' || c == ':'; });
    return fileNameFrom(time + (entry.point.empty() ? "" : "_" + entry.point), used);
}

Status exportOne(FleetFile& fleet, const RecordingEntry& entry, const std::string& stem, ExportForm form) {
    const auto recording = fleet.recordings().recording(entry.id);
    if (!recording) return fail(recording.error());
    const auto sidecar = fleet.recordings().sidecar(entry.id);
    if (!sidecar) return fail(sidecar.error());
    const auto out = exportRecording(**recording, *sidecar, stem, form);
    if (!out) return fail(out.error());
    RealFileSystem files;
    if (auto written = files.writeSafely(stem + out->extension, out->bytes); !written) return written;
    return files.writeSafely(stem + ".json", out->sidecar);
}

struct Count {
    std::size_t written = 0, withoutWaveform = 0, thinned = 0;
    Instant lastThinned{};
    int status = kDone;
};

// False: cannot go on.
bool exportMachine(FleetFile& fleet, const MachineEntry& machine, const ExportSpan& span,
                   const std::string& folder, ExportForm form, Count& count) {
    const auto all = fleet.recordings().list(machine.id, span.from, span.until);
    if (!all) return couldNotRun(all.error()) == kDone;
    if (all->empty()) return true;
    if (auto made = RealFileSystem().makeFolders(folder); !made) return couldNotRun(made.error()) == kDone;
    std::set<std::string> used;
    for (const RecordingEntry& entry : *all) {
        const std::string stem = folder + "/" + stemOf(entry, used);
        if (!entry.hasWaveform) {
            ++(entry.thinnedAt ? count.thinned : count.withoutWaveform);
            count.lastThinned = std::max(count.lastThinned, entry.thinnedAt.value_or(count.lastThinned));
            continue;
        }
        const auto done = exportOne(fleet, entry, stem, form);
        if (!done && done.error().kind == ErrorKind::Unwritable) return couldNotRun(done.error()) == kDone;
        if (!done) {
            refuse(done.error());
            count.status = kRefusedSome;
        }
        count.written += done.has_value();
    }
    return true;
}

}  // namespace

int exportRecordings(FleetFile& fleet, const ExportSpan& span, const std::string& folder, ExportForm form) {
    Count count;
    std::set<std::string> folders;
    const Progress progress = progressOnStderr();
    for (std::size_t i = 0; i < span.machines.size(); ++i) {
        const MachineEntry& machine = span.machines[i];
        progress(i, span.machines.size(), machine.tag);
        const std::string own = folder + "/" + fileNameFrom(machine.tag, folders);
        if (!exportMachine(fleet, machine, span, own, form, count)) return kCouldNotRun;
    }
    print(counted(count.written, "recording") + " written");
    if (count.thinned)
        print(fmt::format(", {} whose waveform was thinned by retention, last on {}", count.thinned,
                          formatDate(count.lastThinned)));
    if (count.withoutWaveform) print(fmt::format(", {} whose waveform is not kept", count.withoutWaveform));
    print("\n");
    return count.status;
}

}  // namespace fettle
