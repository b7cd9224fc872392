// How long one examination of one channel takes, and how many times the transforms it cannot do without.
//   cmake -S . -B build -G Ninja && ninja -C build fettle-bench
//   build/fettle-bench                            everything; `ratio`: examination over transforms
//   build/fettle-bench --benchmark_filter=Ratio   the ratio alone, both timed in turns, best of 100
//   build/fettle-bench --profile                  a table of the stages
//   build/fettle-bench --import FOLDER            an import beside examining alone; FOLDER is what
//                                                 `fettle-cli sample FOLDER --weeks 12` has made; what its
//                                                 stages cost
//   build/fettle-bench --many FOLDER              25,000 to 100,000 tiny files found, read and refused: time
//                                                 a file, peak memory
//   build/fettle-bench --make-large FOLDER        a fleet of 1,500 machines, one with a year at 20 minutes
//   build/fettle-bench --desk FOLDER/large.fettle   the window over it: page changes, ledger, waterfall
//   build/fettle-bench --curves [FOLDER]          time against length, channels; with a folder for fleet
//   files
//                                                 also against machines, weeks, recordings
//   build/fettle-bench --make-size trends|full FOLDER [MACHINES]   1,000 machines with a year of trends; 100
//                                                 with all that retention keeps of a year (some minutes, 10
//                                                 GB)
//   build/fettle-bench --size FOLDER/full.fettle  its size beside the estimate, round, trend, waterfall
//   build/fettle-bench --codecs FOLDER...         what packs the waveforms of recordings there, and how fast
//   build/fettle-bench --record NAME FILE         the samples of "sound" or "outer race", raw float64 in g
//   tests/bench/compare BEFORE AFTER [FILTER]      two builds of it in turns, as a table of ratios
//   tests/bench/same_pipeline.py build/fettle-bench   the same pipeline in NumPy and SciPy beside it
#include <benchmark/benchmark.h>
#include <fmt/format.h>

#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <limits>
#include <string_view>

#include "core/diagnosis/examine.h"
#include "tests/bench/bare_transforms.h"
#include "tests/bench/codec_bench.h"
#include "tests/bench/curves.h"
#include "tests/bench/desk_bench.h"
#include "tests/bench/import_bench.h"
#include "tests/bench/large_fleet.h"
#include "tests/bench/size_fleet.h"
#include "tests/bench/stages.h"
#include "tests/bench/stopwatch.h"

namespace fettle::bench {

namespace {

constexpr int kProfileRepeats = 60, kRatioRepeats = 100;

void examineOnce(const BenchCase& subject) {
    auto examination = examine(subject.machine, {subject.recording});
    benchmark::DoNotOptimize(examination);
}

void examination(benchmark::State& state, const BenchCase& subject) {
    for (auto _ : state)
        examineOnce(subject);
}

void bareTransforms(benchmark::State& state, const BenchCase& subject) {
    BareTransforms bare(subject.machine, *subject.recording);
    for (auto _ : state)
        bare.run();
    state.counters["transforms"] = double(bare.count());
}

// In turns, so that what else the machine does falls on both; the best of each.
void ratio(benchmark::State& state, const BenchCase& subject) {
    BareTransforms bare(subject.machine, *subject.recording);
    double examineMs = std::numeric_limits<double>::infinity(), bareMs = examineMs;
    for (auto _ : state) {
        examineMs = std::min(examineMs, onceMs([&] { examineOnce(subject); }));
        bareMs = std::min(bareMs, onceMs([&] { bare.run(); }));
    }
    state.counters["examine_ms"] = examineMs;
    state.counters["transforms_ms"] = bareMs;
    state.counters["ratio"] = examineMs / bareMs;
}

void printProfile(const BenchCase& subject) {
    fmt::print("{}: one channel, {} samples; best of {} runs\n{}\n", subject.name,
               subject.recording->channels[0].samples.size(), kProfileRepeats,
               tableOf(stagesOf(subject, kProfileRepeats)));
}

int writeRecord(std::string_view name, const char* path) {
    const BenchCase& subject = name == faultyCase().name ? faultyCase() : soundCase();
    const std::vector<double>& samples = subject.recording->channels[0].samples;
    std::ofstream file(path, std::ios::binary);
    file.write(reinterpret_cast<const char*>(samples.data()),
               std::streamsize(samples.size() * sizeof(double)));
    return file.flush() ? 0 : 3;
}

void registerAll() {
    for (const BenchCase* subject : {&soundCase(), &faultyCase()}) {
        const auto name = [&](const char* what) { return fmt::format("{}/{}", what, subject->name); };
        benchmark::RegisterBenchmark(name("Examination").c_str(), examination, *subject)
            ->Unit(benchmark::kMillisecond);
        benchmark::RegisterBenchmark(name("BareTransforms").c_str(), bareTransforms, *subject)
            ->Unit(benchmark::kMillisecond);
        benchmark::RegisterBenchmark(name("Ratio").c_str(), ratio, *subject)
            ->Unit(benchmark::kMillisecond)
            ->Iterations(kRatioRepeats);
    }
}

}  // namespace

}  // namespace fettle::bench

int main(int argc, char** argv) {
    using namespace fettle::bench;
    if (argc == 2 && std::string_view(argv[1]) == "--profile") {
        printProfile(soundCase());
        printProfile(faultyCase());
        return 0;
    }
    if (argc == 3 && std::string_view(argv[1]) == "--import") return importBench({.folder = argv[2]});
    if (argc == 3 && std::string_view(argv[1]) == "--many") return manyFilesBench(argv[2]);
    if (argc >= 3 && std::string_view(argv[1]) == "--codecs") return codecBench({argv + 2, argv + argc});
    if (argc == 3 && std::string_view(argv[1]) == "--make-large") return makeLargeFleet({.folder = argv[2]});
    if ((argc == 4 || argc == 5) && std::string_view(argv[1]) == "--make-size")
        return makeSizeFleet(
            {.folder = argv[3], .what = argv[2], .machines = argc == 5 ? std::atoi(argv[4]) : 0});
    if (argc == 3 && std::string_view(argv[1]) == "--size") return sizeBench(argv[2]);
    if ((argc == 2 || argc == 3) && std::string_view(argv[1]) == "--curves")
        return curves({.folder = argc == 3 ? argv[2] : ""});
#ifdef FETTLE_BENCH_DESKTOP
    if (argc == 3 && std::string_view(argv[1]) == "--desk") return deskBench({.fleet = argv[2]});
#endif
    if (argc == 4 && std::string_view(argv[1]) == "--record") return writeRecord(argv[2], argv[3]);
    registerAll();
    benchmark::Initialize(&argc, argv);
    if (benchmark::ReportUnrecognizedArguments(argc, argv)) return 2;
    benchmark::RunSpecifiedBenchmarks();
    return 0;
}
