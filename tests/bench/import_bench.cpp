#include "tests/bench/import_bench.h"

#include <fmt/format.h>
#include <sys/resource.h>

#include <algorithm>
#include <atomic>
#include <chrono>
#include <filesystem>
#include <fstream>
#include <map>
#include <thread>
#include <vector>

#include "core/diagnosis/examine.h"
#include "core/intake/discover.h"
#include "core/intake/import.h"
#include "core/signal/reader.h"
#include "core/signal/sidecar.h"
#include "core/signal/sound_file.h"
#include "tests/bench/import_stages.h"
#include "tests/bench/peak_memory.h"

namespace fettle::bench {

namespace {

constexpr std::size_t kSlice = 500;  // files: short enough that what else the machine does falls on all

constexpr std::size_t kStaged = 500;  // files

constexpr int kMachines = 1000, kMinutes = 20;
constexpr int kWeek = kMachines * 7 * 24 * 60 / kMinutes;

struct Cost {
    double clockS = 0, processorS = 0;
};

void add(Cost& sum, const Cost& more) {
    sum.clockS += more.clockS;
    sum.processorS += more.processorS;
}

double processorSeconds() {
    rusage use{};
    ::getrusage(RUSAGE_SELF, &use);
    const auto seconds = [](const timeval& t) { return double(t.tv_sec) + 1e-6 * double(t.tv_usec); };
    return seconds(use.ru_utime) + seconds(use.ru_stime);
}

template <class Work>
Cost costOf(Work work) {
    const auto begun = std::chrono::steady_clock::now();
    const double processor = processorSeconds();
    work();
    return {std::chrono::duration<double>(std::chrono::steady_clock::now() - begun).count(),
            processorSeconds() - processor};
}

using Machines = std::map<std::string, std::shared_ptr<const Machine>>;

class ImportBench {
  public:
    explicit ImportBench(const ImportBenchOptions& options) : options_(options) {}

    Status gather() {
        const Found found = discover(files_, {options_.folder + "/recordings"}, true);
        if (!found.problems.empty()) return fail(found.problems[0]);
        for (const FoundFile& file : found.files)
            if (int(paths_.size()) < options_.recordings) paths_.push_back(file.path);
        const auto names = files_.list(options_.folder + "/machines");
        if (!names) return fail(names.error());
        for (const std::string& name : *names) {
            const std::string path = options_.folder + "/machines/" + name;
            const auto text = files_.read(path);
            if (!text) return fail(text.error());
            auto machine = parseMachine(*text, path);
            if (!machine) return fail(machine.error());
            descriptions_.push_back(*text);
            machines_[machine->machine.tag] = std::make_shared<const Machine>(machine->machine);
        }
        return {};
    }

    // All three over all files, the same slice by one after the other.
    Status turn(Cost& copied, Cost& alone, Cost& import) {
        if (auto made = newFleet(); !made) return made;
        examined_ = stored_ = 0;
        for (std::size_t from = 0; from < paths_.size(); from += kSlice) {
            const auto first = paths_.begin() + std::ptrdiff_t(from);
            const auto last = paths_.begin() + std::ptrdiff_t(std::min(from + kSlice, paths_.size()));
            const std::vector<std::string> slice(first, last);
            add(copied, costOf([&] { copyPlainly(slice); }));
            add(alone, costOf([&] { examineAlone(slice); }));
            Status outcome;
            add(import, costOf([&] { outcome = importSlice(slice, last == paths_.end()); }));
            if (!outcome) return outcome;
        }
        return {};
    }

    // What the stages cost one by one, over the first files that an import would take.
    Result<ImportStages> stages(std::size_t most) {
        if (auto made = newFleet(); !made) return fail(made.error());
        const auto last = paths_.begin() + std::ptrdiff_t(std::min(most, paths_.size()));
        auto stages = importStages(*fleet_, {paths_.begin(), last}, machines_);
        fleet_.reset();
        return stages;
    }

    std::string fleetPath() const { return options_.folder + "/bench.fettle"; }
    std::size_t recordings() const { return paths_.size(); }
    std::size_t stored() const { return stored_; }
    std::size_t examined() const { return examined_; }

  private:
    Status newFleet() {
        std::filesystem::remove(fleetPath());
        auto fleet = FleetFile::create(fleetPath(), {});
        if (!fleet) return fail(fleet.error());
        fleet_ = std::move(*fleet);
        for (const std::string& description : descriptions_)
            if (auto put = fleet_->machines().put(description, "machine"); !put) return fail(put.error());
        return {};
    }

    // Closing counts: what is left to write into the file itself is written then.
    Status importSlice(const std::vector<std::string>& slice, bool close) {
        ImportOptions options;
        options.threads = options_.threads;
        const auto report = fettle::import(*fleet_, files_, slice, options);
        if (!report) return fail(report.error());
        stored_ += report->stored;
        if (close) fleet_.reset();
        return {};
    }

    // As a user would copy the folder: recordings and sidecars, one after the other.
    void copyPlainly(const std::vector<std::string>& slice) {
        const std::string to = options_.folder + "/bench_copy";
        std::filesystem::create_directories(to);
        std::size_t n = 0;
        for (const std::string& path : slice)
            for (const std::string& one : {path, sidecarPath(path)}) {
                std::error_code missing;
                const std::string name = to + "/" + std::to_string(n++);
                std::filesystem::copy_file(one, name, std::filesystem::copy_options::overwrite_existing,
                                           missing);
            }
    }

