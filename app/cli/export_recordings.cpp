#include "app/cli/export_recordings.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

#include "app/cli/answer.h"
#include "app/cli/load.h"
#include "app/cli/long_work.h"
#include "core/base/file_name.h"
#include "core/exchange/recording_export.h"

namespace fettle {

namespace {

// "20260504T062000Z_M-DE"
std::string nameOf(const RecordingEntry& entry) {
    std::string time = formatUtc(entry.time);
    std::erase_if(time, [](char c) { return c == '-' || c == ':'; });
    return time + (entry.point.empty() ? "" : "_" + entry.point);
}

// Stems in one folder, told apart by number: two recordings of one name, and one that lies there in another
// form, whose sidecar has the same stem. The same export again gives the same stems.
class Stems {
  public:
    explicit Stems(const std::string& folder) : folder_(folder) {
        for (const std::string& name : RealFileSystem().list(folder).value_or(std::vector<std::string>()))
            there_[withExtension(name, "")].insert(extensionOf(name));
    }
    const std::string& folder() const { return folder_; }
    // `extension` empty: one that is not written keeps its place all the same.
    std::string next(const std::string& name, const std::string& extension) {
        std::string stem = fileNameFrom(name, given_);
        while (!extension.empty() && liesThereAsOther(stem, extension))
            stem = fileNameFrom(name, given_);
        return folder_ + "/" + stem;
    }

  private:
    bool liesThereAsOther(const std::string& stem, const std::string& extension) const {
        const auto found = there_.find(stem);
        return found != there_.end() &&
               std::any_of(found->second.begin(), found->second.end(),
                           [&](const std::string& e) { return e != "json" && "." + e != extension; });
    }
    std::string folder_;
    std::map<std::string, std::set<std::string>> there_;  // extensions by stem
    std::set<std::string> given_;
};

Status exportOne(FleetFile& fleet, const RecordingEntry& entry, Stems& stems, ExportForm form) {
    const auto recording = fleet.recordings().recording(entry.id);
    if (!recording) return fail(recording.error());
    const auto sidecar = fleet.recordings().sidecar(entry.id);
    if (!sidecar) return fail(sidecar.error());
    const std::string name = nameOf(entry);
    const auto out = exportRecording(**recording, *sidecar, stems.folder() + "/" + name, form);
    const std::string stem = stems.next(name, out ? out->extension : "");
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
    Stems stems(folder);
    for (const RecordingEntry& entry : *all) {
        if (!entry.hasWaveform) {
            stems.next(nameOf(entry), "");
            ++(entry.thinnedAt ? count.thinned : count.withoutWaveform);
            count.lastThinned = std::max(count.lastThinned, entry.thinnedAt.value_or(count.lastThinned));
            continue;
        }
        const auto done = exportOne(fleet, entry, stems, form);
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
