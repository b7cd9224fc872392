#include "tests/bench/import_bench.h"

#include <fmt/format.h>
#include <sys/resource.h>

#include <algorithm>
#include <atomic>
#include <chrono>
#include <filesystem>
#include <map>
#include <thread>
#include <vector>

#include "core/diagnosis/examine.h"
#include "core/intake/discover.h"
#include "core/intake/import.h"
#include "core/signal/reader.h"

namespace fettle::bench {

namespace {

constexpr std::size_t kSlice = 200;  // files: short enough that what else the machine does falls on both

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

    // Both over all files, a slice of one and the same slice of the other.
    Status turn(Cost& alone, Cost& import) {
        if (auto made = newFleet(); !made) return made;
        examined_ = stored_ = 0;
        for (std::size_t from = 0; from < paths_.size(); from += kSlice) {
            const auto first = paths_.begin() + std::ptrdiff_t(from);
            const auto last = paths_.begin() + std::ptrdiff_t(std::min(from + kSlice, paths_.size()));
            const std::vector<std::string> slice(first, last);
            add(alone, costOf([&] { examineAlone(slice); }));
            Status outcome;
            add(import, costOf([&] { outcome = importSlice(slice, last == paths_.end()); }));
            if (!outcome) return outcome;
        }
        return {};
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
    Cost alone, import;
    for (int turn = 0; turn < options.turns; ++turn)
        if (auto done = bench.turn(alone, import); !done) return told(done.error());
    for (Cost* cost : {&alone, &import})
        *cost = {cost->clockS / options.turns, cost->processorS / options.turns};
    fmt::print("{} files, {} threads; mean of {} turns\n", bench.recordings(), options.threads,
               options.turns);
    fmt::print("{:<16} {:>10} {:>10} {:>12} {:>13}\n", "", "recordings", "clock s", "a second",
               "processor s");
    printRow("examined alone", bench.examined(), alone);
    printRow("imported", bench.stored(), import);
    fmt::print(
        "imported over examined alone: {:.3f} by the clock, {:.3f} by the processors; {:.1f} MB in the "
        "file\n",
        import.clockS / alone.clockS, import.processorS / alone.processorS,
        double(std::filesystem::file_size(bench.fleetPath())) / 1e6);
    std::filesystem::remove(bench.fleetPath());
    return 0;
}

}  // namespace fettle::bench