    // Read and examined; the result is thrown away.
    void examineAlone(const std::vector<std::string>& slice) {
        std::atomic<std::size_t> next{0};
        std::vector<std::jthread> threads;
        for (int t = 0; t < options_.threads; ++t)
            threads.emplace_back([&] {
                for (std::size_t i = next++; i < slice.size(); i = next++)
                    examineOne(slice[i]);
            });
    }

    void examineOne(const std::string& path) {
        const auto recording = readRecording(files_, path);
        if (!recording || !(*recording)->time) return;  // an import refuses it as well
        const auto machine = machines_.find((*recording)->machine);
        if (machine == machines_.end()) return;
        if (examineRecording(*machine->second, *recording)) ++examined_;
    }

    const ImportBenchOptions& options_;
    RealFileSystem files_;
    std::vector<std::string> paths_, descriptions_;
    Machines machines_;
    std::unique_ptr<FleetFile> fleet_;
    std::size_t stored_ = 0;
    std::atomic<std::size_t> examined_{0};
};

int told(const Error& error) {
    fmt::print(stderr, "{}\n", error.sentence());
    return 3;
}

void printRow(const char* what, std::size_t count, const Cost& cost) {
    fmt::print("{:<16} {:>10} {:>10.2f} {:>12.1f} {:>13.2f}\n", what, count, cost.clockS,
               double(count) / cost.clockS, cost.processorS);
}

}  // namespace

int importBench(const ImportBenchOptions& options) {
    ImportBench bench(options);
    if (auto gathered = bench.gather(); !gathered) return told(gathered.error());
    Cost copied, alone, import;
    for (int turn = 0; turn < options.turns; ++turn)
        if (auto done = bench.turn(copied, alone, import); !done) return told(done.error());
    std::filesystem::remove_all(options.folder + "/bench_copy");
    for (Cost* cost : {&copied, &alone, &import})
        *cost = {cost->clockS / options.turns, cost->processorS / options.turns};
    fmt::print("{} files, {} threads; mean of {} turns\n", bench.recordings(), options.threads,
               options.turns);
    fmt::print("{:<16} {:>10} {:>10} {:>12} {:>13}\n", "", "recordings", "clock s", "a second",
               "processor s");
    printRow("copied", bench.recordings(), copied);
    printRow("examined alone", bench.examined(), alone);
    printRow("imported", bench.stored(), import);
    fmt::print(
        "imported over examined alone: {:.3f} by the clock, {:.3f} by the processors; {:.1f} MB in the "
        "file\n",
        import.clockS / alone.clockS, import.processorS / alone.processorS,
        double(std::filesystem::file_size(bench.fleetPath())) / 1e6);
    const double rate = double(bench.stored()) / import.clockS;
    fmt::print(
        "imported over copied: {:.1f} by the clock\nat {:.1f} recordings a second a week of {} machines "
        "every "
        "{} minutes, {} recordings, takes {:.1f} hours (reckoned from the rate)\n\n",
        import.clockS / copied.clockS, rate, kMachines, kMinutes, kWeek, kWeek / rate / 3600);
    const auto stages = bench.stages(kStaged);
    if (!stages) return told(stages.error());
    fmt::print("{}", tableOf(*stages));
    std::filesystem::remove(bench.fleetPath());
    return 0;
}

namespace {

// Sound files of a few samples, in folders of 1,000; the register knows none of their machine.
void makeMany(const std::string& folder, std::size_t files) {
    const auto bytes = writeSoundFile({std::vector<double>(64, 0.1)}, 1000, SoundFormat::WavPcm16);
    if (!bytes) return;
    for (std::size_t i = 0; i < files; ++i) {
        const std::string in = fmt::format("{}/{:03}", folder, i / 1000);
        if (i % 1000 == 0) std::filesystem::create_directories(in);
        std::ofstream(fmt::format("{}/{:06}.wav", in, i), std::ios::binary) << *bytes;
    }
}

void printMany(const char* what, std::size_t files, const Cost& cost) {
    fmt::print("{:<26} {:>8} {:>10.2f} {:>14.1f} {:>10.0f}\n", what, files, cost.clockS,
               1e6 * cost.processorS / double(files), peakMegabytes());
}

Status manyOnce(const std::string& folder, std::size_t files) {
    const std::string in = fmt::format("{}/many_{}", folder, files), path = in + ".fettle";
    if (!std::filesystem::exists(in)) makeMany(in, files);
    std::filesystem::remove(path);
    auto fleet = FleetFile::create(path, {});
    if (!fleet) return fail(fleet.error());
    const RealFileSystem disk;
    Found found;
    printMany("found", files, costOf([&] { found = discover(disk, {in}, true, path); }));
    Result<ImportReport> refused = ImportReport{};
    printMany("read and refused", files, costOf([&] { refused = importFound(**fleet, disk, found); }));
    if (!refused) return fail(refused.error());
    Result<ImportReport> again = ImportReport{};
    printMany("read and refused again", files, costOf([&] { again = importFound(**fleet, disk, found); }));
    if (!again) return fail(again.error());
    fleet->reset();
    std::filesystem::remove(path);
    std::filesystem::remove_all(in);
    return {};
}

}  // namespace

int manyFilesBench(const std::string& folder) {
    fmt::print("{:<26} {:>8} {:>10} {:>14} {:>10}\n", "", "files", "clock s", "us a file", "peak MB");
    for (const std::size_t files : {25000, 50000, 100000})
        if (auto done = manyOnce(folder, files); !done) return told(done.error());
    return 0;
}

}  // namespace fettle::bench
