#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <functional>

#include "core/fleet/retention.h"
#include "core/fleet/round_desk.h"
#include "core/store/fleet_file.h"
#include "tests/bench/or_end.h"
#include "tests/bench/size_fleet.h"
#include "tests/store/every_recording.h"
#ifdef FETTLE_BENCH_DESKTOP
#include "ui/model/round_shown.h"
#include "ui/pages/history_requests.h"
#endif

namespace fettle::bench {

namespace {

constexpr int kWarm = 5;
constexpr std::size_t kPlainlyAtMost = 1'000'000;  // recordings; more would take hours
const Instant kSizeEnd{std::chrono::hours(24 * 365 * 100)};

// As after a start of the computer: nothing of the file is left in the system's cache.
void dropFromCache(const std::string& path) {
    const int file = ::open(path.c_str(), O_RDONLY);
    ::fdatasync(file);
    ::posix_fadvise(file, 0, 0, POSIX_FADV_DONTNEED);
    ::close(file);
}

// What retention once read to list what goes, with nothing yet made of it.
std::size_t readPlainly(FleetFile& fleet) {
    std::size_t count = 0;
    for (const MachineEntry& machine : orEnd(fleet.machines().all()))
        count += store_test::everyRecording(fleet.path(), machine.id).size();
    return count;
}

double clockMs(const std::function<void()>& work) {
    const auto start = std::chrono::steady_clock::now();
    work();
    return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count();
}

using Ask = std::function<std::size_t(FleetFile& fleet)>;  // how much there was

void timed(const std::string& path, const char* what, const Ask& ask) {
    std::size_t found = 0;
    dropFromCache(path);
    const double cold = clockMs([&] {
        auto fleet = orEnd(FleetFile::open(path, OpenMode::ReadOnly));
        found = ask(*fleet);
    });
    auto fleet = orEnd(FleetFile::open(path, OpenMode::ReadOnly));
    double warm = 1e9;
    for (int i = 0; i < kWarm; ++i)
        warm = std::min(warm, clockMs([&] { found = ask(*fleet); }));
    fmt::print("{:<58} {:>9.1f} {:>9.1f} {:>8}\n", what, cold, warm, found);
    std::fflush(stdout);
}

std::int64_t aChannel(FleetFile& fleet) {
    const auto machine = orEnd(fleet.machines().byTag("M-0001"));
    return orEnd(fleet.trends().channels(machine.id)).at(0).id;
}

void sizes(const std::string& path) {
    auto fleet = orEnd(FleetFile::open(path, OpenMode::ReadOnly));
    const double bytes = double(std::filesystem::file_size(path));
    const auto machines = double(orEnd(fleet->machines().all()).size());
    const double recordings = double(orEnd(fleet->recordings().count()));
    fmt::print(
        "{}: {:.2f} GB, {:.0f} machines, {:.0f} recordings, {:.1f} MB a machine, {:.0f} bytes a "
        "recording\n",
        path, bytes / 1e9, machines, recordings, bytes / machines / 1e6, bytes / recordings);
    const YearEstimate year = orEnd(planRetention(*fleet)).meanYear();
    fmt::print(
        "estimate for a machine and year: {:.1f} MB (for ever {:.1f}, waveforms {:.1f}, spectra {:.1f}, "
        "examinations {:.1f}); file over estimate {:.2f}\n",
        year.total() / 1e6, year.foreverBytes / 1e6, year.bytes[0] / 1e6, year.bytes[1] / 1e6,
        year.bytes[2] / 1e6, bytes / machines / year.total());
}

}  // namespace

int sizeBench(const std::string& path) {
    fmt::print("{:<58} {:>9} {:>9} {:>8}\n", "milliseconds by the clock", "cold", "warm", "of");
#ifdef FETTLE_BENCH_DESKTOP
    timed(path, "the round list, as the round page reads it",
          [](FleetFile& fleet) { return orEnd(readRound(fleet, std::nullopt, {})).list.machines.size(); });
#endif
    timed(path, "the kept round", [](FleetFile& fleet) {
        const auto round = orEnd(currentRound(fleet));
        return round ? round->list.machines.size() : 0;
    });
    timed(path, "the register, and the newest recording of each machine", [](FleetFile& fleet) {
        const auto machines = orEnd(fleet.machines().all());
        for (const MachineEntry& machine : machines)
            orEnd(fleet.recordings().newest(machine.id));
        return machines.size();
    });
    timed(path, "a year of one trend", [](FleetFile& fleet) {
        return orEnd(fleet.trends().trend(aChannel(fleet), Quantity::VelocityRms, {}, kSizeEnd)).size();
    });
    timed(path, "a year of a waterfall: its spans from the file", [](FleetFile& fleet) {
        return orEnd(fleet.trends().spans(aChannel(fleet), WaterfallKind::Velocity, {}, kSizeEnd, 1600))
            .spans.size();
    });
#ifdef FETTLE_BENCH_DESKTOP
    timed(path, "a year of a waterfall: ready to be painted", [](FleetFile& fleet) {
        return orEnd(coarseWaterfall(fleet, {aChannel(fleet), WaterfallKind::Velocity, false}))->rows();
    });
#endif
    if (orEnd(orEnd(FleetFile::open(path, OpenMode::ReadOnly))->recordings().count()) <= kPlainlyAtMost)
        timed(path, "every recording with what is left of it and its rank, read plainly", readPlainly);
    timed(path, "the list of what retention would thin", [](FleetFile& fleet) {
        std::size_t left = 0;
        const RetentionPlan plan = orEnd(planRetention(fleet));
        for (const KeptKind kind : kAllKept)
            left += plan.total(kind).kept().recordings;
        return left;
    });
    sizes(path);
    return 0;
}

}  // namespace fettle::bench
