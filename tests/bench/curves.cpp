#include "tests/bench/curves.h"

#include <fmt/format.h>

#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <vector>

#include "core/diagnosis/examine.h"
#include "core/fleet/round_desk.h"
#include "tests/bench/bench_case.h"
#include "tests/bench/large_fleet.h"
#include "tests/bench/or_end.h"
#include "tests/bench/stopwatch.h"

namespace fettle::bench {

namespace {

// One curve: rows of size and time. `shape` is what the time is held against: size itself, or size x log2
// size.
class Curve {
  public:
    Curve(const char* title, const char* unit, double (*shape)(double)) : shape_(shape) {
        fmt::print(
            "\n{}\n| {} | ms | times the line before | ms over the shape, first = 1 |\n|---|---|---|---|\n",
            title, unit);
    }
    void add(double size, const std::string& told, double ms) {
        const double share = ms / shape_(size);
        if (first_ == 0) first_ = share;
        fmt::print("| {} | {:.3g} | {} | {:.2f} |\n", told, ms,
                   before_ > 0 ? fmt::format("{:.2f}", ms / before_) : "", share / first_);
        std::fflush(stdout);
        before_ = ms;
    }

  private:
    double (*shape_)(double);
    double before_ = 0, first_ = 0;
};

double linear(double size) {
    return size;
}
double lengthTimesItsLogarithm(double size) {
    return size * std::log2(size);
}
double constant(double) {
    return 1;
}

double examinationMs(const BenchCase& subject, int repeats) {
    return bestMs(repeats, [&] { orEnd(examine(subject.machine, {subject.recording})); });
}

void overLength(int repeats) {
    Curve curve("examination against the length of the record, shape n log2 n", "samples",
                lengthTimesItsLogarithm);
    for (const double seconds : {1.25, 2.5, 5.0, 10.0, 20.0, 40.0, 80.0}) {
        const BenchCase subject = caseOf(seconds, 1);
        const std::size_t samples = subject.recording->channels[0].samples.size();
        curve.add(double(samples), std::to_string(samples), examinationMs(subject, repeats));
    }
}

void overChannels(int repeats) {
    Curve curve("examination against channels of 5 s, shape n", "channels", linear);
    for (const int channels : {1, 2, 4, 8, 16})
        curve.add(channels, std::to_string(channels), examinationMs(caseOf(5, channels), repeats));
}

// A fleet file that is there as long as it is looked at.
class Made {
  public:
    explicit Made(LargeFleetOptions options) : path_(options.folder + "/large.fettle") {
        if (makeLargeFleet(options) != 0) std::exit(3);
        fleet_ = orEnd(FleetFile::open(path_, OpenMode::ReadOnly));
    }
    ~Made() {
        fleet_.reset();
        for (const char* tail : {"", "-wal", "-shm"})
            std::filesystem::remove(path_ + tail);
    }
    FleetFile& fleet() { return *fleet_; }

  private:
    std::string path_;
    std::unique_ptr<FleetFile> fleet_;
};

double listMs(FleetFile& fleet, int repeats) {
    return bestMs(repeats, [&] { orEnd(listNow(fleet, kLastDay)); });
}

void overMachines(const CurveOptions& options) {
    Curve curve("the round's list against machines, shape n", "machines", linear);
    for (const int machines : {100, 200, 400, 800, 1600}) {
        Made made({.folder = options.folder, .machines = machines, .rows = 72, .weeks = 4});
        curve.add(machines, std::to_string(machines), listMs(made.fleet(), options.repeats));
    }
}

void overWeeks(const CurveOptions& options) {
    Curve curve("the round's list of 100 machines against weeks of history, shape: none", "weeks", constant);
    for (const int weeks : {26, 52, 104, 208}) {
        Made made({.folder = options.folder, .machines = 100, .rows = 72, .weeks = weeks});
        curve.add(weeks, std::to_string(weeks), listMs(made.fleet(), options.repeats));
    }
}

// What a page asks: its newest week of one channel, and the newest recording.
double newestWeekMs(FleetFile& fleet, int repeats) {
    const std::int64_t machine = orEnd(fleet.machines().byTag(kYearTag)).id;
    const std::int64_t channel = orEnd(fleet.trends().channels(machine)).at(0).id;
    return bestMs(repeats * 4, [&] {
        const Instant last = *orEnd(fleet.recordings().newest(machine));
        const Instant from = last - std::chrono::hours(7 * 24);
        orEnd(fleet.trends().values(channel, from, last));
        orEnd(fleet.trends().spectra(channel, WaterfallKind::Velocity, from, last));
        orEnd(fleet.recordings().list(machine, from, last));
    });
}

void overHistory(const CurveOptions& options) {
    Curve curve("a machine's newest week (trend, spectra, recordings) against its recordings, shape: none",
                "recordings", constant);
    for (const int rows : {6'570, 13'140, 26'280, 52'560}) {
        Made made({.folder = options.folder, .machines = 20, .rows = rows, .weeks = 4});
        curve.add(rows, std::to_string(rows), newestWeekMs(made.fleet(), options.repeats));
    }
}

}  // namespace

int curves(const CurveOptions& options) {
    overLength(options.repeats);
    overChannels(options.repeats);
    if (options.folder.empty()) return 0;
    overMachines(options);
    overWeeks(options);
    overHistory(options);
    return 0;
}

}  // namespace fettle::bench
