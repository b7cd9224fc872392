// What the fleet file takes and gives: recordings put in, with everything weighed on them, and read back.
//   build/fettle-bench --benchmark_filter=Store    recordings a second, bytes each
// The file stands in the system's folder for temporary files: a slow disk there is measured along.
#include <benchmark/benchmark.h>
#include <fmt/format.h>

#include <cstdlib>
#include <filesystem>

#include "core/diagnosis/examine.h"
#include "core/intake/stored_form.h"
#include "core/store/fleet_file.h"
#include "tests/base/scratch_folder.h"
#include "tests/bench/bench_case.h"
#include "tests/bench/or_end.h"

namespace fettle::bench {

namespace {

constexpr const char* kMachineForm =
    R"({ "tag": "BENCH-1", "mains_hz": 60, "driver": { "poles": 4 }, "points": [
    { "id": "DE", "at": "driver DE", "channels": [ { "name": "de", "quantity": "acceleration", "unit": "g" } ] } ] })";

// A fleet file, and one recording in as many copies as are asked for, each a minute later.
class Store {
  public:
    Store() : fleet_(orEnd(FleetFile::create(path(), {"bench"}))) {
        orEnd(fleet_->machines().put(kMachineForm, "benchmark"));
        auto raw = std::make_shared<Recording>(*soundCase().recording);
        raw->time = parseUtc("2026-01-01T00:00:00Z");
        form_ = storedForm(raw, 1, soundCase().machine, orEnd(examineRecording(soundCase().machine, raw)));
    }
    std::string path() const { return folder_ / "bench.fettle"; }
    RecordingStore& recordings() { return fleet_->recordings(); }
    void put(std::size_t count) { orEnd(recordings().putAll(copies(count))); }
    double bytesEach() {
        fleet_.reset();
        return double(std::filesystem::file_size(path())) / double(made_);
    }

    std::vector<NewRecording> copies(std::size_t count) {
        std::vector<NewRecording> all(count, form_);
        for (NewRecording& one : all) {
            auto raw = std::make_shared<Recording>(*form_.recording);
            raw->time = *raw->time + std::chrono::minutes(++made_);
            one.recording = raw;
            one.key = recordingKey("", *raw);
        }
        return all;
    }

  private:
    ScratchFolder folder_;
    std::unique_ptr<FleetFile> fleet_;
    NewRecording form_;
    int made_ = 0;
};

void put(benchmark::State& state) {
    Store store;
    const auto batch = std::size_t(state.range(0));
    for (auto _ : state) {
        state.PauseTiming();
        const std::vector<NewRecording> some = store.copies(batch);
        state.ResumeTiming();
        orEnd(store.recordings().putAll(some));
    }
    state.counters["recordings/s"] =
        benchmark::Counter(double(batch), benchmark::Counter::kIsIterationInvariantRate);
    state.counters["bytes each"] = store.bytesEach();
}

void read(benchmark::State& state) {
    Store store;
    store.put(16);
    std::int64_t id = 0;
    for (auto _ : state)
        benchmark::DoNotOptimize(orEnd(store.recordings().recording(1 + id++ % 16)));
}

void open(benchmark::State& state) {
    Store store;
    store.put(16);
    for (auto _ : state)
        benchmark::DoNotOptimize(orEnd(FleetFile::open(store.path())));
}

BENCHMARK(put)->Name("Store/put batch of")->Arg(1)->Arg(16)->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK(read)->Name("Store/waveform read")->Unit(benchmark::kMillisecond);
BENCHMARK(open)->Name("Store/open")->Unit(benchmark::kMillisecond)->UseRealTime();

}  // namespace

}  // namespace fettle::bench
