#include "tests/bench/import_stages.h"

#include <fmt/format.h>
#include <time.h>

#include "core/diagnosis/examine.h"
#include "core/intake/stored_form.h"
#include "core/signal/reader.h"
#include "core/store/packed_recording.h"

namespace fettle::bench {

namespace {

constexpr std::size_t kBatch = 16;  // as an import

double threadMs() {
    timespec now{};
    ::clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
    return double(now.tv_sec) * 1e3 + double(now.tv_nsec) / 1e6;
}

template <class Work>
auto timed(double& ms, Work work) {
    const double begun = threadMs();
    auto result = work();
    ms += threadMs() - begun;
    return result;
}

class Stages {
  public:
    explicit Stages(FleetFile& fleet) : fleet_(fleet) {}

    Status take(const std::string& path,
                const std::map<std::string, std::shared_ptr<const Machine>>& machines) {
        const auto recording = timed(all_.readMs, [&] { return readRecording(files_, path); });
        if (!recording || !(*recording)->time) return {};  // an import refuses it as well
        const auto machine = machines.find((*recording)->machine);
        const auto entry = fleet_.machines().byTag((*recording)->machine);
        if (machine == machines.end() || !entry) return {};
        const auto examined =
            timed(all_.examineMs, [&] { return examineRecording(*machine->second, *recording); });
        if (!examined) return fail(examined.error());
        NewRecording form = timed(
            all_.formMs, [&] { return storedForm(*recording, entry->id, *machine->second, *examined); });
        form.key = recordingKey(path, **recording);
        form.format = "FLAC";
        auto packed = timed(all_.packMs, [&] { return packRecording(std::move(form), fleet_.path()); });
        if (!packed) return fail(packed.error());
        batch_.push_back(std::move(*packed));
        return batch_.size() < kBatch ? Status{} : write();
    }
    Status write() {
        const auto put = timed(all_.writeMs, [&] { return fleet_.recordings().putPacked(batch_); });
        if (!put) return fail(put.error());
        all_.recordings += batch_.size();
        batch_.clear();
        return {};
    }
    ImportStages perRecording() const {
        ImportStages mean = all_;
        for (double* ms : {&mean.readMs, &mean.examineMs, &mean.formMs, &mean.packMs, &mean.writeMs})
            *ms /= double(std::max<std::size_t>(1, mean.recordings));
        return mean;
    }

  private:
    FleetFile& fleet_;
    RealFileSystem files_;
    std::vector<PackedRecording> batch_;
    ImportStages all_;
};

}  // namespace

Result<ImportStages> importStages(FleetFile& fleet, const std::vector<std::string>& paths,
                                  const std::map<std::string, std::shared_ptr<const Machine>>& machines) {
    Stages stages(fleet);
    for (const std::string& path : paths)
        if (auto taken = stages.take(path, machines); !taken) return fail(taken.error());
    if (auto written = stages.write(); !written) return fail(written.error());
    return stages.perRecording();
}

std::string tableOf(const ImportStages& stages) {
    const double alone = stages.readMs + stages.examineMs;
    const double whole = alone + stages.formMs + stages.packMs + stages.writeMs;
    std::string text =
        fmt::format("{:<38} {:>8} {:>8}\n", "stage, one thread, of the processor", "ms", "share");
    const auto row = [&](const char* name, double ms) {
        text += fmt::format("{:<38} {:>8.3f} {:>7.1f}%\n", name, ms, 100 * ms / whole);
    };
    row("read", stages.readMs);
    row("examine", stages.examineMs);
    row("rows and text of the examination", stages.formMs);
    row("pack", stages.packMs);
    row("write (the one writer)", stages.writeMs);
    return text + fmt::format("all over reading and examining: {:.3f}\n", whole / alone);
}

}  // namespace fettle::bench
